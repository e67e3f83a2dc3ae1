using System.Globalization;

namespace Warmup;

public abstract partial record Pattern
{
    internal const int MostTexts = 64;

    internal const int LongestSungText = 20;

    /// <summary>Words sung note by note, from the first again with each line: the vowel order of a choir.</summary>
    /// <param name="texts">1 to 64 words of letters, marks, hyphens and apostrophes, each 1 to 20 characters long.</param>
    /// <exception cref="ArgumentException">There are no words or too many, or one cannot be sung.</exception>
    public Pattern Sung(params ReadOnlySpan<string> texts) => new SungPattern(this, SungPattern.Checked(texts), false);

    /// <summary>One word for each line: the first line on the first word, the next on the second, and round again.</summary>
    /// <param name="texts">1 to 64 words of letters, marks, hyphens and apostrophes, each 1 to 20 characters long.</param>
    /// <exception cref="ArgumentException">There are no words or too many, or one cannot be sung.</exception>
    public Pattern SungByLine(params ReadOnlySpan<string> texts) => new SungPattern(this, SungPattern.Checked(texts), true);
}

internal sealed record SungPattern(Pattern Inner, ValueList<string> Texts, bool ByLine) : UnaryPattern(Inner)
{
    public static PatternWord NotesWord { get; } = PatternWord.Sung(
        "sung", "words sung note by note, from the first again with each line", t => Said("notes", t), (p, t) => p.Sung(t.AsSpan()));

    public static PatternWord LinesWord { get; } = PatternWord.Sung(
        "sung-by-line", "one word for each line, in turn", t => Said("lines", t), (p, t) => p.SungByLine(t.AsSpan()));

    internal override Operation Operation => new(ByLine ? LinesWord : NotesWord, default, Texts);

    internal override LawClass Class => ByLine ? LawClass.Other : LawClass.EachLine;

    internal override UnaryPattern? After(UnaryPattern inner) => inner is SungPattern first && ByLine == first.ByLine ? this : null;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var lines = Inner.Lines(frame, expander);
        var sung = new Line[lines.Length];
        for (var l = 0; l < lines.Length; l++)
        {
            var notes = lines[l].Notes.AsSpan().ToArray();
            for (var i = 0; i < notes.Length; i++)
            {
                notes[i] = notes[i] with { CheckedText = Texts[(ByLine ? l : i) % Texts.Count] };
            }

            sung[l] = new Line(ValueList.Adopt(notes));
        }

        return sung;
    }

    /// <summary>The words; refuses what cannot be sung.</summary>
    public static ValueList<string> Checked(ReadOnlySpan<string> texts) =>
        Fault(texts) is { } fault ? throw new ArgumentException(fault, nameof(texts)) : ValueList.Create(texts);

    /// <summary>What is wrong with words to sing; <see langword="null"/> where nothing is.</summary>
    public static string? Fault(ReadOnlySpan<string> texts)
    {
        if (texts.Length is 0 or > MostTexts)
        {
            return string.Create(CultureInfo.InvariantCulture, $"1 to {MostTexts} words can be sung, not {texts.Length}");
        }

        foreach (var text in texts)
        {
            if (!IsSung(text))
            {
                return string.Create(
                    CultureInfo.InvariantCulture, $"a sung word must have 1 to {LongestSungText} letters, marks, hyphens or apostrophes, not {TextError.Quote(text)}");
            }
        }

        return null;
    }

    /// <summary>Whether a word can be sung: letters, marks, hyphens and apostrophes only, so that it stands in a pattern's text.</summary>
    public static bool IsSung(string? text)
    {
        if (string.IsNullOrEmpty(text) || text.Length > LongestSungText || Require.IndexOfControl(text) >= 0)
        {
            return false;
        }

        for (var i = 0; i < text.Length; i += char.IsSurrogatePair(text, i) ? 2 : 1)
        {
            var category = CharUnicodeInfo.GetUnicodeCategory(text, i);
            if (category is not (UnicodeCategory.UppercaseLetter or UnicodeCategory.LowercaseLetter or UnicodeCategory.TitlecaseLetter
                    or UnicodeCategory.ModifierLetter or UnicodeCategory.OtherLetter or UnicodeCategory.NonSpacingMark or UnicodeCategory.SpacingCombiningMark)
                && text[i] is not ('-' or '\'' or '\u2019'))
            {
                return false;
            }
        }

        return true;
    }

    private static string Said(string what, ValueList<string> texts) => texts.Count == 1
        ? $"all {what} are sung on {texts[0]}"
        : $"the {what} are sung on {string.Join(", ", texts)} in turn";
}
