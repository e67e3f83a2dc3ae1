using Warmup;

namespace Warmup.WholeCatalogue;

/// <summary>The drills of the whole catalogue, made one at a time while they are asked for.</summary>
internal static class CatalogueDrills
{
    /// <summary>The tonics: the semitones of one octave.</summary>
    public const int Tonics = 12;

    // C3: with it the twelve tonics are where most voices have theirs (the sample's own choice).
    private const int LowestTonic = 48;

    /// <summary>The traditional exercises and the choirs'.</summary>
    public static ValueList<Exercise> Exercises { get; } = [.. Repertoire.Traditional, .. Repertoire.Choir];

    // Each exercise in the tala it is usually sung in; what has none, in Adi.
    private static readonly ValueList<Meter> Meters = Exercises.ConvertAll(e => e.Meter);

    /// <summary>The first, second and third speed.</summary>
    public static ValueList<Speed> Speeds { get; } = [Speed.First, Speed.Second, Speed.Third];

    /// <summary>How many there are.</summary>
    public static int Count => Melakarta.Count * Tonics * Exercises.Count * Speeds.Count;

    /// <summary>Each n-th drill: the scales' order, in each scale the tonics', then the patterns', then the speeds'.</summary>
    public static IEnumerable<Drill> Each(int step)
    {
        for (var i = 0; i < Count; i += step)
        {
            yield return At(i);
        }
    }

    private static Drill At(int index)
    {
        var (rest, speed) = Math.DivRem(index, Speeds.Count);
        (rest, var pattern) = Math.DivRem(rest, Exercises.Count);
        var (scale, tonic) = Math.DivRem(rest, Tonics);
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
