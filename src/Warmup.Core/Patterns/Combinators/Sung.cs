using System.Globalization;

namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>The most words of a vowel order.</summary>
    public const int MostTexts = 64;

    /// <summary>The longest sung word, in characters.</summary>
    public const int LongestSungText = 20;

    /// <summary>Words sung note by note, beginning again with each line: the vowel order of a choir.</summary>
    /// <param name="texts">1 to 64 words of letters, marks, hyphens and apostrophes, each 1 to 20 characters long.</param>
    /// <exception cref="ArgumentException">There is no word or there are too many, or one is not such a word.</exception>
    public Pattern Sung(params ReadOnlySpan<string> texts) => new SungPattern(this, ValueList.Create(texts), false);

    /// <summary>One word for each line: the first line on the first word, the next on the second, and around.</summary>
    /// <param name="texts">1 to 64 words of letters, marks, hyphens and apostrophes, each 1 to 20 characters long.</param>
    /// <exception cref="ArgumentException">There is no word or there are too many, or one is not such a word.</exception>
    public Pattern SungByLine(params ReadOnlySpan<string> texts) => new SungPattern(this, ValueList.Create(texts), true);
}

internal sealed record SungPattern : UnaryPattern
{
    public SungPattern(Pattern inner, ValueList<string> texts, bool byLine)
        : base(inner)
    {
        if (texts.Count is 0 or > MostTexts)
        {
            throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"1 to {MostTexts} words can be sung, not {texts.Count}"), nameof(texts));
        }

        foreach (var text in texts)
        {
            if (!IsSung(text))
            {
                throw new ArgumentException(
                    string.Create(CultureInfo.InvariantCulture, $"a sung word must have 1 to {LongestSungText} letters, marks, hyphens or apostrophes, not {TextError.Quote(text)}"),
                    nameof(texts));
            }
        }

        Texts = texts;
        ByLine = byLine;
    }

    public static PatternWord NotesWord { get; } =
        PatternWord.Sung("sung", "words sung note by note, from the first again with each line", MostTexts, (p, t) => new SungPattern(p, t, false))
        with { Said = "the notes are sung on {*} in turn" };

    public static PatternWord LinesWord { get; } =
        PatternWord.Sung("sung-by-line", "one word for each line, in turn", MostTexts, (p, t) => new SungPattern(p, t, true))
        with { Said = "the lines are sung on {*} in turn" };

    public ValueList<string> Texts { get; }

    public bool ByLine { get; }

    internal override Operation Operation => new(ByLine ? LinesWord : NotesWord, default, Texts);

    internal override LawClass Class => ByLine ? LawClass.Other : LawClass.EachLine;

    internal override UnaryPattern? After(UnaryPattern inner) =>
        inner is SungPattern first && ByLine == first.ByLine ? this : null;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var lines = Inner.Lines(frame, expander);
        var sung = new Line[lines.Length];
        for (var l = 0; l < lines.Length; l++)
        {
            var notes = lines[l].Notes.AsSpan().ToArray();
            for (var i = 0; i < notes.Length; i++)
            {
                notes[i] = notes[i] with { Sung = Texts[(ByLine ? l : i) % Texts.Count] };
            }

            sung[l] = new Line(ValueList.Adopt(notes));
        }

        return sung;
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
}
