namespace Warmup.Reading;

/// <summary>A stretch of a part that is sung.</summary>
/// <param name="From">Where it begins as it is written.</param>
/// <param name="To">Where it ends as it is written.</param>
/// <param name="At">Where it begins as it is sung.</param>
internal readonly record struct Stretch(Rational From, Rational To, Rational At);

/// <summary>Writes repeats out: what is sung twice stands twice.</summary>
internal static class Unrolled
{
    /// <summary>The stretches of a part whose measures are sung in an order.</summary>
    public static List<Stretch> Stretches(RawPart part, List<int> order)
    {
        var stretches = new List<Stretch>();
        var at = Rational.Zero;
        for (var i = 0; i < order.Count;)
        {
            var first = order[i];
            while (++i < order.Count && order[i] == order[i - 1] + 1)
            {
                // Measures that follow each other stay together.
            }

            var last = order[i - 1];
            var stretch = new Stretch(part.Measures[first], last + 1 < part.Measures.Count ? part.Measures[last + 1] : part.End, at);
            stretches.Add(stretch);
            at += stretch.To - stretch.From;
        }

        return stretches;
    }

    /// <summary>How many of some things, sorted by where they begin, would be sung.</summary>
    public static long CountOf<T>(List<T> things, List<Stretch> stretches, Func<T, Rational> onsetOf) =>
        stretches.Sum(s => (long)(IndexFrom(things, s.To, onsetOf) - IndexFrom(things, s.From, onsetOf)));

    /// <summary>Things as they are sung; <paramref name="at"/> moves one of a stretch to a point.</summary>
    public static List<T> Of<T>(List<T> things, List<Stretch> stretches, Func<T, Rational> onsetOf, Func<T, Stretch, Rational, T> at)
    {
        var sung = new List<T>();
        foreach (var stretch in stretches)
        {
            for (var t = IndexFrom(things, stretch.From, onsetOf); t < things.Count && onsetOf(things[t]) < stretch.To; t++)
            {
                sung.Add(at(things[t], stretch, onsetOf(things[t]) - stretch.From + stretch.At));
            }
        }

        return sung;
    }

    /// <summary>The same of what lasts until the next one, such as tempi: each stretch begins with that which is in force there.</summary>
    public static List<T> InForce<T>(List<T> things, List<Stretch> stretches, Func<T, Rational> onsetOf, Func<T, Rational, T> at)
    {
        var sung = new List<T>();
        foreach (var stretch in stretches)
        {
            var next = IndexFrom(things, stretch.From, onsetOf);
            if (next > 0 && (next == things.Count || onsetOf(things[next]) > stretch.From))
            {
                sung.Add(at(things[next - 1], stretch.At));
            }

            for (; next < things.Count && onsetOf(things[next]) < stretch.To && sung.Count < ReadingLimits.Notes; next++)
            {
                sung.Add(at(things[next], onsetOf(things[next]) - stretch.From + stretch.At));
            }
        }

        return sung;
    }

    /// <summary>The index of the first thing from a point on.</summary>
    private static int IndexFrom<T>(List<T> things, Rational onset, Func<T, Rational> onsetOf)
    {
        var (low, high) = (0, things.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = onsetOf(things[middle]) < onset ? (middle + 1, high) : (low, middle);
        }

        return low;
    }
}
