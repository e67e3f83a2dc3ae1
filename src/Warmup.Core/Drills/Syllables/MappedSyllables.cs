using System.Globalization;

namespace Warmup;

/// <summary>A syllable for each degree that has one: svara letters in a script, or the caller's own.</summary>
internal sealed record MappedSyllables : SyllableKind
{
    private const int LetterCount = 7;

    // A text for each degree by its ordinal; the empty text where the degree is sung by its number.
    private readonly ValueList<string> _texts;

    // The library's own letters take the variant after them; the caller's syllables are sung as they were given.
    private readonly bool _takesVariant;

    private MappedSyllables(string name, ValueList<string> texts, bool takesVariant)
    {
        Name = SyllablesText.RequireKindName(name);
        _texts = texts;
        _takesVariant = takesVariant;
    }

    public override string Name { get; }

    /// <summary>The svara letters of a script, which take the variant after them where a drill needs it.</summary>
    public static Syllables OfScript(string name, ValueList<string> letters) =>
        new(new MappedSyllables(name, Degree.All.ConvertAll(d => d.IsSvara ? letters[d.Letter - 1] : string.Empty), true));

    /// <summary>One syllable for all svaras of a letter, seven together.</summary>
    public static Syllables OfLetters(string name, ValueList<string> letters) => letters.Count == LetterCount
        ? OfDegrees(name, degree => degree.IsSvara ? letters[degree.Letter - 1] ?? throw new ArgumentNullException(nameof(letters), "a syllable is missing") : null)
        : throw new ArgumentException(
            string.Create(CultureInfo.InvariantCulture, $"syllables need {LetterCount} texts for S R G M P D N, not {letters.Count}"), nameof(letters));

    /// <summary>The syllable that a function gives for each degree; none where it gives <see langword="null"/>.</summary>
    public static Syllables OfDegrees(string name, Func<Degree, string?> syllableOf)
    {
        var texts = new string[Degree.Count];
        var found = 0;
        foreach (var degree in Degree.All)
        {
            var text = syllableOf(degree);
            found += text is null ? 0 : 1;
            texts[degree.Ordinal] = text is null ? string.Empty : SyllablesText.RequireSyllable(text);
        }

        return found == 0
            ? throw new ArgumentException("syllables need a text for one degree at least", nameof(syllableOf))
            : new(new MappedSyllables(name, ValueList.Adopt(texts), false));
    }

    public override string SyllableOf(ScaleTone tone) => TextOf(tone.Degree) is { Length: > 0 } text ? text : tone.Degree.ToNumber();

    public override string WithVariant(ScaleTone tone) => _takesVariant && tone.Degree.IsSvara && tone.Degree.Variant > 0
        ? string.Create(CultureInfo.InvariantCulture, $"{SyllableOf(tone)}{tone.Degree.Variant}")
        : SyllableOf(tone);

    public override string ToText() => Syllables.All.AsSpan().Contains(new(this)) ? Name : SyllablesText.Write(Name, TextOf);

    private string TextOf(Degree degree) => _texts[degree.Ordinal];
}
