namespace Warmup;

/// <summary>
/// Chooses svaras for semitones: letters never go back, each note takes a letter of its own where it can, and the usual one of two names
/// (R2 before G1, G2 before R3, D2 before N1, N2 before D3) where both would do.
/// </summary>
internal static class SemitoneSpelling
{
    // One repeated letter is worse than any number of unusual names.
    private const int RepeatedLetter = 100;

    /// <summary>The svaras of rising semitones, 0 to 11.</summary>
    public static Degree[] Spell(ReadOnlySpan<int> semitones)
    {
        // The cheapest way to each of the at most two names of a note, from the first note on.
        var costs = new int[semitones.Length, 2];
        var from = new int[semitones.Length, 2];
        for (var i = 0; i < semitones.Length; i++)
        {
            for (var name = 0; name < 2; name++)
            {
                costs[i, name] = int.MaxValue;
                if (Name(semitones[i], name) is not { } degree)
                {
                    continue;
                }

                for (var before = 0; before < 2; before++)
                {
                    var (known, repeats) = i == 0 ? (before == 0, false) : Follows(semitones[i - 1], before, degree);
                    if (!known || (i > 0 && costs[i - 1, before] == int.MaxValue))
                    {
                        continue;
                    }

                    var cost = (i == 0 ? 0 : costs[i - 1, before]) + name + (repeats ? RepeatedLetter : 0);
                    if (cost < costs[i, name])
                    {
                        (costs[i, name], from[i, name]) = (cost, before);
                    }
                }
            }
        }

        var degrees = new Degree[semitones.Length];
        var last = semitones.Length - 1;
        var choice = costs[last, 1] < costs[last, 0] ? 1 : 0;
        for (var i = last; i >= 0; i--)
        {
            degrees[i] = Name(semitones[i], choice)!.Value;
            choice = from[i, choice];
        }

        return degrees;
    }

    private static (bool Known, bool Repeats) Follows(int semitone, int name, Degree next) => Name(semitone, name) is { } degree
        ? (degree.Letter <= next.Letter, degree.Letter == next.Letter)
        : (false, false);

    private static Degree? Name(int semitone, int choice) => (semitone, choice) switch
    {
        (0, 0) => new Degree(1),
        (1, 0) => new Degree(2, -1),
        (2, 0) => new Degree(2),
        (2, 1) => new Degree(3, -2),
        (3, 0) => new Degree(3, -1),
        (3, 1) => new Degree(2, 1),
        (4, 0) => new Degree(3),
        (5, 0) => new Degree(4),
        (6, 0) => new Degree(4, 1),
        (7, 0) => new Degree(5),
        (8, 0) => new Degree(6, -1),
        (9, 0) => new Degree(6),
        (9, 1) => new Degree(7, -2),
        (10, 0) => new Degree(7, -1),
        (10, 1) => new Degree(6, 1),
        (11, 0) => new Degree(7),
        _ => null,
    };
}
