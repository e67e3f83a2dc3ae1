using System.Globalization;

namespace Warmup;

/// <summary>How many notes an akshara has: gati times two to the power of kalam less one, a quarter of it.</summary>
/// <remarks>
/// In chatusra gati (4) the first, second, third and fourth speed have 1, 2, 4 and 8 notes an akshara (common practice).
/// <c>default</c> is the first speed in chatusra gati.
/// </remarks>
public readonly record struct Speed
{
    private readonly byte _kalamLessOne;
    private readonly byte _gatiIndex;

    /// <summary>Makes a speed.</summary>
    /// <param name="kalam">1 to 4.</param>
    /// <param name="gati">3, 4, 5, 7 or 9.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is none of these.</exception>
    public Speed(int kalam, int gati = 4)
    {
        _kalamLessOne = (byte)(Require.InRange(kalam, 1, 4) - 1);
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

    /// <summary>The kalam, and the gati where it is not 4: <c>speed 2</c>, <c>speed 3, gati 3</c>.</summary>
    public override string ToString() => Gati == 4
        ? string.Create(CultureInfo.InvariantCulture, $"speed {Kalam}")
        : string.Create(CultureInfo.InvariantCulture, $"speed {Kalam}, gati {Gati}");
}
