using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json.Serialization;

namespace Warmup;

/// <summary>
/// A degree of a scale: one of the letters S R G M P D N (1 to 7) with an alteration in semitones from the major scale's degree.
/// </summary>
/// <remarks>
/// The sixteen svaras (R1 ... N3) are degrees with a name of their own; R2 and G1 share a semitone and are still different degrees,
/// since each keeps its letter. Western scales outside the svaras (a lowered fifth) have degrees without a svara name.
/// Common practice. <c>default</c> is S. Immutable.
/// </remarks>
[JsonConverter(typeof(TextJsonConverter<Degree>))]
public readonly struct Degree : IEquatable<Degree>, IComparable<Degree>, ITextForm<Degree>
{
    /// <summary>The smallest and, with its sign turned, the largest alteration, in semitones.</summary>
    internal const int LowestAlteration = -2;

    /// <summary>The number of different degrees: seven letters with five alterations each.</summary>
    internal const int Count = 7 * Alterations;

    private const int Alterations = 1 - (2 * LowestAlteration);
    private const string Letters = "SRGMPDN";
    private static ReadOnlySpan<sbyte> Major => [0, 2, 4, 5, 7, 9, 11];

    // One number, as in ScaleTone: the letter from 0 in its high half, the alteration in its low half.
    private readonly short _packed;

    /// <summary>Makes a degree.</summary>
    /// <param name="letter">1 (S) to 7 (N).</param>
    /// <param name="alteration">Semitones above the major scale's degree, -2 to 2.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public Degree(int letter, int alteration = 0)
    {
        var (high, low) = (Require.InRange(letter, 1, 7) - 1, Require.InRange(alteration, LowestAlteration, -LowestAlteration));
        _packed = unchecked((short)((high << 8) | (byte)low));
    }

    private Degree(short packed) => _packed = packed;

    /// <summary>The degree as one number, 0 for S.</summary>
    internal short Packed => _packed;

    /// <summary>The degree that <see cref="Packed"/> gave a number.</summary>
    internal static Degree Unpacked(short packed) => new(packed);

    private int Index => _packed >> 8;

    /// <summary>The number of the letter: 1 for S, 7 for N.</summary>
    public int Letter => Index + 1;

    /// <summary>Semitones above the major scale's degree.</summary>
    public int Alteration => unchecked((sbyte)_packed);

    /// <summary>Semitones above the tonic, -2 to 13; 0 to 11 for the svaras.</summary>
    public int Semitones => Major[Index] + Alteration;

    /// <summary>The variant of a svara (1, 2 or 3); 0 for S and P, which have none, and for a degree that is not a svara.</summary>
    public int Variant => Index switch
    {
        1 or 5 => InVariants(Alteration + 2),
        2 or 6 => InVariants(Alteration + 3),
        3 => Alteration is 0 or 1 ? Alteration + 1 : 0,
        _ => 0,
    };

    /// <summary>Whether the degree is one of the sixteen svaras.</summary>
    public bool IsSvara => Index is 0 or 4 ? Alteration == 0 : Variant != 0;

    /// <summary>The letter alone: S, R, G, M, P, D or N.</summary>
    internal char SvaraLetter => Letters[Index];

    /// <summary>All degrees, in the order of their <see cref="Ordinal"/>.</summary>
    internal static ValueList<Degree> All => AllDegrees.Value;

    /// <summary>A number of the degree's own, from 0 to below <see cref="Count"/>.</summary>
    internal int Ordinal => unchecked((Alterations * Index) + Alteration - LowestAlteration);

    /// <summary>Equality of letter and alteration.</summary>
    /// <param name="left">One degree.</param>
    /// <param name="right">The other.</param>
    public static bool operator ==(Degree left, Degree right) => left.Equals(right);

    /// <summary>Inequality of letter or alteration.</summary>
    /// <param name="left">One degree.</param>
    /// <param name="right">The other.</param>
    public static bool operator !=(Degree left, Degree right) => !left.Equals(right);

    /// <summary>The svara of a letter and a variant.</summary>
    /// <param name="letter">S, R, G, M, P, D or N.</param>
    /// <param name="variant">1 to 3 for R G D N, 1 to 2 for M, 0 for S and P.</param>
    /// <param name="degree">The degree, or S.</param>
    /// <returns>Whether there is such a svara.</returns>
    internal static bool TryFromSvara(char letter, int variant, out Degree degree)
    {
        degree = default;
        var index = Letters.IndexOf(letter, StringComparison.Ordinal);
        var alteration = index switch
        {
            0 or 4 => variant,
            1 or 5 => variant - 2,
            2 or 6 => variant - 3,
            3 => variant - 1,
            _ => int.MaxValue,
        };
        var lowest = index switch { 0 or 4 => 0, 1 or 5 => -1, 2 or 6 => -2, _ => 0 };
        var highest = index switch { 0 or 4 => 0, 3 => 1, 1 or 5 => 1, _ => 0 };
        if (alteration < lowest || alteration > highest)
        {
            return false;
        }

        degree = new Degree(index + 1, alteration);
        return true;
    }

    static int ITextForm<Degree>.LongestText => 64;

    static string ITextForm<Degree>.What => "a degree";

    /// <summary>Reads a svara (<c>R2</c>, <c>S</c>) or a scale number with accidentals (<c>b5</c>, <c>#4</c>, <c>3</c>).</summary>
    /// <param name="text">The text; white space around it has no meaning.</param>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is <see langword="null"/>.</exception>
    /// <exception cref="WarmupFormatException">The text is not a degree.</exception>
    public static Degree Parse(string text) => TextForm.Parse<Degree>(text);

    /// <summary>Reads a degree as <see cref="Parse"/> does.</summary>
    /// <param name="text">The text.</param>
    /// <param name="degree">The degree, or S.</param>
    /// <param name="error">What is wrong, or <see langword="null"/>.</param>
    /// <returns>Whether the text was a degree.</returns>
    public static bool TryParse([NotNullWhen(true)] string? text, out Degree degree, [NotNullWhen(false)] out TextError? error) =>
        TextForm.TryParse(text, out degree, out error);

    static Degree IParsable<Degree>.Parse(string s, IFormatProvider? provider) => Parse(s);

    static bool IParsable<Degree>.TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, out Degree result) => TryParse(s, out result, out _);

    static Degree ISpanParsable<Degree>.Parse(ReadOnlySpan<char> s, IFormatProvider? provider) => TextForm.Parse<Degree>(s);

    static bool ISpanParsable<Degree>.TryParse(ReadOnlySpan<char> s, IFormatProvider? provider, out Degree result) => TextForm.TryParse(s, out result, out _);

    static bool ITextForm<Degree>.TryRead(TextCursor cursor, out Degree value, [NotNullWhen(false)] out TextError? error)
    {
        var word = cursor.Trimmed();
        error = TryRead(word, out value) ? null : word.Error(word.IsAtEnd ? "the degree is missing; write a svara such as R2 or a scale number such as b5" : ToneText.WhyNot(word.Rest));
        return error is null;
    }

    /// <summary>Reads a word that is a degree.</summary>
    internal static bool TryRead(TextCursor word, out Degree degree)
    {
        degree = default;
        if (char.IsAsciiLetterUpper(word.Peek()))
        {
            var letter = word.Peek();
            word.Position++;
            var variant = word.Peek() is >= '1' and <= '3' and var digit ? digit - '0' : 0;
            word.Position += variant == 0 ? 0 : 1;
            return word.IsAtEnd && TryFromSvara(letter, variant, out degree);
        }

        var alteration = Accidentals.Take(ref word);
        var number = word.Peek() - '0';
        word.Position++;
        if (number is < 1 or > 7 || Math.Abs(alteration) > -LowestAlteration || !word.IsAtEnd)
        {
            return false;
        }

        degree = new Degree(number, alteration);
        return true;
    }

    /// <summary>Reads notes in any order: svaras, scale numbers or solfa, separated by spaces or commas: <c>S R2 G3 P</c>.</summary>
    /// <param name="text">The text, at most 400 characters; octave marks are ignored, and a note that stands twice counts once.</param>
    /// <param name="degrees">The notes in the order in which they stand, or none.</param>
    /// <param name="error">What is wrong, or <see langword="null"/>.</param>
    /// <returns>Whether the text held one note or more and nothing else.</returns>
    public static bool TryParseList([NotNullWhen(true)] string? text, out ValueList<Degree> degrees, [NotNullWhen(false)] out TextError? error)
    {
        degrees = default;
        if (text?.Length > ToneText.LongestList)
        {
            error = TextError.At(1, string.Create(CultureInfo.InvariantCulture, $"a list of notes must be at most {ToneText.LongestList} characters long, not {text.Length}"));
            return false;
        }

        return ToneText.TryReadDegrees(new TextCursor(text), out degrees, out error);
    }

    /// <inheritdoc/>
    public int CompareTo(Degree other) => Semitones != other.Semitones ? Semitones.CompareTo(other.Semitones) : Index.CompareTo(other.Index);

    /// <inheritdoc/>
    public bool Equals(Degree other) => _packed == other._packed;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is Degree other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => (Index * 8) + Alteration + 2;

    /// <summary>The svara's name where there is one (<c>R2</c>), otherwise the scale number with accidentals (<c>b5</c>); <see cref="Parse"/> reads it back.</summary>
    public override string ToString()
    {
        if (Index is 0 or 4 && Alteration == 0)
        {
            return SvaraLetter.ToString();
        }

        return Variant != 0
            ? string.Create(CultureInfo.InvariantCulture, $"{SvaraLetter}{Variant}")
            : ToNumber();
    }

    /// <summary>The scale number with accidentals: <c>b3</c> for G2, <c>#2</c> for R3.</summary>
    internal string ToNumber() =>
        string.Create(CultureInfo.InvariantCulture, $"{new string(Alteration < 0 ? 'b' : '#', Math.Abs(Alteration))}{Letter}");

    // With a plain loop: the table is made in every process, before its first drill.
    internal static ValueList<Degree> MakeAll()
    {
        var all = new Degree[Count];
        for (var i = 0; i < all.Length; i++)
        {
            all[i] = new Degree((i / Alterations) + 1, (i % Alterations) + LowestAlteration);
        }

        return ValueList.Adopt(all);
    }

    private static int InVariants(int variant) => variant is >= 1 and <= 3 ? variant : 0;
}

/// <summary>All degrees, made once; apart, since a struct of .NET 8 cannot hold a static list of itself.</summary>
file static class AllDegrees
{
    public static ValueList<Degree> Value { get; } = Degree.MakeAll();
}
