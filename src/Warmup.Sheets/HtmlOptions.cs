using System.Globalization;

namespace Warmup.Sheets;

/// <summary>How a practice page is written and plays. Immutable, value equality.</summary>
public sealed record HtmlOptions
{
    // The project's own bounds.
    private const int LowestPercent = 10;
    private const int HighestPercent = 400;
    private const int MostCountInBeats = 64;

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
        init => _slowestPercent = Require.InRange(value, LowestPercent, 100, nameof(SlowestPercent));
    }

    /// <summary>The fast end of the tempo slider, in percent of the written tempo: 100 to 400; 150 by default (the project's own setting).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int FastestPercent
    {
        get => _fastestPercent;
        init => _fastestPercent = Require.InRange(value, 100, HighestPercent, nameof(FastestPercent));
    }

    /// <summary>
    /// The tempi of the slider, those at which a class can sing the drill for instance: from the slowest to the fastest in whole percent of the score's
    /// first tempo, and as far as the written tempo where that lies outside. <see langword="null"/>, the default, takes
    /// <see cref="SlowestPercent"/> and <see cref="FastestPercent"/>.
    /// </summary>
    public TempoRange? Tempi { get; init; }

    /// <summary>
    /// The clicks before the page plays, at the tempo of the line with which it begins: 0 to 64; 4 by default (the project's own setting). There are
    /// none before a score that counts itself in.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int CountInBeats
    {
        get => _countInBeats;
        init => _countInBeats = Require.InRange(value, 0, MostCountInBeats, nameof(CountInBeats));
    }

    /// <summary>
    /// What is written for each note, without octave dots: the page adds them. <see langword="null"/>, the default, takes what the score sings where
    /// that is svara letters in a script, solfa or numbers, and Latin svara letters otherwise.
    /// </summary>
    public Syllables? Letters { get; init; }

    /// <summary>
    /// Whether the lines have a blank for each note, to be heard and written down; a key with the notes follows the lines, closed until it is asked for, and prints on another page. No by default.
    /// </summary>
    public bool HasHiddenNotes { get; init; }

    /// <summary>The ends of the slider, and the clicks before it plays.</summary>
    public override string ToString() => OneLine.Of(string.Create(
        CultureInfo.InvariantCulture,
        $"tempo {(Tempi is null ? $"{SlowestPercent} to {FastestPercent} %" : Tempi.ToString())}, {CountInBeats} beats of count-in, letters {Letters?.ToString() ?? "as sung"}{(HasHiddenNotes ? ", notes hidden" : string.Empty)}"));

    /// <summary>The ends of the slider in percent of the written tempo.</summary>
    internal (int Slowest, int Fastest) Percents(Rational tempo) => Tempi is { } tempi
        ? (Percent(tempi.Slowest * 100 / tempo, isCeiling: true, LowestPercent, 100), Percent(tempi.Fastest * 100 / tempo, isCeiling: false, 100, HighestPercent))
        : (SlowestPercent, FastestPercent);

    private static int Percent(Rational exact, bool isCeiling, int low, int high) => (int)Math.Clamp(isCeiling ? exact.Ceiling() : exact.Floor(), low, high);
}
