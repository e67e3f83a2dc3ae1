using System.Globalization;

namespace Warmup;

/// <summary>A degree in an octave relative to the tonic: <c>R2</c> in the middle octave, <c>S'</c> one above, <c>N3_</c> one below.</summary>
/// <remarks>
/// The registers have names of the trade: -1 mandra, 0 madhya, 1 tara. <c>default</c> is the middle S.
/// </remarks>
public readonly struct ScaleTone : IEquatable<ScaleTone>, IComparable<ScaleTone>
{
    /// <summary>The highest octave above the middle one; the lowest is as far below.</summary>
    public const int HighestOctave = 9;

    private readonly sbyte _octave;

    /// <summary>Makes a tone.</summary>
    /// <param name="degree">The degree.</param>
    /// <param name="octave">Octaves above the middle one, -9 to 9.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="octave"/> lies outside its range.</exception>
    public ScaleTone(Degree degree, int octave = 0)
    {
        Degree = degree;
        _octave = (sbyte)Require.InRange(octave, -HighestOctave, HighestOctave);
    }

    /// <summary>The degree.</summary>
    public Degree Degree { get; }

    /// <summary>Octaves above the middle one.</summary>
    public int Octave => _octave;

    /// <summary>Semitones above the middle tonic, in equal steps.</summary>
    public int Semitones => Degree.Semitones + (12 * _octave);

    /// <summary>A number that orders letters over the octaves: 0 for the middle S, 7 for the upper one.</summary>
    public int LetterIndex => Degree.Letter - 1 + (7 * _octave);

    /// <summary>Equality of degree and octave.</summary>
    /// <param name="left">One tone.</param>
    /// <param name="right">The other.</param>
    public static bool operator ==(ScaleTone left, ScaleTone right) => left.Equals(right);

    /// <summary>Inequality of degree or octave.</summary>
    /// <param name="left">One tone.</param>
    /// <param name="right">The other.</param>
    public static bool operator !=(ScaleTone left, ScaleTone right) => !left.Equals(right);

    /// <summary>Order by pitch, then by letter.</summary>
    /// <param name="left">One tone.</param>
    /// <param name="right">The other.</param>
    public static bool operator <(ScaleTone left, ScaleTone right) => left.CompareTo(right) < 0;

    /// <summary>Order by pitch, then by letter.</summary>
    /// <param name="left">One tone.</param>
    /// <param name="right">The other.</param>
    public static bool operator >(ScaleTone left, ScaleTone right) => left.CompareTo(right) > 0;

    /// <summary>Order by pitch, then by letter.</summary>
    /// <param name="left">One tone.</param>
    /// <param name="right">The other.</param>
    public static bool operator <=(ScaleTone left, ScaleTone right) => left.CompareTo(right) <= 0;

    /// <summary>Order by pitch, then by letter.</summary>
    /// <param name="left">One tone.</param>
    /// <param name="right">The other.</param>
    public static bool operator >=(ScaleTone left, ScaleTone right) => left.CompareTo(right) >= 0;

    /// <summary>The same degree so many octaves higher.</summary>
    /// <param name="octaves">Octaves to add; negative ones lower.</param>
    /// <exception cref="ArgumentOutOfRangeException">The octave leaves its range.</exception>
    public ScaleTone Raised(int octaves) => new(Degree, _octave + octaves);

    /// <summary>Reads a degree with octave marks: <c>R2</c>, <c>S'</c>, <c>N3_</c>, <c>b6_</c>.</summary>
    /// <param name="text">The text, without white space.</param>
    /// <param name="tone">The tone, or the middle S.</param>
    /// <returns>Whether the text was a tone.</returns>
    public static bool TryParse(ReadOnlySpan<char> text, out ScaleTone tone)
    {
        tone = default;
        var end = text.Length;
        var octave = 0;
        while (end > 0 && text[end - 1] is '\'' or '_' or '\u2019')
        {
            var up = text[--end] != '_';
            if (up ? octave < 0 : octave > 0)
            {
                return false;
            }

            octave += up ? 1 : -1;
            if (Math.Abs(octave) > HighestOctave)
            {
                return false;
            }
        }

        if (!Degree.TryParse(text[..end], out var degree))
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
    public bool Equals(ScaleTone other) => Degree == other.Degree && _octave == other._octave;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is ScaleTone other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => (Degree.GetHashCode() * 32) + _octave;

    /// <summary>The degree and a mark for each octave: <c>R2</c>, <c>S'</c>, <c>N3_</c>.</summary>
    public override string ToString() => Degree + OctaveMarks;

    /// <summary>The letter without the variant, and the octave's marks: <c>R</c>, <c>S'</c>, <c>N_</c>. A degree that is no svara shows its number.</summary>
    public string ToLetterString() =>
        (Degree.IsSvara ? Degree.SvaraLetter.ToString(CultureInfo.InvariantCulture) : Degree.ToNumber()) + OctaveMarks;

    /// <summary>
    /// The letter with dots above for the octaves above the middle one and dots below for those below, as combining marks on the letter.
    /// A degree that is no svara shows its number.
    /// </summary>
    public string ToDottedString() => OctaveDots.Mark(new ScaleTone(Degree).ToLetterString(), Octave);

    private string OctaveMarks => _octave == 0 ? string.Empty : new string(_octave > 0 ? '\'' : '_', Math.Abs(_octave));
}
