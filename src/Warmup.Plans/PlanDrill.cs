using System.Globalization;

namespace Warmup.Plans;

/// <summary>A drill that a plan draws on: everything but its tempo. Immutable, value equality.</summary>
public sealed record PlanDrill
{
    /// <summary>The longest name of an exercise, in characters.</summary>
    internal const int LongestName = 60;

    internal PlanDrill(Scale scale, DrillRole role, string exerciseName) => (Scale, Role, ExerciseName) = (scale, role, exerciseName);

    /// <summary>The least silence before a drill, in seconds: 6 (the project's own setting). It is a count-in, so that the beat goes on.</summary>
    public static int RestSeconds => 6;

    /// <summary>The scale.</summary>
    public Scale Scale { get; }

    /// <summary>What the drill does in a warm-up.</summary>
    public DrillRole Role { get; }

    /// <summary>The exercise's name: its group and its number, such as <c>sarali-3</c>.</summary>
    public string ExerciseName { get; }

    /// <summary>The exercise's group, such as <c>sarali</c>.</summary>
    public string Group => ExerciseName[..ExerciseName.LastIndexOf('-')];

    /// <summary>What the exercise is.</summary>
    public string Title { get; internal init; } = string.Empty;

    /// <summary>The pattern.</summary>
    public Pattern Pattern { get; internal init; } = Pattern.Run;

    /// <summary>The meter.</summary>
    public Meter Meter { get; internal init; } = Meter.Adi;

    /// <summary>How lines follow each other.</summary>
    public Delivery Delivery { get; internal init; } = FramingExercises.LineByLine;

    /// <summary>The speeds, one after the other.</summary>
    public ValueList<Speed> Speeds { get; internal init; } = [Speed.First];

    /// <summary>How often the drill is sung, 1 to 83.</summary>
    public int Repetitions { get; internal init; } = 1;

    /// <summary>
    /// How far the drill climbs, in semitones, 0 to <see cref="PlanRequest.MostClimb"/>: it is sung again on a tonic a semitone higher each time, up and
    /// back. 0 for a drill that stays on its tonic.
    /// </summary>
    public int ClimbSemitones { get; internal init; }

    /// <summary>The greatest number of times that a day sings the drill: a climb is sung once.</summary>
    internal int MostTimes => ClimbSemitones > 0 ? 1 : DayDrill.MostTimes;

    /// <summary>How hard the drill is at its level's start tempo: <see cref="Difficulty.Score"/> with the default weights; of a climb, one round.</summary>
    public int Grade { get; internal init; }

    /// <summary>From the lowest to the highest note, in semitones; of a climb, within one round.</summary>
    public int SpanSemitones { get; internal init; }

    /// <summary>The drill at a tempo, with the count-in before it; of a climb, its first round.</summary>
    /// <param name="tonic">The tonic.</param>
    /// <param name="tuning">The tuning.</param>
    /// <param name="tempo">Aksharas a minute, 10 to 400.</param>
    /// <param name="times">How many times the usual repetitions it is sung, 1 to 12; 1 by default.</param>
    /// <exception cref="ArgumentOutOfRangeException">The tempo or the times lie outside their range.</exception>
    public Drill ToDrill(Tonic tonic, Tuning tuning, int tempo, int times = 1)
    {
        ArgumentNullException.ThrowIfNull(tonic);
        ArgumentNullException.ThrowIfNull(tuning);
        Require.InRange(tempo, Tempo.Slowest, Tempo.Fastest);
        Require.InRange(times, 1, DayDrill.MostTimes);
        return new Drill
        {
            Scale = Scale,
            Pattern = Pattern,
            Tonic = tonic,
            Tuning = tuning,
            Meter = Meter,
            Delivery = Delivery,
            Speeds = Speeds,
            Repetitions = Repetitions * times,
            Tempo = tempo,
            CountIn = RestAvartanas(Meter, tempo),
            Title = string.Create(CultureInfo.InvariantCulture, $"{Scale.Name}: {ExerciseName}, {Title} ({tempo})"),
        };
    }

    /// <summary>The scale and the exercise.</summary>
    public override string ToString() => $"{Scale.Name}: {ExerciseName}";

    /// <summary>The score at a tempo, with the breaths a class needs put in where the drill alone leaves too few.</summary>
    internal Score ToScore(Tonic tonic, Tuning tuning, int tempo, int times, BreathNeed need, CancellationToken cancellation) =>
        WithBreaths(ToOwnScore(tonic, tuning, tempo, times, cancellation), need, cancellation);

    /// <summary>A score with the breaths a class needs put in where the drill alone leaves too few.</summary>
    internal static Score WithBreaths(Score score, BreathNeed need, CancellationToken cancellation) =>
        BreathPlan.TryMake(score, need, out var plan, out _, cancellation) ? score.WithBreaths(plan!) : score;

    /// <summary>The score at a tempo with the drill's own breaths; of a climb, all rounds.</summary>
    internal Score ToOwnScore(Tonic tonic, Tuning tuning, int tempo, int times, CancellationToken cancellation)
    {
        var drill = ToDrill(tonic, tuning, tempo, times);
        return ClimbSemitones == 0
            ? drill.ToScore(cancellation)
            : new Climb { Drill = drill, Semitones = ClimbSemitones, Cue = ClimbingExercises.Cue }.ToScore(cancellation);
    }

    /// <summary>Whether another way of singing the drill has the same notes, so that it lies as high.</summary>
    internal bool HasNotesOf(PlanDrill other) => Pattern == other.Pattern && ClimbSemitones == other.ClimbSemitones;

    private static int RestAvartanas(Meter meter, int tempo)
    {
        if (meter.IsFree)
        {
            return 0;
        }

        var avartana = new Rational(meter.Beats * 60L, tempo);
        return (int)Math.Clamp((RestSeconds / avartana).Ceiling(), 1, Drill.LongestCountIn);
    }
}
