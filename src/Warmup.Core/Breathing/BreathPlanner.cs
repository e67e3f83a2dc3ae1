using System.Globalization;

namespace Warmup;

/// <summary>
/// Finds the cheapest plan by dynamic programming from the end: the least cost of singing on from a note on a full breath. Of equally cheap
/// ways on, the one with the earliest next breath is taken, which gives the earliest plan.
/// </summary>
internal static class BreathPlanner
{
    private const long Unreachable = long.MaxValue;

    // Cost decides before harm: harm of all notes together stays far below.
    private const long CostWeight = 1L << 32;

    public static bool TryMake(Score score, BreathNeed need, out BreathPlan? plan, out Finding? refusal, CancellationToken cancellation)
    {
        var places = BreathPlaces.Of(score, need);
        var (worth, next) = Solve(places, need.CapacitySeconds, cancellation);
        if (places.Length > 0 && worth[0] == Unreachable)
        {
            plan = null;
            refusal = Refuse(score, places, need);
            return false;
        }

        var breaths = new List<PlannedBreath>();
        for (var from = 0; from < places.Length; from = next[from] + 1)
        {
            if (places[next[from]].Breath is { } breath)
            {
                breaths.Add(breath);
            }
        }

        plan = new BreathPlan(need, breaths.ToValueList());
        refusal = null;
        return true;
    }

    /// <summary>For each note: what singing on from it on a full breath costs, and the note after which the next breath is taken.</summary>
    private static (long[] Worth, int[] Next) Solve(BreathPlaces.Place[] places, Rational capacity, CancellationToken cancellation)
    {
        var worth = new long[places.Length + 1];
        var next = new int[places.Length];
        for (var from = places.Length - 1; from >= 0; from--)
        {
            if (from % 1024 == 0)
            {
                cancellation.ThrowIfCancellationRequested();
            }

            worth[from] = Unreachable;
            var latest = places[from].Start + capacity;
            for (var to = from; to < places.Length && places[to].Start < latest; to++)
            {
                var place = places[to];
                var breathes = place.EndsSpan || place.Breath is not null;
                var end = place.EndsSpan ? place.End : place.ShortenedEnd;
                if (breathes && end <= latest && worth[to + 1] != Unreachable)
                {
                    var sum = worth[to + 1] + (place.Breath is { } breath ? (breath.Cost * CostWeight) + breath.Harm : 0);
                    if (sum < worth[from])
                    {
                        (worth[from], next[from]) = (sum, to);
                    }
                }

                if (place.EndsSpan)
                {
                    break;
                }
            }
        }

        return (worth, next);
    }

    private static Finding Refuse(Score score, BreathPlaces.Place[] places, BreathNeed need)
    {
        var stuck = FirstStuck(places, need.CapacitySeconds);
        var section = score.Sections[places[stuck].Section];
        var note = section.Notes[places[stuck].Note];
        var (capacity, shortest) = (need.CapacitySeconds.ToDouble(), need.ShortestBreathSeconds.ToDouble());
        return new Finding(
            FindingCode.NoBreathPlan,
            Severity.Error,
            string.Create(
                CultureInfo.InvariantCulture,
                $"from its note {places[stuck].Note - section.Lines[note.LineIndex].FirstNote + 1} on, no breath of {shortest:0.0#} s can be placed before {capacity:0.0} s have been sung"),
            "sing line by line with a hold, take a slower tempo so that a note is long enough to breathe from, or shorter lines")
        {
            Line = note.LineIndex + 1,
            Beat = note.Onset,
            Limit = capacity,
            Unit = "s",
        };
    }

    /// <summary>The last note that can be reached from the beginning; from it there is no way on.</summary>
    private static int FirstStuck(BreathPlaces.Place[] places, Rational capacity)
    {
        var reached = new bool[places.Length + 1];
        reached[0] = true;
        var last = 0;
        for (var from = 0; from < places.Length; from++)
        {
            if (!reached[from])
            {
                continue;
            }

            last = from;
            var latest = places[from].Start + capacity;
            for (var to = from; to < places.Length && places[to].Start < latest; to++)
            {
                var place = places[to];
                reached[to + 1] |= (place.EndsSpan && place.End <= latest) || (place.Breath is not null && place.ShortenedEnd <= latest);
                if (place.EndsSpan)
                {
                    break;
                }
            }
        }

        return last;
    }
}
