namespace Warmup.Reading;

/// <summary>Text from a file, as the project's own texts may be: without control and bidirectional characters.</summary>
internal static class PlainText
{
    public static string Of(string text, int longest = 1_000)
    {
        if (Require.IndexOfControl(text) >= 0)
        {
            var kept = new char[text.Length];
            var length = 0;
            for (var i = 0; i < text.Length; i++)
            {
                var isPair = char.IsHighSurrogate(text[i]) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]);
                if (isPair || Require.IndexOfControl(text.AsSpan(i, 1)) < 0)
                {
                    kept[length++] = text[i];
                    if (isPair)
                    {
                        kept[length++] = text[++i];
                    }
                }
                else if (char.IsWhiteSpace(text[i]))
                {
                    kept[length++] = ' ';
                }
            }

            text = new string(kept, 0, length);
        }

        text = text.Trim();
        return text.Length <= longest ? text : text[..(char.IsHighSurrogate(text[longest - 1]) ? longest - 1 : longest)];
    }
}
