namespace Warmup.MusicXml;

/// <summary>Divides the avartanas of a score into a measure an anga, for long talas.</summary>
internal static class AngaMeasures
{
    public static Score Split(Score score) => score with { Sections = score.Sections.ConvertAll(Split) };

    /// <summary>Whether a measure is an anga and the last of its avartana.</summary>
    public static bool EndsAvartana(Section section, Measure measure) =>
        !section.Meter.IsFree && measure.Length < section.Meter.Beats && ((measure.Onset + measure.Length) / section.Meter.Beats).IsInteger;

    private static Section Split(Section section)
    {
        if (section.Meter.Groups.Count <= 1)
        {
            return section;
        }

        var begins = new HashSet<Rational>();
        foreach (var line in section.Lines)
        {
            begins.Add(line.Onset);
        }

        var measures = new List<Measure>(section.Measures.Count * section.Meter.Groups.Count);
        foreach (var measure in section.Measures)
        {
            var onset = measure.Onset;
            foreach (var group in section.Meter.Groups)
            {
                measures.Add(new Measure(onset, group, begins.Contains(onset)));
                onset += group;
            }
        }

        return section with { Measures = measures.ToValueList() };
    }
}
