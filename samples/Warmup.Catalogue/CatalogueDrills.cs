using Warmup;

namespace Warmup.WholeCatalogue;

/// <summary>The drills of the whole catalogue, each made only when it is needed.</summary>
internal static class CatalogueDrills
{
    /// <summary>The parent scales.</summary>
    public const int Scales = 72;

    /// <summary>The tonics: the semitones of one octave.</summary>
    public const int Tonics = 12;

    // C3: the twelve tonics from here are those of most voices (the sample's own choice).
    private const int LowestTonic = 48;

    /// <summary>The traditional exercises and the choirs'.</summary>
    public static ValueList<Exercise> Exercises { get; } = [.. Repertoire.Traditional, .. Repertoire.Choir];

    // Each exercise in its usual tala, or in Adi if it has none.
    private static readonly ValueList<Meter> Meters = Exercises.ConvertAll(e => e.Meter);

    /// <summary>The first, second and third speed.</summary>
    public static ValueList<Speed> Speeds { get; } = [Speed.First, Speed.Second, Speed.Third];

    /// <summary>The number of drills.</summary>
    public static int Count => Scales * Tonics * Exercises.Count * Speeds.Count;

    /// <summary>Each n-th drill, in the order of the scales, then of the patterns, the speeds and the tonics.</summary>
    public static IEnumerable<Drill> Each(int step)
    {
        for (var i = 0; i < Count; i += step)
        {
            yield return At(i);
        }
    }

    private static Drill At(int index)
    {
        var (rest, tonic) = Math.DivRem(index, Tonics);
        (rest, var speed) = Math.DivRem(rest, Speeds.Count);
        var (scale, pattern) = Math.DivRem(rest, Exercises.Count);
        var exercise = Exercises[pattern];
        return new Drill
        {
            Scale = Catalogue.Default.Parent(scale + 1).Scale,
            Pattern = exercise.Pattern,
            Tonic = Tonic.FromMidi(LowestTonic + tonic),
            Meter = Meters[pattern],
            Speeds = [Speeds[speed]],
        };
    }
}
