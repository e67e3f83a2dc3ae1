using System.Diagnostics.CodeAnalysis;

namespace Warmup;

/// <summary>Reads tones as people write them: svaras, scale numbers or solfa, with octave marks.</summary>
internal static class ToneText
{
    /// <summary>The longest list of notes that is read, in characters.</summary>
    public const int LongestList = 400;

    private const string Svaras = "S R1 R2 R3 G1 G2 G3 M1 M2 P D1 D2 D3 N1 N2 N3";

    /// <summary>Whether a word is a tone.</summary>
    public static bool IsTone(TextCursor word) => TryRead(word, out _, out _);

    /// <summary>Reads a word that is a tone.</summary>
    /// <param name="word">The word.</param>
    /// <param name="tone">The tone, or the middle S.</param>
    /// <param name="isSolfa">Whether it is written in solfa.</param>
    public static bool TryRead(TextCursor word, out ScaleTone tone, out bool isSolfa)
    {
        isSolfa = false;
        if (ScaleTone.TryRead(word, out tone))
        {
            return true;
        }

        var syllable = word.TakeWhile(static c => !OctaveMarks.Is(c));
        if (!Solfa.TryParse(syllable, out var degree) || !OctaveMarks.TryTake(ref word, out var octave) || !word.IsAtEnd)
        {
            return false;
        }

        tone = new ScaleTone(degree, octave);
        isSolfa = true;
        return true;
    }

    /// <summary>Reads notes without order; one that stands twice counts once.</summary>
    public static bool TryReadDegrees(TextCursor cursor, out ValueList<Degree> degrees, [NotNullWhen(false)] out TextError? error)
    {
        degrees = default;
        var found = new List<Degree>();
        while (cursor.TryTakeWord(out var word))
        {
            if (!TryRead(word, out var tone, out _))
            {
                error = word.Error(WhyNot(word.Rest));
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

    private static string Variants(char letter) => letter == 'M' ? "M1 or M2" : $"{letter}1, {letter}2 or {letter}3";

    /// <summary>The letter of a svara that is written by its name, such as <c>sa</c> or <c>dha</c>.</summary>
    private static char? NameOf(ReadOnlySpan<char> word) => word.ToString().ToLowerInvariant() switch
    {
        "sa" => 'S',
        "ri" => 'R',
        "ga" => 'G',
        "ma" => 'M',
        "pa" => 'P',
        "da" or "dha" => 'D',
        "ni" => 'N',
        _ => null,
    };

    /// <summary>Whether a text is several words of which each is the name of a svara or its letter in any case: <c>sa ri ga ma</c>.</summary>
    public static bool AreNames(TextCursor cursor)
    {
        var count = 0;
        while (cursor.TryTakeWord(out var word))
        {
            count++;
            var letter = word.Rest.TrimEnd("'_.").TrimStart('.');
            if (NameOf(letter) is null && (letter.Length != 1 || !"SRGMPDN".Contains(char.ToUpperInvariant(letter[0]), StringComparison.Ordinal)))
            {
                return false;
            }
        }

        return count > 1;
    }

    /// <summary>Why a word is not a tone, and what to write.</summary>
    public static string WhyNot(ReadOnlySpan<char> word)
    {
        var quoted = TextError.Quote(word);
        var letter = word.IsEmpty ? ' ' : char.ToUpperInvariant(word[0]);
        if (word.Length == 1 && letter is 'R' or 'G' or 'M' or 'D' or 'N' && char.IsAsciiLetterUpper(word[0]))
        {
            return $"{quoted} needs a variant: write {Variants(letter)}";
        }

        if (NameOf(word) is { } named)
        {
            return $"{quoted} is the name of a svara; write its letter{(named is 'S' or 'P' ? $": {named}" : $" with a variant: {Variants(named)}")}";
        }

        return !word.IsEmpty && char.IsAsciiLetterLower(word[0]) && "SRGMPDN".Contains(letter, StringComparison.Ordinal)
            ? $"{quoted} is in lower case; write svaras in capitals with their variant, such as {letter}{(letter is 'S' or 'P' ? string.Empty : "2")}"
            : $"there is no svara {quoted}; the svaras are {Svaras} (S' upper, N3_ lower octave), scale numbers such as b3 and #4, or solfa such as do and me";
    }
}
