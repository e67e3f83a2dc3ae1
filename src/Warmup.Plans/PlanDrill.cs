using System.Globalization;

namespace Warmup.Plans;

/// <summary>A drill that a plan draws on: everything but its tempo.</summary>
/// <param name="Scale">The scale.</param>
/// <param name="Role">What it does in a warm-up.</param>
/// <param name="Exercise">The exercise's name: <c>sarali-3</c>.</param>
/// <param name="Title">What it is.</param>
/// <param name="Pattern">The pattern.</param>
/// <param name="Meter">The meter.</param>
/// <param name="Delivery">How lines follow each other.</param>
/// <param name="Speeds">The speeds, one after the other.</param>
/// <param name="Repetitions">How often it is sung.</param>
/// <param name="Grade">How hard it is at its level's start tempo: <see cref="Difficulty.Score"/> with the default weights.</param>
/// <param name="Span">From its lowest to its highest note, in semitones.</param>
public sealed record PlanDrill(
    Scale Scale,
    Role Role,
    string Exercise,
    string Title,
    Pattern Pattern,
    Meter Meter,
    Delivery Delivery,
    ValueList<Speed> Speeds,
    int Repetitions,
    int Grade,
    int Span)
{
    /// <summary>The least silence before a drill, in seconds (the project's own setting). It is a count-in, so that the beat goes on.</summary>
    public const int RestSeconds = 6;

    /// <summary>The exercise's group: <c>sarali</c>.</summary>
    public string Family => Exercise[..Exercise.LastIndexOf('-')];

    /// <summary>The drill at a tempo, with the count-in before it.</summary>
    /// <param name="tonic">The tonic.</param>
    /// <param name="tuning">The tuning.</param>
    /// <param name="tempo">Aksharas a minute, 10 to 400.</param>
    /// <param name="times">How many times the usual repetitions it is sung, 1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The tempo or the repetitions lie outside their range.</exception>
    public Drill ToDrill(Tonic tonic, Tuning tuning, int tempo, int times = 1) => new()
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
        Title = string.Create(CultureInfo.InvariantCulture, $"{Scale.Name}: {Exercise}, {Title} ({tempo})"),
    };

    /// <summary>The score at a tempo, with the breaths a class needs put in where the drill alone leaves too few.</summary>
    internal Score ToScore(Tonic tonic, Tuning tuning, int tempo, int times, BreathNeed need, CancellationToken cancellation)
    {
        var score = ToDrill(tonic, tuning, tempo, times).ToScore(cancellation);
        return BreathPlan.TryMake(score, need, out var plan, out _, cancellation) ? score.WithBreaths(plan!) : score;
    }

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
