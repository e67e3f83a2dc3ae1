namespace Warmup.Plans;

/// <summary>Whose turn it is among the families of a scale: the one that has waited longest, by the seed's order at first.</summary>
internal sealed class FamilyRotation
{
    private readonly List<string> _families;
    private readonly Dictionary<string, int> _order = [];
    private readonly Dictionary<string, int>[] _sung;

    public FamilyRotation(DrillPool pool, SeededSource source, int scales)
    {
        _families = pool.Fit.ConvertAll(f => f.Drill.Family);
        var families = pool.Fit.Where(f => f.Drill.Role == Role.Middle).Select(f => f.Drill.Family).Distinct().ToList();
        foreach (var (family, place) in families.Zip(source.Shuffled(families.Count)))
        {
            _order.Add(family, place);
        }

        _sung = [.. Enumerable.Range(0, scales).Select(_ => new Dictionary<string, int>())];
    }

    /// <summary>Those of some drills, at least one, that belong to the family whose turn it is.</summary>
    /// <param name="scale">The scale.</param>
    /// <param name="drills">The drills.</param>
    /// <param name="today">What is sung already today: its families have had their turn.</param>
    public List<int> Next(int scale, List<int> drills, IReadOnlyList<int> today)
    {
        var had = today.Select(FamilyOf).ToHashSet();
        var family = drills
            .Select(FamilyOf)
            .Distinct()
            .MinBy(f => (had.Contains(f), _sung[scale].GetValueOrDefault(f, -1), _order[f]));
        return drills.FindAll(i => FamilyOf(i) == family);
    }

    public void Sing(int scale, int drill, int day) => _sung[scale][FamilyOf(drill)] = day;

    // The families' names are cut from the exercises' once, not on every comparison.
    private string FamilyOf(int drill) => _families[drill];
}
