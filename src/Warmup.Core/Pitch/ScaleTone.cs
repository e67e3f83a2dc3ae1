using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json.Serialization;

namespace Warmup;

/// <summary>A degree in an octave relative to the tonic: <c>R2</c> in the middle octave, <c>S'</c> one above, <c>N3_</c> one below.</summary>
/// <remarks>
/// The registers have names of the trade: -1 mandra, 0 madhya, 1 tara. <c>default</c> is the middle S. Immutable.
/// </remarks>
[JsonConverter(typeof(TextJsonConverter<ScaleTone>))]
public readonly struct ScaleTone : IEquatable<ScaleTone>, IComparable<ScaleTone>, ITextForm<ScaleTone>
{
    // One number, since tones are copied and compared more than anything else: the degree in its low half, the octave in its high half.
    private readonly int _packed;

    /// <summary>Makes a tone.</summary>
    /// <param name="degree">The degree.</param>
    /// <param name="octave">Octaves above the middle one, -9 to 9.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="octave"/> lies outside its range.</exception>
    public ScaleTone(Degree degree, int octave = 0)
    {
        _packed = (Require.InRange(octave, -HighestOctave, HighestOctave) << 16) | unchecked((ushort)degree.Packed);
    }

    private ScaleTone(int packed) => _packed = packed;

    /// <summary>The tone as one number of 21 bits with its sign, 0 for the middle S.</summary>
    internal int Packed => _packed;

    /// <summary>The tone that <see cref="Packed"/> gave a number.</summary>
    internal static ScaleTone Unpacked(int packed) => new(packed);

    /// <summary>The highest octave above the middle one, 9; the lowest is as far below (the project's own setting).</summary>
    public static int HighestOctave => 9;

    /// <summary>The degree.</summary>
    public Degree Degree => Warmup.Degree.Unpacked(unchecked((short)_packed));

    /// <summary>Octaves above the middle one.</summary>
    public int Octave => _packed >> 16;

    /// <summary>Semitones above the middle tonic, in equal steps.</summary>
    public int Semitones => Degree.Semitones + (12 * Octave);

    /// <summary>The number of different tones.</summary>
    internal static int Count => ((2 * HighestOctave) + 1) * Warmup.Degree.Count;

    /// <summary>A number of the tone's own, from 0 to below <see cref="Count"/>.</summary>
    internal int Ordinal => unchecked(((Octave + HighestOctave) * Warmup.Degree.Count) + Degree.Ordinal);

    /// <summary>A number that orders letters over the octaves: 0 for the middle S, 7 for the upper one.</summary>
    internal int LetterIndex => Degree.Letter - 1 + (7 * Octave);

    /// <summary>Equality of degree and octave.</summary>
    /// <param name="left">One tone.</param>
    /// <param name="right">The other.</param>
    public static bool operator ==(ScaleTone left, ScaleTone right) => left.Equals(right);

    /// <summary>Inequality of degree or octave.</summary>
    /// <param name="left">One tone.</param>
    /// <param name="right">The other.</param>
    public static bool operator !=(ScaleTone left, ScaleTone right) => !left.Equals(right);

    /// <summary>The same degree in a higher octave.</summary>
    /// <param name="octaves">Octaves to add; negative ones lower.</param>
    /// <exception cref="ArgumentOutOfRangeException">The octave leaves its range.</exception>
    public ScaleTone Raised(int octaves) => new(Degree, Octave + octaves);

    static int ITextForm<ScaleTone>.LongestText => 64;

    static string ITextForm<ScaleTone>.What => "a tone";

    /// <summary>Reads a degree with octave marks: <c>R2</c>, <c>S'</c>, <c>N3_</c>, <c>b6_</c>.</summary>
    /// <param name="text">The text; white space around it has no meaning.</param>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is <see langword="null"/>.</exception>
    /// <exception cref="WarmupFormatException">The text is not a tone.</exception>
    public static ScaleTone Parse(string text) => TextForm.Parse<ScaleTone>(text);

    /// <summary>Reads a tone as <see cref="Parse"/> does.</summary>
    /// <param name="text">The text.</param>
    /// <param name="tone">The tone, or the middle S.</param>
    /// <param name="error">What is wrong, or <see langword="null"/>.</param>
    /// <returns>Whether the text was a tone.</returns>
    public static bool TryParse([NotNullWhen(true)] string? text, out ScaleTone tone, [NotNullWhen(false)] out TextError? error) =>
        TextForm.TryParse(text, out tone, out error);

    static ScaleTone IParsable<ScaleTone>.Parse(string s, IFormatProvider? provider) => Parse(s);

    static bool IParsable<ScaleTone>.TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, out ScaleTone result) => TryParse(s, out result, out _);

    static ScaleTone ISpanParsable<ScaleTone>.Parse(ReadOnlySpan<char> s, IFormatProvider? provider) => TextForm.Parse<ScaleTone>(s);

    static bool ISpanParsable<ScaleTone>.TryParse(ReadOnlySpan<char> s, IFormatProvider? provider, out ScaleTone result) => TextForm.TryParse(s, out result, out _);

    static bool ITextForm<ScaleTone>.TryRead(TextCursor cursor, out ScaleTone value, [NotNullWhen(false)] out TextError? error)
    {
        var word = cursor.Trimmed();
        error = TryRead(word, out value) ? null : word.Error(word.IsAtEnd ? "the tone is missing; write for example R2, S' or N3_" : ToneText.WhyNot(word.Rest));
        return error is null;
    }

    /// <summary>Reads a word that is a tone.</summary>
    internal static bool TryRead(TextCursor word, out ScaleTone tone)
    {
        tone = default;
        var start = word.Position;
        word.TakeWhile(static c => !OctaveMarks.Is(c));
        if (!Degree.TryRead(word.Word(start), out var degree) || !OctaveMarks.TryTake(ref word, out var octave) || !word.IsAtEnd)
        {
            return false;
        }

        tone = new ScaleTone(degree, octave);
        return true;
    }

    /// <inheritdoc/>
    public int CompareTo(ScaleTone other) =>
        Semitones != other.Semitones ? Semitones.CompareTo(other.Semitones) : LetterIndex.CompareTo(other.LetterIndex);

    /// <inheritdoc/>
    public bool Equals(ScaleTone other) => _packed == other._packed;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is ScaleTone other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => (Degree.GetHashCode() * 32) + Octave;

    /// <summary>The degree and a mark for each octave: <c>R2</c>, <c>S'</c>, <c>N3_</c>; <see cref="Parse"/> reads it back.</summary>
    public override string ToString() => Degree + OctaveMarks.Of(Octave);

    /// <summary>The letter without the variant, and the octave's marks: <c>R</c>, <c>S'</c>, <c>N_</c>. A degree that is not a svara shows its number.</summary>
    internal string ToLetterString() =>
        (Degree.IsSvara ? Degree.SvaraLetter.ToString(CultureInfo.InvariantCulture) : Degree.ToNumber()) + OctaveMarks.Of(Octave);
}
