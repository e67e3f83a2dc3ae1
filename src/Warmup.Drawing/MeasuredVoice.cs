using System.Globalization;

namespace Warmup.Drawing;

/// <summary>A voice and what was measured of it over time, for a <see cref="HistoryChart"/>. Immutable, value equality.</summary>
public sealed record MeasuredVoice
{
    // The project's own bounds.
    private const int LongestName = 60;
    private const int MostPoints = 1_000;

    /// <summary>Makes a voice.</summary>
    /// <param name="name">The name above the chart, 1 to 60 characters without control characters.</param>
    /// <param name="points">What was measured, 1 to 1,000, in the order of the days.</param>
    /// <exception cref="ArgumentException">The name is missing, too long or holds control characters; there are no or too many points, one is missing, or two have the same day or the wrong order.</exception>
    public MeasuredVoice(string name, ValueList<MeasuredPoint> points)
    {
        Name = Require.PlainText(name, LongestName, nameof(name));
        Require.InRange(points.Count, 1, MostPoints, "the number of points");
        for (var i = 0; i < points.Count; i++)
        {
            Require.NotNull(points[i], nameof(points));
            if (i > 0 && points[i].Date <= points[i - 1].Date)
            {
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"the points must follow each other by their days, and {points[i].Date:yyyy-MM-dd} does not come after {points[i - 1].Date:yyyy-MM-dd}"), nameof(points));
            }
        }

        Points = points;
    }

    /// <summary>The name.</summary>
    public string Name { get; }

    /// <summary>What was measured, the oldest first.</summary>
    public ValueList<MeasuredPoint> Points { get; }

    /// <summary>The name and the number of points.</summary>
    public override string ToString() => OneLine.Of(string.Create(CultureInfo.InvariantCulture, $"{Name}: {Points.Count} {(Points.Count == 1 ? "point" : "points")}"));
}

/// <summary>What was measured on one day. Immutable, value equality.</summary>
public sealed record MeasuredPoint
{
    private readonly NoteName? _fullLow;
    private readonly NoteName? _fullHigh;

    /// <summary>Makes a point.</summary>
    /// <param name="date">The day.</param>
    /// <param name="low">The lowest comfortable note.</param>
    /// <param name="high">The highest comfortable note, not below the lowest.</param>
    /// <param name="sustainedSeconds">The longest sustained tone in seconds, above 0, at most 600.</param>
    /// <exception cref="ArgumentException">The range is upside down, or the tone lies outside its range.</exception>
    public MeasuredPoint(DateOnly date, NoteName low, NoteName high, Rational sustainedSeconds)
    {
        if (low.Midi > high.Midi)
        {
            throw new ArgumentException($"the lowest note must not lie above the highest, and {low} lies above {high}", nameof(low));
        }

        (Date, Low, High) = (date, low, high);
        SustainedSeconds = Require.InRange(sustainedSeconds, new Rational(1, 100), 600, nameof(sustainedSeconds));
    }

    /// <summary>The day.</summary>
    public DateOnly Date { get; }

    /// <summary>The lowest comfortable note.</summary>
    public NoteName Low { get; }

    /// <summary>The highest comfortable note.</summary>
    public NoteName High { get; }

    /// <summary>The longest sustained tone, in seconds.</summary>
    public Rational SustainedSeconds { get; }

    /// <summary>The lowest note of the full range; <see langword="null"/>, the default, where it is not known.</summary>
    /// <exception cref="ArgumentException">The note lies above the lowest comfortable one.</exception>
    public NoteName? FullLow
    {
        get => _fullLow;
        init => _fullLow = value is not { } note || note.Midi <= Low.Midi ? value : throw new ArgumentException($"FullLow must not lie above {Low}, as {note} does", nameof(FullLow));
    }

    /// <summary>The highest note of the full range; <see langword="null"/>, the default, where it is not known.</summary>
    /// <exception cref="ArgumentException">The note lies below the highest comfortable one.</exception>
    public NoteName? FullHigh
    {
        get => _fullHigh;
        init => _fullHigh = value is not { } note || note.Midi >= High.Midi ? value : throw new ArgumentException($"FullHigh must not lie below {High}, as {note} does", nameof(FullHigh));
    }

    /// <summary>Whether the range was assumed from a voice type and not measured; false by default.</summary>
    public bool IsAssumed { get; init; }

    /// <summary>The day, the range and the tone.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Date:yyyy-MM-dd}: {Low} to {High}{(IsAssumed ? " (assumed)" : string.Empty)}, {SustainedSeconds.ToDouble():0.##} s");
}
