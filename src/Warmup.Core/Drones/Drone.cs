using System.Globalization;

namespace Warmup;

/// <summary>A string of the drone, or a reed of one that is held. Immutable, value equality.</summary>
public sealed record DroneString
{
    internal DroneString(ScorePitch pitch) => Pitch = pitch;

    /// <summary>Its pitch.</summary>
    public ScorePitch Pitch { get; }

    /// <summary>The pitch.</summary>
    public override string ToString() => Pitch.ToString();
}

/// <summary>A stroke of a drone string. Immutable, value equality.</summary>
public readonly record struct DroneStroke
{
    internal DroneStroke(int stringIndex, Rational onset, Rational length) => (StringIndex, Onset, Length) = (stringIndex, onset, length);

    /// <summary>The index of the string in <see cref="Drone.Strings"/>.</summary>
    public int StringIndex { get; }

    /// <summary>When, in seconds from the score's beginning.</summary>
    public Rational Onset { get; }

    /// <summary>How long it rings, in seconds.</summary>
    public Rational Length { get; }
}

/// <summary>
/// The drone of a score: strings plucked evenly one after the other with a longer rest after the last, or notes held throughout. It
/// keeps its own clock in seconds, free of the beat (common practice). <see cref="DroneStyle"/> chooses the strings.
/// </summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record Drone
{
    /// <summary>A plucked drone.</summary>
    /// <param name="strings">The strings in the order in which they are plucked: 1 to 32.</param>
    /// <param name="strokeSeconds">From one stroke to the next, in seconds: 0 to 60.</param>
    /// <param name="restSeconds">From the last stroke of a cycle to the first of the next, in seconds: 0.1 to 60.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public Drone(ValueList<DroneString> strings, Rational strokeSeconds, Rational restSeconds)
    {
        Strings = strings;
        StrokeSeconds = strokeSeconds;
        RestSeconds = restSeconds;
    }

    /// <summary>The most strings: 32 (the project's own bound).</summary>
    internal static int MostStrings => 32;

    /// <summary>The longest time between two strokes, in seconds: 60 (the project's own bound).</summary>
    internal static int LongestSeconds => 60;

    /// <summary>The usual time between two strokes, in seconds: 1 (the project's own setting).</summary>
    internal static Rational UsualStroke => Rational.One;

    /// <summary>The usual time after the last stroke, in seconds: 2 (2 to 3 s are described for the tanpura; the shortest is taken).</summary>
    internal static Rational UsualRest => 2;

    /// <summary>The shortest time after the last stroke, in seconds: 1/10 (the project's own bound), since a cycle of no length would have strokes without end.</summary>
    internal static Rational ShortestRest => new(1, 10);

    /// <summary>The strings in the order in which they are plucked: 1 to 32.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There are none, or too many.</exception>
    public ValueList<DroneString> Strings
    {
        get;
        init
        {
            Require.InRange(value.Count, 1, MostStrings, "the number of drone strings");
            field = value;
        }
    }

    /// <summary>From one stroke to the next, in seconds: 0 to 60; 0 plucks all strings at once.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public Rational StrokeSeconds { get; init => field = Require.InRange(value, 0, LongestSeconds, nameof(StrokeSeconds)); }

    /// <summary>From the last stroke of a cycle to the first of the next, in seconds: 0.1 to 60.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public Rational RestSeconds { get; init => field = Require.InRange(value, ShortestRest, LongestSeconds, nameof(RestSeconds)); }

    /// <summary>Whether the strings are not plucked but held from the beginning to the end, as a sruti box does; false by default.</summary>
    public bool IsHeld { get; init; }

    /// <summary>The length of one cycle in seconds, above 0; a held drone has none.</summary>
    public Rational CycleSeconds => (StrokeSeconds * (Strings.Count - 1)) + RestSeconds;

    /// <summary>The usual tanpura for a scale: <see cref="DroneStyle.Tanpura"/> with the scale's own first string.</summary>
    /// <param name="scale">The scale.</param>
    /// <param name="tonic">The tonic.</param>
    /// <param name="tuning">The tuning, the drill's own.</param>
    /// <param name="tonicName">The written name of the tonic.</param>
    public static Drone Tanpura(Scale scale, Tonic tonic, Tuning tuning, NoteName tonicName) =>
        DroneStyle.Tanpura.For(scale, tonic, tuning, tonicName);

    /// <summary>How many strings there are, and how they are played.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Strings.Count} {(Strings.Count == 1 ? "string" : "strings")}, {(IsHeld ? "held" : $"plucked every {StrokeSeconds} s, {RestSeconds} s after the last")}");

    /// <summary>
    /// The strokes that begin before a time; each rings until its string is plucked again or the time is over. A held drone has one stroke
    /// a string, which lasts all the time.
    /// </summary>
    /// <param name="seconds">The length of the score in seconds.</param>
    public IEnumerable<DroneStroke> Strokes(Rational seconds)
    {
        if (IsHeld)
        {
            for (var i = 0; i < Strings.Count && seconds.Sign > 0; i++)
            {
                yield return new DroneStroke(i, Rational.Zero, seconds);
            }

            yield break;
        }

        for (var cycle = Rational.Zero; cycle < seconds; cycle += CycleSeconds)
        {
            for (var i = 0; i < Strings.Count; i++)
            {
                var onset = cycle + (StrokeSeconds * i);
                if (onset >= seconds)
                {
                    yield break;
                }

                yield return new DroneStroke(i, onset, Rational.Min(CycleSeconds, seconds - onset));
            }
        }
    }
}
