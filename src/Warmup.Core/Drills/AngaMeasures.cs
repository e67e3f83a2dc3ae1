namespace Warmup;

public sealed partial record Score
{
    /// <summary>The same score with a measure for each anga instead of each avartana; bars of free rhythm stay as they are.</summary>
    public Score WithAngaMeasures() => this with { Sections = Sections.ConvertAll(s => s.WithAngaMeasures()) };
}

public sealed partial record Section
{
    /// <summary>The same section with a measure for each anga instead of each avartana; bars of free rhythm stay as they are.</summary>
    internal Section WithAngaMeasures()
    {
        if (Meter.Groups.Count <= 1)
        {
            return this;
        }

        var begins = new HashSet<int>();
        foreach (var line in Lines)
        {
            begins.Add(line.OnsetSteps);
        }

        var measures = new List<Measure>(Measures.Count * Meter.Groups.Count);
        foreach (var measure in Measures)
        {
            var onset = measure.OnsetSteps;
            foreach (var group in Meter.Groups)
            {
                measures.Add(new Measure(onset, group * Resolution, Resolution, begins.Contains(onset)));
                onset += group * Resolution;
            }
        }

        return this with { Measures = measures.ToValueList() };
    }
}
