using System.Diagnostics.CodeAnalysis;

namespace Warmup;

/// <summary>What is sung on each note.</summary>
/// <remarks>
/// A degree that has no name in a kind (a lowered fifth has no svara) is sung by its scale number. Immutable, value equality.
/// </remarks>
public abstract partial record Syllables
{
    private const string VowelPrefix = "vowel:";

    private protected Syllables()
    {
    }

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

    /// <summary>The kinds that have a name, for reading what people type. A new kind is one new file and one line here.</summary>
    public static ValueList<Syllables> All =>
    [
        SvaraLetters, SungSvaras, SvaraNames, Solfa, LaBasedSolfa, Numbers, Vowel(), Devanagari, Tamil, Telugu, Kannada, Malayalam,
    ];

    /// <summary>The name of the kind, in lower case: <c>svara</c>, <c>solfa</c>, <c>tamil</c>.</summary>
    public abstract string Name { get; }

    /// <summary>The same open vowel on every note.</summary>
    /// <param name="vowel">The sung text: 1 to 20 characters without control characters.</param>
    /// <exception cref="ArgumentException">The text is empty, too long or holds control characters.</exception>
    public static Syllables Vowel(string vowel = "a") => new VowelSyllables(vowel);

    /// <summary>The caller's own syllable for each of the seven letters.</summary>
    /// <param name="name">The name of the kind: 1 to 20 characters without control characters.</param>
    /// <param name="letters">Seven syllables for S R G M P D N, each 1 to 20 characters without control characters.</param>
    /// <exception cref="ArgumentException">There are not seven syllables, or a text is empty, too long or holds control characters.</exception>
    public static Syllables Custom(string name, ValueList<string> letters) => new LetterSyllables(name, letters);

    /// <summary>Reads a kind: one of the names of <see cref="All"/>, or <c>vowel:</c> with the sung text: <c>vowel: ee</c>.</summary>
    /// <param name="text">The text, in any case.</param>
    /// <param name="syllables">The kind, or <see langword="null"/>.</param>
    /// <param name="error">What is wrong, or <see langword="null"/>.</param>
    /// <returns>Whether the text was a kind.</returns>
    public static bool TryParse(string text, [NotNullWhen(true)] out Syllables? syllables, [NotNullWhen(false)] out TextError? error)
    {
        syllables = null;
        error = null;
        var trimmed = text.Trim();
        foreach (var named in All)
        {
            if (trimmed.Equals(named.Name, StringComparison.OrdinalIgnoreCase))
            {
                syllables = named;
                return true;
            }
        }

        if (trimmed.StartsWith(VowelPrefix, StringComparison.OrdinalIgnoreCase))
        {
            var vowel = trimmed[VowelPrefix.Length..].Trim();
            if (vowel.Length is > 0 and <= LongestSyllable && Require.IndexOfControl(vowel) < 0)
            {
                syllables = Vowel(vowel);
                return true;
            }

            error = TextError.At(1, $"{TextError.Quote(vowel)} is no vowel to sing; write 1 to 20 characters without control characters, such as vowel: ee");
            return false;
        }

        error = TextError.At(1, $"unknown syllables {TextError.Quote(trimmed)}; write {string.Join(", ", All.ConvertAll(s => s.Name))}, or vowel: with the text");
        return false;
    }

    /// <summary>The same syllables with a dot above for each octave above the middle one and a dot below for each octave below.</summary>
    public Syllables WithOctaveDots() => this is DottedSyllables ? this : new DottedSyllables(this);

    /// <summary>The syllable of a tone.</summary>
    /// <param name="tone">The tone.</param>
    public abstract string SyllableOf(ScaleTone tone);

    /// <summary>The name of the kind.</summary>
    public sealed override string ToString() => Name;

    /// <summary>The longest syllable, in characters.</summary>
    private protected const int LongestSyllable = 20;

    /// <summary>Refuses a text that is empty, too long or holds control characters.</summary>
    private protected static string Singable(string text, string what) => string.IsNullOrWhiteSpace(text)
        ? throw new ArgumentException($"{what} must have 1 to {LongestSyllable} characters", nameof(text))
        : Require.PlainText(text, LongestSyllable, what);
}
