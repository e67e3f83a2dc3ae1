namespace Warmup.Plans;

/// <summary>
/// Which exercise group is next in a scale: the one that has waited longest, and at first the one that the seed puts first. Climbs, which only a wish
/// brings in, come first each day.
/// </summary>
internal sealed class GroupRotation
{
    private readonly List<string> _groups;
    private readonly Dictionary<string, int> _order = [];
    private readonly Dictionary<string, int>[] _sung;

    public GroupRotation(DrillPool pool, SeededSource source, int scales)
    {
        _groups = pool.Fit.ConvertAll(f => f.Drill.Group);
        var groups = pool.Fit.Where(f => f.Drill.Role == DrillRole.Middle).Select(f => f.Drill.Group).Distinct().ToList();
        foreach (var (group, place) in groups.Zip(source.Shuffled(groups.Count)))
        {
            _order.Add(group, place);
        }

        _sung = [.. Enumerable.Range(0, scales).Select(_ => new Dictionary<string, int>())];
    }

    /// <summary>The drills, out of at least one, that belong to the group whose turn it is.</summary>
    /// <param name="scale">The scale.</param>
    /// <param name="drills">The drills.</param>
    /// <param name="today">The drills already chosen for today: their groups have had their turn.</param>
    public List<int> Next(int scale, List<int> drills, IReadOnlyList<int> today)
    {
        var had = today.Select(GroupOf).ToHashSet();
        var group = drills
            .Select(GroupOf)
            .Distinct()
            .MinBy(f => (had.Contains(f), f != ClimbingExercises.Group, _sung[scale].GetValueOrDefault(f, -1), _order[f]));
        return drills.FindAll(i => GroupOf(i) == group);
    }

    public void Sing(int scale, int drill, int day) => _sung[scale][GroupOf(drill)] = day;

    // The groups' names are cut out of the exercises' names once, not on every comparison.
    private string GroupOf(int drill) => _groups[drill];
}
