using System.Globalization;

namespace Warmup;

/// <summary>How often a drill is sung.</summary>
/// <param name="Count">The times.</param>
/// <param name="Lines">The lines of all times.</param>
/// <param name="Notes">The notes of all times.</param>
internal readonly record struct RoundPlan(int Count, int Lines, int Notes)
{
    public static RoundPlan For(Drill drill, int lines, int notes, TimeGrid grid, CancellationToken cancellation)
    {
        var count = Math.Max(drill.Repetitions, drill.Tempo.Rounds);
        if (drill.IsRepeatedToFirstBeat || grid.NeedsTrial)
        {
            var end = grid.Start;
            for (var round = 0; round < count; round++)
            {
                cancellation.ThrowIfCancellationRequested();
                end = grid.After(end, drill.Tempo.At(round));
            }

            count = drill.IsRepeatedToFirstBeat ? ToFirstBeat(drill, grid, end, count) ?? throw Never(drill) : count;
        }

        var all = (long)notes * drill.Speeds.Count * count;
        return all <= PatternLimits.Notes ? new(count, lines * drill.Speeds.Count * count, (int)all) : throw TooMany(drill, count, all);
    }

    /// <summary>The times after which the drill would end on the first beat; <see langword="null"/> where it never does.</summary>
    /// <param name="drill">The drill.</param>
    /// <param name="grid">Its grid.</param>
    /// <param name="end">Where it ends as often as it is sung.</param>
    public int? ToFirstBeat(Drill drill, TimeGrid grid, long end) => ToFirstBeat(drill, grid, end, Count);

    /// <summary>The least number of times, from those that end at a point on, after which the end is the end of an avartana.</summary>
    private static int? ToFirstBeat(Drill drill, TimeGrid grid, long end, int count)
    {
        if (drill.Meter.IsFree)
        {
            return null;
        }

        var phase = end % grid.Avartana;
        if (phase == 0)
        {
            return count;
        }

        if (grid.IsSteady)
        {
            // Lines that run on take the same time wherever they begin, so the times needed follow from that time and the avartana.
            long needed = new Rational(grid.After(0, drill.Tempo.Start), grid.Avartana).Denominator;
            return (int)((count + needed - 1) / needed * needed);
        }

        // The tempo is steady now, so the phase is all that the next time depends on: one that was met before comes back for ever.
        var met = new HashSet<long>();
        while (met.Add(phase))
        {
            phase = grid.After(phase, drill.Tempo.Ceiling) % grid.Avartana;
            count++;
            if (phase == 0)
            {
                return count;
            }
        }

        return null;
    }

    private static PatternException Never(Drill drill) => new(drill.Meter.IsFree
        ? new Finding(FindingCode.TimeRefused, Severity.Error, "free rhythm has no first beat to end on", "choose a meter")
        : new Finding(
            FindingCode.TimeRefused,
            Severity.Error,
            $"the drill never ends on the first beat of {drill.Meter}, however often it is sung",
            "fill each line up to the avartana, or leave lines unfilled"));

    private static PatternException TooMany(Drill drill, int count, long notes) => new(new Finding(
        FindingCode.PatternTooLong,
        Severity.Error,
        string.Create(CultureInfo.InvariantCulture, $"singing the drill {count} times would give {notes} notes; the most is {PatternLimits.Notes}"),
        drill.IsRepeatedToFirstBeat ? "fill each line up to the avartana so that it ends on the first beat sooner" : "repeat less, or take fewer lines"));
}
