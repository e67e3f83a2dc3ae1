namespace Warmup.Voices;

/// <summary>How hard an interval is to sing, in ranks.</summary>
/// <remarks>
/// The order (unison, step, third, fifth and octave, fourth and sixth, seventh, tritone) is the project's own proposal; that larger
/// intervals are missed by more and the tritone by most is measured (Dai, Mauch, Dixon 2015, ISMIR).
/// </remarks>
internal static class Leaps
{
    /// <summary>What an interval of more than an octave adds to the rank of the interval without the octave (the project's own).</summary>
    private const int Compound = 2;

    private const int OctaveRank = 3;

    /// <summary>The smallest interval that counts as a leap, in semitones: a third.</summary>
    public const int SmallestLeap = 3;

    /// <summary>The rank of an interval: 0 for the unison to 6 for the tritone, more beyond the octave.</summary>
    public static int Rank(int semitones)
    {
        var size = Math.Abs(semitones);
        return size > 12 ? Math.Max(OctaveRank, Simple(size % 12)) + Compound : size == 12 ? OctaveRank : Simple(size);
    }

    private static int Simple(int semitones) => semitones switch
    {
        0 => 0,
        1 or 2 => 1,
        3 or 4 => 2,
        7 => OctaveRank,
        5 or 8 or 9 => 4,
        10 or 11 => 5,
        _ => 6,
    };
}
