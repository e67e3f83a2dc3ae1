using System.Globalization;

namespace Warmup;

/// <summary>Reads scales written out in svaras or scale numbers.</summary>
internal static class ScaleText
{
    public const string VakraPrefix = "vakra:";

    private const int LongestText = 400;
    private const string Svaras = "S R1 R2 R3 G1 G2 G3 M1 M2 P D1 D2 D3 N1 N2 N3";

    public static bool TryRead(string text, string? name, out Scale? scale, out TextError? error)
    {
        scale = null;
        if (text.Length > LongestText)
        {
            error = TextError.At(1, string.Create(CultureInfo.InvariantCulture, $"a scale must be at most {LongestText} characters long, not {text.Length}"));
            return false;
        }

        var rest = text.AsSpan();
        var start = rest.Length - rest.TrimStart().Length;
        var vakra = rest[start..].StartsWith(VakraPrefix, StringComparison.OrdinalIgnoreCase);
        if (vakra)
        {
            start += VakraPrefix.Length;
        }

        var slash = text.IndexOf('/', start);
        var ascentEnd = slash < 0 ? text.Length : slash;
        ValueList<ScaleTone>? descent = null;
        if (!TryReadList(text, start, ascentEnd, 1, vakra, out var ascent, out error))
        {
            return false;
        }

        if (slash >= 0)
        {
            if (text.IndexOf('/', slash + 1) is var second and >= 0)
            {
                error = TextError.At(second + 1, "a scale has one '/', between its ascent and its descent");
                return false;
            }

            if (!TryReadList(text, slash + 1, text.Length, -1, vakra, out var falling, out error))
            {
                return false;
            }

            descent = falling;
        }
        else if (!ascent.AsSpan().Contains(new ScaleTone(default, 1)))
        {
            error = TextError.At(text.Length, "the scale must end on the upper tonic; write S' at its end");
            return false;
        }

        try
        {
            scale = new Scale(name ?? string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)) switch
            {
                { Length: > Scale.LongestName } => "written-out scale",
                var shown => shown,
            }, ascent, descent);
            return true;
        }
        catch (ArgumentException fault)
        {
            error = TextError.At(start + 1, FirstSentence(fault.Message));
            return false;
        }
    }

    private static bool TryReadList(string text, int from, int to, int direction, bool vakra, out ValueList<ScaleTone> tones, out TextError? error)
    {
        error = null;
        tones = default;
        var list = new List<ScaleTone>();
        var which = direction > 0 ? "ascent" : "descent";
        for (var at = from; at < to;)
        {
            if (char.IsWhiteSpace(text[at]) || text[at] == ',')
            {
                at++;
                continue;
            }

            var end = at;
            while (end < to && !char.IsWhiteSpace(text[end]) && text[end] != ',')
            {
                end++;
            }

            var word = text.AsSpan(at, end - at);
            if (!ScaleTone.TryParse(word, out var tone))
            {
                error = TextError.At(at + 1, WhyNot(word));
                return false;
            }

            if (!vakra && list.Count > 0 && (tone.Semitones - list[^1].Semitones) * direction <= 0)
            {
                error = TextError.At(at + 1, list.Contains(tone)
                    ? $"{tone} stands twice in the {which}; write it once, or put '{VakraPrefix}' before a scale that zigzags"
                    : $"{tone} after {list[^1]} is out of order in the {which}; mend the order, or put '{VakraPrefix}' before a scale that zigzags");
                return false;
            }

            if (list.Count == Scale.LongestList)
            {
                error = TextError.At(at + 1, $"the {which} must have {Scale.FewestNotes} to {Scale.LongestList} entries; this is one more");
                return false;
            }

            list.Add(tone);
            at = end;
        }

        if (list.Count == 0)
        {
            error = TextError.At(Math.Min(from, text.Length) + 1, $"the {which} is empty; write for example S R2 G3 P D2 S'");
            return false;
        }

        tones = list.ToValueList();
        return true;
    }

    private static string WhyNot(ReadOnlySpan<char> word)
    {
        var quoted = TextError.Quote(word);
        var letter = word.IsEmpty ? ' ' : char.ToUpperInvariant(word[0]);
        if (word.Length == 1 && letter is 'R' or 'G' or 'M' or 'D' or 'N' && char.IsAsciiLetterUpper(word[0]))
        {
            return $"{quoted} needs a variant: write {letter}1{(letter == 'M' ? " or M2" : $", {letter}2 or {letter}3")}";
        }

        return !word.IsEmpty && char.IsAsciiLetterLower(word[0]) && word[0] != 'b' && "SRGMPDN".Contains(letter, StringComparison.Ordinal)
            ? $"{quoted} is in lower case; write svaras in capitals with their variant, such as {letter}{(letter is 'S' or 'P' ? string.Empty : "2")}"
            : $"there is no svara {quoted}; the svaras are {Svaras} (S' upper, N3_ lower octave), or scale numbers such as b3 and #4";
    }

    private static string FirstSentence(string message)
    {
        var parameter = message.IndexOf(" (Parameter", StringComparison.Ordinal);
        return parameter < 0 ? message : message[..parameter];
    }
}
