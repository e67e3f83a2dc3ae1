namespace Warmup;

/// <summary>Keeps what a value prints on one short line.</summary>
internal static class OneLine
{
    /// <summary>The longest text of a value, in characters (the project's own bound).</summary>
    public const int Longest = 200;

    /// <summary>The text on one line, cut to the longest that a value prints.</summary>
    public static string Of(string text) => Cut(text.ReplaceLineEndings(" "), Longest);

    /// <summary>The text, cut to a number of characters; three dots stand for what is missing.</summary>
    public static string Cut(string text, int longest)
    {
        if (text.Length <= longest)
        {
            return text;
        }

        // Not between the halves of one character.
        var kept = longest - 3;
        return string.Concat(text.AsSpan(0, char.IsHighSurrogate(text[kept - 1]) ? kept - 1 : kept), "...");
    }
}
