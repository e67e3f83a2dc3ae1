using System.Globalization;

namespace Warmup.Sheets;

/// <summary>How a practice page is written and plays. Immutable, value equality.</summary>
public sealed record HtmlOptions
{
    /// <summary>The lowest end of the tempo slider, in percent of the written tempo (the project's own bound).</summary>
    public const int LowestPercent = 10;

    /// <summary>The highest end of the tempo slider, in percent of the written tempo (the project's own bound).</summary>
    public const int HighestPercent = 400;

    private readonly int _slowestPercent = 50;
    private readonly int _fastestPercent = 150;
    private readonly int _countInBeats = 4;

    /// <summary>The options unless others are given.</summary>
    public static HtmlOptions Default { get; } = new();

    /// <summary>The slow end of the tempo slider, in percent of the written tempo: 10 to 100; 50 by default (the project's own setting).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int SlowestPercent
    {
        get => _slowestPercent;
        init => _slowestPercent = InRange(value, LowestPercent, 100, nameof(SlowestPercent));
    }

    /// <summary>The fast end of the tempo slider, in percent of the written tempo: 100 to 400; 150 by default (the project's own setting).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int FastestPercent
    {
        get => _fastestPercent;
        init => _fastestPercent = InRange(value, 100, HighestPercent, nameof(FastestPercent));
    }

    /// <summary>
    /// The tempi that the singers can take, as <see cref="TempoWindow"/> finds them; the slider then goes from the slowest to the fastest,
    /// in whole percent of the score's first tempo, and to the written tempo where that lies outside. <see langword="null"/>, the default,
    /// leaves it to the percentages.
    /// </summary>
    public TempoInterval? Tempi { get; init; }

    /// <summary>
    /// The clicks before the page begins to play, at the tempo of the line it begins with: 0 to 64; 4 by default (the project's own
    /// setting), and none before a score that counts itself in.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int CountInBeats
    {
        get => _countInBeats;
        init => _countInBeats = InRange(value, 0, Meter.MostBeats, nameof(CountInBeats));
    }

    /// <summary>
    /// What is written for each note, without octave dots, which the page adds. <see langword="null"/>, the default, takes what the score
    /// sings where that is svara letters in a script, solfa or numbers, and Latin svara letters otherwise.
    /// </summary>
    public Syllables? Letters { get; init; }

    /// <summary>The ends of the slider in percent.</summary>
    internal (int Slowest, int Fastest) Percents(Rational tempo) => Tempi is { } tempi
        ? ((int)Rational.Max(LowestPercent, Rational.Min(100, ((Rational)(tempi.Slowest * 100) / tempo).Ceiling())).Floor(),
            (int)Rational.Min(HighestPercent, Rational.Max(100, ((Rational)(tempi.Fastest * 100) / tempo).Floor())).Floor())
        : (SlowestPercent, FastestPercent);

    private static int InRange(int value, int low, int high, string name) => value >= low && value <= high
        ? value
        : throw new ArgumentOutOfRangeException(
            name, value, string.Create(CultureInfo.InvariantCulture, $"{name} must be between {low} and {high}, not {value}"));
}
