namespace Warmup;

/// <summary>A string of the drone.</summary>
/// <param name="Pitch">Its pitch.</param>
public sealed record DroneString(ScorePitch Pitch);

/// <summary>A stroke of a drone string.</summary>
/// <param name="StringIndex">The index of the string in <see cref="Drone.Strings"/>.</param>
/// <param name="Onset">When, in seconds from the score's beginning.</param>
/// <param name="Length">How long it rings, in seconds.</param>
public readonly record struct DroneStroke(int StringIndex, Rational Onset, Rational Length);

/// <summary>
/// A tanpura: strings plucked evenly one after the other, a longer rest behind the last. It keeps its own clock in seconds, free of the
/// beat (common practice).
/// </summary>
/// <param name="Strings">The strings in the order in which they are plucked.</param>
/// <param name="StrokeSeconds">From one stroke to the next, in seconds.</param>
/// <param name="RestSeconds">From the last stroke of a cycle to the first of the next, in seconds.</param>
/// <remarks>Immutable, value equality.</remarks>
public sealed record Drone(ValueList<DroneString> Strings, Rational StrokeSeconds, Rational RestSeconds)
{
    /// <summary>The usual time between two strokes, in seconds (the project's own setting).</summary>
    public static Rational UsualStroke => Rational.One;

    /// <summary>The usual time behind the last stroke, in seconds (2 to 3 s are described for the tanpura; the shortest is taken).</summary>
    public static Rational UsualRest => 2;

    /// <summary>The length of one cycle in seconds.</summary>
    public Rational CycleSeconds => (StrokeSeconds * (Strings.Count - 1)) + RestSeconds;

    /// <summary>
    /// The tanpura for a scale: its first string is the low P where the scale has P, else the low M1, else the low N3, else S; then the
    /// middle S twice and the low S.
    /// </summary>
    /// <param name="scale">The scale.</param>
    /// <param name="tonic">The tonic.</param>
    /// <param name="tuning">The tuning, the drill's own.</param>
    /// <param name="tonicName">The written name of the tonic.</param>
    public static Drone Tanpura(Scale scale, Tonic tonic, Tuning tuning, NoteName tonicName)
    {
        ScaleTone first = default;
        foreach (var degree in (ReadOnlySpan<Degree>)[new(5), new(4), new(7)])
        {
            if (scale.Contains(degree))
            {
                first = new ScaleTone(degree, -1);
                break;
            }
        }

        ReadOnlySpan<ScaleTone> tones = [first, default, default, new(default, -1)];
        var strings = new DroneString[tones.Length];
        for (var i = 0; i < strings.Length; i++)
        {
            strings[i] = new DroneString(ScoreBuilder.Pitch(tones[i], tonic, tuning, tonicName));
        }

        return new Drone(ValueList.Adopt(strings), UsualStroke, UsualRest);
    }

    /// <summary>The strokes that begin before a time; each rings until its string is plucked again or the time is over.</summary>
    /// <param name="seconds">The length of the score in seconds.</param>
    public IEnumerable<DroneStroke> Strokes(Rational seconds)
    {
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
