using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json.Serialization;

namespace Warmup;

/// <summary>How many notes an akshara has: gati x 2^(kalam - 1) / 4.</summary>
/// <remarks>
/// In chatusra gati (4) the first, second, third and fourth speed have 1, 2, 4 and 8 notes an akshara (common practice).
/// <c>default</c> is the first speed in chatusra gati. Immutable, value equality.
/// </remarks>
[JsonConverter(typeof(TextJsonConverter<Speed>))]
public readonly record struct Speed : ITextForm<Speed>
{
    internal const int HighestKalam = 4;

    private readonly byte _kalamLessOne;
    private readonly byte _gatiIndex;

    /// <summary>Makes a speed.</summary>
    /// <param name="kalam">1 to 4.</param>
    /// <param name="gati">3, 4, 5, 7 or 9.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is none of these.</exception>
    public Speed(int kalam, int gati = 4)
    {
        _kalamLessOne = (byte)(Require.InRange(kalam, 1, HighestKalam) - 1);
        var index = Gatis.IndexOf((byte)Require.InRange(gati, 3, 9));
        _gatiIndex = index >= 0
            ? (byte)index
            : throw new ArgumentOutOfRangeException(nameof(gati), gati, string.Create(CultureInfo.InvariantCulture, $"gati must be 3, 4, 5, 7 or 9, not {gati}"));
    }

    /// <summary>The first speed.</summary>
    public static Speed First => new(1);

    /// <summary>The second speed, twice as fast.</summary>
    public static Speed Second => new(2);

    /// <summary>The third speed, four times as fast.</summary>
    public static Speed Third => new(3);

    /// <summary>
    /// The speed that teachers mean when they name a gati alone (common practice): the first in chatusra gati (4), the third in any other, where an
    /// akshara has as many notes as the gati says.
    /// </summary>
    /// <param name="gati">3, 4, 5, 7 or 9.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is none of these.</exception>
    public static Speed OfGati(int gati) => new(gati == 4 ? 1 : 3, gati);

    /// <summary>The speed's number: 1 to 4.</summary>
    public int Kalam => _kalamLessOne + 1;

    /// <summary>Subdivisions of an akshara in the third speed: 3, 4, 5, 7 or 9.</summary>
    public int Gati => Gatis[_gatiIndex];

    /// <summary>Notes of one unit that an akshara holds.</summary>
    public Rational NotesPerAkshara => new(Gati * (1L << _kalamLessOne), 4);

    /// <summary>The length of one unit in aksharas.</summary>
    public Rational Unit => new(4, Gati * (1L << _kalamLessOne));

    // Chatusra first, so that the default value is the plain first speed.
    private static ReadOnlySpan<byte> Gatis => [4, 3, 5, 7, 9];

    static int ITextForm<Speed>.LongestText => 64;

    static string ITextForm<Speed>.What => "a speed";

    /// <summary>
    /// Reads a speed: <c>speed 2</c>, <c>speed 2, gati 3</c>, or the number alone: <c>2</c>; or a gati by its name, <c>tisra nadai</c> or
    /// <c>tisra gati</c>, which is <see cref="OfGati"/>, also with <c>, three to the akshara</c>, <c>three to two aksharas</c>, <c>three to
    /// four aksharas</c> or <c>six to the akshara</c> after it.
    /// </summary>
    /// <param name="text">The text, in any case; white space around it has no meaning. After <c>gati</c> may stand the number or the name.</param>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is <see langword="null"/>.</exception>
    /// <exception cref="WarmupFormatException">The text is not a speed.</exception>
    public static Speed Parse(string text) => TextForm.Parse<Speed>(text);

    /// <summary>Reads a speed as <see cref="Parse"/> does.</summary>
    /// <param name="text">The text.</param>
    /// <param name="speed">The speed, or the first speed.</param>
    /// <param name="error">What is wrong, or <see langword="null"/>.</param>
    /// <returns>Whether the text was a speed.</returns>
    public static bool TryParse([NotNullWhen(true)] string? text, out Speed speed, [NotNullWhen(false)] out TextError? error) =>
        TextForm.TryParse(text, out speed, out error);

    static Speed IParsable<Speed>.Parse(string s, IFormatProvider? provider) => Parse(s);

    static bool IParsable<Speed>.TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, out Speed result) => TryParse(s, out result, out _);

    static Speed ISpanParsable<Speed>.Parse(ReadOnlySpan<char> s, IFormatProvider? provider) => TextForm.Parse<Speed>(s);

    static bool ISpanParsable<Speed>.TryParse(ReadOnlySpan<char> s, IFormatProvider? provider, out Speed result) => TextForm.TryParse(s, out result, out _);

    static bool ITextForm<Speed>.TryRead(TextCursor cursor, out Speed value, [NotNullWhen(false)] out TextError? error) => SpeedText.TryRead(cursor, out value, out error);

    /// <summary>
    /// <c>speed 2</c>; in a gati other than 4 its name and how many notes go to the akshara: <c>tisra nadai, three to the akshara</c>.
    /// <see cref="Parse"/> reads it back.
    /// </summary>
    public override string ToString() => SpeedText.Write(this);
}
