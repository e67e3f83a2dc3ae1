namespace Warmup;

/// <summary>How a drill's drone is strung and played: a tanpura of four or five strings, or a sruti box.</summary>
/// <remarks>
/// <para>The tanpura is tuned to a first string, the middle S twice and the low S: P S S S, M S S S or N S S S with the first and the
/// last below (Wikipedia, Tanpura). With five strings an N follows the first. The first string is P where the scale has it, else M1, else
/// N3, else the low S, unless <see cref="First"/> says otherwise.</para>
/// <para>The sruti box holds the low S, the first string's note above it and the middle S. It takes P where the scale has it, else M1,
/// else S alone: a seventh held with the tonic is harsh (the project's own setting).</para>
/// <para>All notes are in the drill's tuning. Immutable, value equality.</para>
/// </remarks>
public sealed record DroneStyle
{
    private DroneStyle(bool isHeld) => IsHeld = isHeld;

    /// <summary>A tanpura of four strings, plucked a second apart with two seconds after the last.</summary>
    public static DroneStyle Tanpura { get; } = new(false);

    /// <summary>A sruti box: the tonic and the fifth held throughout.</summary>
    public static DroneStyle SrutiBox { get; } = new(true);

    /// <summary>Whether notes are held throughout instead of plucked.</summary>
    public bool IsHeld { get; }

    /// <summary>The note of the first string, taken below the middle S; <see langword="null"/>, the default, chooses it by the scale.</summary>
    public Degree? First { get; init; }

    /// <summary>The strings of a tanpura: 4 (the default) or 5. A sruti box has none.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is neither.</exception>
    public int StringCount { get; init => field = Require.InRange(value, 4, 5, nameof(StringCount)); } = 4;

    /// <summary>
    /// The note of the second of five strings, taken below the middle S; <see langword="null"/>, the default, takes the scale's highest N.
    /// A scale without N then leaves it at four strings, and a finding says so.
    /// </summary>
    public Degree? Second { get; init; }

    /// <summary>From one stroke to the next, in seconds: 0 to 60; 1 by default (the project's own setting).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public Rational StrokeSeconds { get; init => field = Require.InRange(value, 0, Drone.LongestSeconds, nameof(StrokeSeconds)); } = Rational.One;

    /// <summary>From the last stroke of a cycle to the first of the next, in seconds: 0.1 to 60; 2 by default (2 to 3 s are described for the tanpura; the shortest is taken).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public Rational RestSeconds { get; init => field = Require.InRange(value, Drone.ShortestRest, Drone.LongestSeconds, nameof(RestSeconds)); } = 2;

    /// <summary>The drone for a scale.</summary>
    /// <param name="scale">The scale.</param>
    /// <param name="tonic">The tonic.</param>
    /// <param name="tuning">The tuning, the drill's own.</param>
    /// <param name="tonicName">The written name of the tonic.</param>
    public Drone For(Scale scale, Tonic tonic, Tuning tuning, NoteName tonicName)
    {
        ArgumentNullException.ThrowIfNull(scale);
        ArgumentNullException.ThrowIfNull(tonic);
        ArgumentNullException.ThrowIfNull(tuning);
        var hz = tonic.Hz;
        var strings = TonesFor(scale).ConvertAll(tone => ScorePitch.Of(tone, tonic, hz, tuning, tonicName));
        return new Drone(strings, StrokeSeconds, RestSeconds) { IsHeld = IsHeld };
    }

    /// <summary>Why the drone has one string less than the style names, or <see langword="null"/>.</summary>
    internal Finding? Missing(Scale scale) => IsHeld || StringCount == 4 || SecondFor(scale) is not null
        ? null
        : new Finding(
            FindingCode.DroneWithoutString,
            Severity.Note,
            $"{scale.Name} has no N for the second of 5 drone strings; the drone has 4",
            "name the second string's note, or leave it at 4");

    /// <summary>The style's name: <c>tanpura</c> or <c>sruti-box</c>.</summary>
    public override string ToString() => IsHeld ? "sruti-box" : "tanpura";

    // In the order in which they are plucked; of a sruti box from low to high.
    private ValueList<ScaleTone> TonesFor(Scale scale)
    {
        ScaleTone middle = default;
        var low = new ScaleTone(default, -1);
        var first = (First ?? FirstOf(scale, IsHeld ? [new(5), new(4)] : [new(5), new(4), new(7)])) is { } degree ? new ScaleTone(degree, -1) : low;
        if (IsHeld)
        {
            return first == low ? [low, middle] : [low, first, middle];
        }

        return StringCount == 5 && SecondFor(scale) is { } second
            ? [first, new ScaleTone(second, -1), middle, middle, low]
            : [first, middle, middle, low];
    }

    private Degree? SecondFor(Scale scale) => Second ?? FirstOf(scale, [new(7), new(7, -1), new(7, -2)]);

    private static Degree? FirstOf(Scale scale, ReadOnlySpan<Degree> wanted)
    {
        foreach (var degree in wanted)
        {
            if (scale.Contains(degree))
            {
                return degree;
            }
        }

        return null;
    }
}
