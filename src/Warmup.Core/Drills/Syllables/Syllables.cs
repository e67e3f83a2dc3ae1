using System.Diagnostics.CodeAnalysis;
using System.Text.Json.Serialization;

namespace Warmup;

/// <summary>What is sung on each note.</summary>
/// <remarks>
/// A degree that has no name in a kind (a lowered fifth has no svara) is sung by its scale number. Immutable, value equality.
/// </remarks>
[JsonConverter(typeof(TextJsonConverter<Syllables>))]
public sealed partial record Syllables : ITextForm<Syllables>, IWritesText
{
    private readonly SyllableKind _kind;

    internal Syllables(SyllableKind kind) => _kind = kind;

    /// <summary>The svara's letter: S R G M P D N (common practice).</summary>
    public static Syllables SvaraLetters => SvaraScripts.Latin;

    /// <summary>The svara as it is sung: sa ri ga ma pa da ni (common practice).</summary>
    public static Syllables SungSvaras => SvaraScripts.Sung;

    /// <summary>The svara's full name: Shadja, Shuddha Rishabha, ... (common practice).</summary>
    public static Syllables SvaraNames => SvaraNameSyllables.Value;

    /// <summary>Movable-do solfa with chromatic syllables; do is the tonic (common practice).</summary>
    public static Syllables Solfa => SolfaSyllables.Value;

    /// <summary>Movable-do solfa with la as the tonic, as choirs sing minor scales (common practice).</summary>
    public static Syllables LaBasedSolfa => LaBasedSolfaSyllables.Value;

    /// <summary>Scale numbers with accidentals: 1 2 b3 #4; the octave does not show.</summary>
    public static Syllables Numbers => NumberSyllables.Value;

    /// <summary>Svara letters in Devanagari.</summary>
    public static Syllables Devanagari => SvaraScripts.Devanagari;

    /// <summary>Svara letters in Tamil.</summary>
    public static Syllables Tamil => SvaraScripts.Tamil;

    /// <summary>Svara letters in Telugu.</summary>
    public static Syllables Telugu => SvaraScripts.Telugu;

    /// <summary>Svara letters in Kannada.</summary>
    public static Syllables Kannada => SvaraScripts.Kannada;

    /// <summary>Svara letters in Malayalam.</summary>
    public static Syllables Malayalam => SvaraScripts.Malayalam;

    /// <summary>A lip trill on every note, written <c>brr</c> (common practice).</summary>
    public static Syllables LipTrill { get; } = new(HalfClosedSyllables.LipTrill);

    /// <summary>A hum through a straw on every note, written <c>straw</c> (common practice).</summary>
    public static Syllables Straw { get; } = new(HalfClosedSyllables.Straw);

    /// <summary>The kinds that have a name, for reading what people type.</summary>
    public static ValueList<Syllables> All =>
    [
        SvaraLetters, SungSvaras, SvaraNames, Solfa, LaBasedSolfa, Numbers, Vowel(), LipTrill, Straw, Devanagari, Tamil, Telugu, Kannada, Malayalam,
    ];

    /// <summary>The name of the kind, in lower case: <c>svara</c>, <c>solfa</c>, <c>tamil</c>.</summary>
    public string Name => _kind.Name;

    /// <summary>The same open vowel on every note.</summary>
    /// <param name="vowel">The sung text: 1 to 20 characters without control characters, and without white space at its ends.</param>
    /// <exception cref="ArgumentNullException"><paramref name="vowel"/> is <see langword="null"/>.</exception>
    /// <exception cref="ArgumentException">The text is empty, too long or holds control characters.</exception>
    public static Syllables Vowel(string vowel = "a") => new(new VowelSyllables(vowel));

    /// <summary>The caller's own syllable for each of the seven letters, whatever the variant. A degree that is not a svara is sung by its number.</summary>
    /// <param name="name">The name of the kind: 1 to 20 characters without control characters and without a colon; not <c>vowel</c> or <c>dotted</c>.</param>
    /// <param name="letters">Seven syllables for S R G M P D N, each 1 to 20 characters without control characters and commas.</param>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> or a syllable is <see langword="null"/>.</exception>
    /// <exception cref="ArgumentException">There are not seven syllables, or a text is empty, too long or holds what it must not.</exception>
    public static Syllables Custom(string name, ValueList<string> letters)
    {
        ArgumentNullException.ThrowIfNull(name);
        return MappedSyllables.OfLetters(name, letters);
    }

    /// <summary>The caller's own syllable for each degree: for all sixteen svaras, and for other degrees where a scale has them.</summary>
    /// <param name="name">The name of the kind, as for <see cref="Custom(string, ValueList{string})"/>.</param>
    /// <param name="syllableOf">
    /// Gives a degree's syllable: 1 to 20 characters without control characters and commas, or <see langword="null"/> where the degree is
    /// sung by its number. It is called once for each of the 35 degrees, here and not later.
    /// </param>
    /// <exception cref="ArgumentNullException">An argument is <see langword="null"/>.</exception>
    /// <exception cref="ArgumentException">No degree has a syllable, or a text is empty, too long or holds what it must not.</exception>
    public static Syllables Custom(string name, Func<Degree, string?> syllableOf)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(syllableOf);
        return MappedSyllables.OfDegrees(name, syllableOf);
    }

    // A name, and 35 pairs of a degree and a syllable.
    static int ITextForm<Syllables>.LongestText => 2_000;

    static string ITextForm<Syllables>.What => "syllables";

    /// <summary>
    /// Reads a kind: one of the names of <see cref="All"/>, <c>vowel:</c> with the sung text (<c>vowel: ee</c>), or the caller's own
    /// syllables: <c>own: S=sa, R1=ra, R2=ri, G=ga</c>, where a letter alone stands for all its svaras. <c>dotted:</c> before a kind marks
    /// the octaves by dots.
    /// </summary>
    /// <param name="text">The text; the names in any case.</param>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is <see langword="null"/>.</exception>
    /// <exception cref="WarmupFormatException">The text is not a kind of syllables.</exception>
    public static Syllables Parse(string text) => TextForm.Parse<Syllables>(text);

    /// <summary>Reads a kind as <see cref="Parse"/> does.</summary>
    /// <param name="text">The text.</param>
    /// <param name="syllables">The kind, or <see langword="null"/>.</param>
    /// <param name="error">What is wrong, or <see langword="null"/>.</param>
    /// <returns>Whether the text was a kind.</returns>
    public static bool TryParse([NotNullWhen(true)] string? text, [NotNullWhen(true)] out Syllables? syllables, [NotNullWhen(false)] out TextError? error) =>
        TextForm.TryParse<Syllables>(text, out syllables, out error);

    static Syllables IParsable<Syllables>.Parse(string s, IFormatProvider? provider) => Parse(s);

    static bool IParsable<Syllables>.TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, [MaybeNullWhen(false)] out Syllables result) =>
        TryParse(s, out result, out _);

    static Syllables ISpanParsable<Syllables>.Parse(ReadOnlySpan<char> s, IFormatProvider? provider) => TextForm.Parse<Syllables>(s);

    static bool ISpanParsable<Syllables>.TryParse(ReadOnlySpan<char> s, IFormatProvider? provider, [MaybeNullWhen(false)] out Syllables result) =>
        TextForm.TryParse(s, out result, out _);

    static bool ITextForm<Syllables>.TryRead(TextCursor cursor, [MaybeNullWhen(false)] out Syllables value, [NotNullWhen(false)] out TextError? error) =>
        SyllablesText.TryRead(cursor, out value, out error);

    /// <summary>The same syllables with a dot above for each octave above the middle one and a dot below for each octave below.</summary>
    public Syllables WithOctaveDots() => _kind is DottedSyllables ? this : new(new DottedSyllables(this));

    /// <summary>The syllable of a tone.</summary>
    /// <param name="tone">The tone.</param>
    public string SyllableOf(ScaleTone tone) => _kind.SyllableOf(tone);

    /// <summary>
    /// The syllable of a tone with its variant: <c>D2</c>, where svara letters alone, in any script, would not tell D1 and D2 apart. Syllables that
    /// do, such as solfa, and the caller's own are the same as without.
    /// </summary>
    /// <param name="tone">The tone.</param>
    public string SyllableWithVariant(ScaleTone tone) => _kind.WithVariant(tone);

    /// <summary>The whole kind, as <see cref="Parse"/> reads it back: its name, or the syllables of a kind of the caller's own.</summary>
    public string ToText() => _kind.ToText();

    /// <summary>The name of the kind.</summary>
    public override string ToString() => Name;
}
