namespace Warmup.Plans;

/// <summary>
/// Which exercise group is next in a scale: the one that has waited longest, and at first the one that the seed puts first. Climbs, which only a wish
/// brings in, come first each day.
/// </summary>
internal sealed class GroupRotation
{
    private const int Never = -1;

    // Groups are numbered once; comparing their names over and over would take most of the time of a plan over years.
    private readonly int[] _groupOf;
    private readonly int _climbs;
    private readonly int[] _order;
    private readonly int[][] _sung;

    public GroupRotation(DrillPool pool, SeededSource source, int scales)
    {
        var groups = pool.Fit.Where(f => f.Drill.Role == DrillRole.Middle).Select(f => f.Drill.Group).Distinct().ToList();
        _groupOf = [.. pool.Fit.Select(f => groups.IndexOf(f.Drill.Group))];
        _climbs = groups.IndexOf(ClimbingExercises.Group);
        _order = [.. source.Shuffled(groups.Count)];
        _sung = [.. Enumerable.Range(0, scales).Select(_ => Enumerable.Repeat(Never, groups.Count).ToArray())];
    }

    /// <summary>The middle drills, out of at least one, that belong to the group whose turn it is.</summary>
    /// <param name="scale">The scale.</param>
    /// <param name="drills">The drills.</param>
    /// <param name="today">The drills already chosen for today: their groups have had their turn.</param>
    public List<int> Next(int scale, List<int> drills, List<int> today)
    {
        var next = NextGroup(scale, drills, today);
        return drills.FindAll(d => _groupOf[d] == next);
    }

    /// <summary>One of these drills, each as likely as the others.</summary>
    public int Any(int scale, List<int> drills, List<int> today, SeededSource source)
    {
        var (next, count) = (NextGroup(scale, drills, today), 0);
        foreach (var drill in drills)
        {
            count += _groupOf[drill] == next ? 1 : 0;
        }

        var place = source.Below(count);
        return drills.Find(d => _groupOf[d] == next && place-- == 0);
    }

    public void Sing(int scale, int drill, int day) => _sung[scale][_groupOf[drill]] = day;

    private int NextGroup(int scale, List<int> drills, List<int> today)
    {
        var (next, least) = (Never, (Had: true, IsNoClimb: true, Sung: int.MaxValue, Order: int.MaxValue));
        foreach (var drill in drills)
        {
            var group = _groupOf[drill];
            if (group != next && (Had(group), group != _climbs, _sung[scale][group], _order[group]) is var turn && turn.CompareTo(least) < 0)
            {
                (next, least) = (group, turn);
            }
        }

        return next;

        bool Had(int group)
        {
            foreach (var drill in today)
            {
                if (_groupOf[drill] == group)
                {
                    return true;
                }
            }

            return false;
        }
    }
}
