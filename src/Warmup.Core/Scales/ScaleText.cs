using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup;

/// <summary>Reads scales written out in svaras, scale numbers, solfa or semitones.</summary>
internal static class ScaleText
{
    public const string VakraPrefix = "vakra:";
    public const string SemitonesPrefix = "semitones:";

    private const int LongestText = 400;
    private const string Svaras = "S R1 R2 R3 G1 G2 G3 M1 M2 P D1 D2 D3 N1 N2 N3";

    public static bool TryRead(string text, string? name, [NotNullWhen(true)] out Scale? scale, [NotNullWhen(false)] out TextError? error)
    {
        scale = null;
        if (text.Length > LongestText)
        {
            error = TextError.At(1, string.Create(CultureInfo.InvariantCulture, $"a scale must be at most {LongestText} characters long, not {text.Length}"));
            return false;
        }

        var rest = text.AsSpan();
        var start = rest.Length - rest.TrimStart().Length;
        if (rest[start..].StartsWith(SemitonesPrefix, StringComparison.OrdinalIgnoreCase))
        {
            return TryReadSemitones(text, start + SemitonesPrefix.Length, name, out scale, out error);
        }

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
            scale = new Scale(name ?? NameOf(text), ascent, descent);
            return true;
        }
        catch (ArgumentException fault)
        {
            error = TextError.At(start + 1, FirstSentence(fault.Message));
            return false;
        }
    }

    /// <summary>Reads svaras, scale numbers or solfa without order: <c>S R2 G3 P</c>.</summary>
    public static bool TryReadDegrees(string text, out ValueList<Degree> degrees, [NotNullWhen(false)] out TextError? error)
    {
        degrees = default;
        if (text.Length > LongestText)
        {
            error = TextError.At(1, string.Create(CultureInfo.InvariantCulture, $"a list of notes must be at most {LongestText} characters long, not {text.Length}"));
            return false;
        }

        var found = new List<Degree>();
        for (var at = 0; NextWord(text, ref at, text.Length) is var (start, end);)
        {
            var word = text.AsSpan(start, end - start);
            if (!TryReadTone(word, out var tone, out _))
            {
                error = TextError.At(start + 1, WhyNot(word));
                return false;
            }

            if (!found.Contains(tone.Degree))
            {
                found.Add(tone.Degree);
            }
        }

        degrees = found.ToValueList();
        error = found.Count == 0 ? TextError.At(1, "there are no notes; write for example S R2 G3 P") : null;
        return error is null;
    }

    /// <summary>Whether a word is a tone in svaras, scale numbers or solfa.</summary>
    public static bool IsTone(ReadOnlySpan<char> word) => TryReadTone(word, out _, out _);

    private static bool TryReadTone(ReadOnlySpan<char> word, out ScaleTone tone, out bool solfa)
    {
        solfa = false;
        if (ScaleTone.TryParse(word, out tone))
        {
            return true;
        }

        // The octave's marks are read behind a stand-in for the syllable.
        var marks = word.IndexOfAny("'_\u2019");
        var syllable = marks < 0 ? word : word[..marks];
        if (!Solfa.TryParse(syllable, out var degree))
        {
            return false;
        }

        solfa = ScaleTone.TryParse($"S{word[syllable.Length..]}", out var octave);
        tone = new ScaleTone(degree, octave.Octave);
        return solfa;
    }

    private static bool TryReadSemitones(string text, int from, string? name, [NotNullWhen(true)] out Scale? scale, [NotNullWhen(false)] out TextError? error)
    {
        scale = null;
        var semitones = new List<int>();
        for (var at = from; NextWord(text, ref at, text.Length) is var (start, end);)
        {
            var word = text.AsSpan(start, end - start);
            if (!int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var semitone)
                || semitone > 12
                || semitone <= (semitones.Count == 0 ? -1 : semitones[^1])
                || (semitones.Count == 0 && semitone != 0))
            {
                error = TextError.At(start + 1, semitones.Count == 0
                    ? $"the first semitone must be 0, the tonic, not {TextError.Quote(word)}"
                    : string.Create(CultureInfo.InvariantCulture, $"a semitone must be a number between {semitones[^1] + 1} and 12 here, not {TextError.Quote(word)}; they rise from 0"));
                return false;
            }

            semitones.Add(semitone);
        }

        try
        {
            scale = Scale.FromSemitones(name ?? NameOf(text), [.. semitones]);
            error = null;
            return true;
        }
        catch (ArgumentException fault)
        {
            error = TextError.At(Math.Min(from, text.Length) + 1, FirstSentence(fault.Message));
            return false;
        }
    }

    private static string NameOf(string text)
    {
        var shown = string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return shown.Length > Scale.LongestName ? "written-out scale" : shown;
    }

    private static (int Start, int End)? NextWord(string text, ref int at, int to)
    {
        while (at < to && (char.IsWhiteSpace(text[at]) || text[at] == ','))
        {
            at++;
        }

        var start = at;
        while (at < to && !char.IsWhiteSpace(text[at]) && text[at] != ',')
        {
            at++;
        }

        return at > start ? (start, at) : null;
    }

    private static bool TryReadList(string text, int from, int to, int direction, bool vakra, out ValueList<ScaleTone> tones, [NotNullWhen(false)] out TextError? error)
    {
        error = null;
        tones = default;
        var list = new List<ScaleTone>();
        var which = direction > 0 ? "ascent" : "descent";
        var inSolfa = false;
        for (var at = from; NextWord(text, ref at, to) is var (start, end);)
        {
            var word = text.AsSpan(start, end - start);
            if (!TryReadTone(word, out var tone, out var solfa))
            {
                error = TextError.At(start + 1, WhyNot(word));
                return false;
            }

            if (list.Count > 0 && solfa != inSolfa)
            {
                error = TextError.At(start + 1, $"{TextError.Quote(word)} mixes solfa with svaras or numbers; write the whole {which} in one of them");
                return false;
            }

            inSolfa = solfa;
            if (!vakra && list.Count > 0 && (tone.Semitones - list[^1].Semitones) * direction <= 0)
            {
                error = TextError.At(start + 1, list.Contains(tone)
                    ? $"{tone} stands twice in the {which}; write it once, or put '{VakraPrefix}' before a scale that zigzags"
                    : $"{tone} after {list[^1]} is out of order in the {which}; mend the order, or put '{VakraPrefix}' before a scale that zigzags");
                return false;
            }

            if (list.Count == Scale.LongestList)
            {
                error = TextError.At(start + 1, $"the {which} must have {Scale.FewestNotes} to {Scale.LongestList} entries; this is one more");
                return false;
            }

            list.Add(tone);
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
            : $"there is no svara {quoted}; the svaras are {Svaras} (S' upper, N3_ lower octave), scale numbers such as b3 and #4, or solfa such as do and me";
    }

    private static string FirstSentence(string message)
    {
        var parameter = message.IndexOf(" (Parameter", StringComparison.Ordinal);
        return parameter < 0 ? message : message[..parameter];
    }
}
