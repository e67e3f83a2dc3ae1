using System.Globalization;

namespace Warmup.Voices;

/// <summary>What makes a drill hard to sing, measured, and one whole number made of the measures. Breath does not count in the number.</summary>
/// <remarks>
/// Intervals are counted within lines, not from one line to the next. Shares lie from 0 to 1 and are 0 where there is nothing to count.
/// It helps to put drills in order; the teacher's ear overrules it. Immutable, value equality.
/// </remarks>
public sealed record Difficulty
{
    /// <summary>
    /// From how far a landing counts as far from the nearest partial of the drone, in cents: 25, half a quarter tone, about what listeners tolerate
    /// (Larrouy-Maestri 2018, Music and Science).
    /// </summary>
    internal static double FarCents => 25;

    private Difficulty()
    {
    }

    /// <summary>From the lowest to the highest note, in semitones.</summary>
    public int SpanSemitones { get; private init; }

    /// <summary>The largest interval, in semitones.</summary>
    public int LargestLeapSemitones { get; private init; }

    /// <summary>The mean interval, in semitones.</summary>
    public Rational MeanLeapSemitones { get; private init; }

    /// <summary>The rank of the hardest interval: 0 unison, 1 step, 2 third, 3 fifth and octave, 4 fourth and sixth, 5 seventh, 6 tritone; more beyond the octave.</summary>
    public int HardestLeapRank { get; private init; }

    /// <summary>The mean rank of the intervals.</summary>
    public Rational MeanLeapRank { get; private init; }

    /// <summary>The number of changes of direction.</summary>
    public int DirectionChanges { get; private init; }

    /// <summary>The share of notes at which the direction changes, among those at which it could.</summary>
    public Rational TurnShare { get; private init; }

    /// <summary>The share of intervals that rise, among those that are not unisons.</summary>
    public Rational RisingShare { get; private init; }

    /// <summary>The share of lines that do not start on the tonic of some octave.</summary>
    public Rational StartsAwayShare { get; private init; }

    /// <summary>The share of leaps (a third or more) that land more than 25 cents from every partial up to the eighth of the drone's strings.</summary>
    public Rational FarLandingShare { get; private init; }

    /// <summary>
    /// How fast the notes come where they come, in notes a second: the mean over all notes that another follows in their line, each counted
    /// from its onset to that of the next, to a thousandth. Of a line of one note its whole length counts. Holds, breaths, fills and rests
    /// between the lines change nothing.
    /// </summary>
    public Rational NotesPerSecond { get; private init; }

    /// <summary>Measures a score.</summary>
    /// <param name="score">The score. Where it has no drone the usual tanpura of each section's scale is taken.</param>
    public static Difficulty Of(Score score)
    {
        ArgumentNullException.ThrowIfNull(score);
        var walk = new DifficultyWalk();
        foreach (var section in score.Sections)
        {
            walk.Section(section, score.Drone ?? DroneStyle.Tanpura.For(section.Scale, section.Tonic, section.Tuning, section.TonicName));
        }

        return new Difficulty
        {
            SpanSemitones = walk.Highest - walk.Lowest,
            LargestLeapSemitones = walk.Largest,
            MeanLeapSemitones = Share(walk.Semitones, walk.Intervals),
            HardestLeapRank = walk.Hardest,
            MeanLeapRank = Share(walk.Ranks, walk.Intervals),
            DirectionChanges = walk.Turns,
            TurnShare = Share(walk.Turns, walk.Chances),
            RisingShare = Share(walk.Rises, walk.Moves),
            StartsAwayShare = Share(walk.Away, walk.Lines),
            FarLandingShare = Share(walk.Far, walk.LeapCount),
            NotesPerSecond = Share(walk.Thousandths, 1_000 * walk.Paces),
        };
    }

    /// <summary>The measures weighed to one whole number: the higher, the harder.</summary>
    /// <param name="weights">The weights; <see cref="DifficultyWeights.Default"/> by default.</param>
    public int Score(DifficultyWeights? weights = null)
    {
        var w = weights ?? DifficultyWeights.Default;
        var sum = (Rational)((w.Span * SpanSemitones) + (w.HardestLeap * HardestLeapRank));
        sum += MeanLeapRank * w.MeanLeap;
        sum += TurnShare * w.Turns;
        sum += RisingShare * w.Rising;
        sum += StartsAwayShare * w.StartsAway;
        sum += FarLandingShare * w.FarLandings;
        sum += NotesPerSecond * w.NotesPerSecond;
        return (int)(sum + new Rational(1, 2)).Floor();
    }

    /// <summary>The measures in one line.</summary>
    public override string ToString() => OneLine.Of(string.Create(
        CultureInfo.InvariantCulture,
        $"span {SpanSemitones}, largest leap {LargestLeapSemitones}, mean leap {MeanLeapSemitones.ToDouble():0.00} semitones; {DirectionChanges} turns; "
        + $"{100 * RisingShare.ToDouble():0} % rising; {100 * StartsAwayShare.ToDouble():0} % of lines start away from the tonic; "
        + $"{100 * FarLandingShare.ToDouble():0} % of leaps land far from the drone; {NotesPerSecond.ToDouble():0.00} notes a second; score {Score()}"));

    private static Rational Share(long part, long whole) => whole == 0 ? Rational.Zero : new Rational(part, whole);
}
