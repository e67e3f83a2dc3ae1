namespace Warmup.MusicXml;

/// <summary>Measures of an anga each, for long talas.</summary>
internal static class AngaMeasures
{
    /// <summary>Whether a measure is an anga and the last of its avartana.</summary>
    public static bool EndsAvartana(Section section, Measure measure) =>
        !section.Meter.IsFree && measure.Length < section.Meter.Beats && ((measure.Onset + measure.Length) / section.Meter.Beats).IsInteger;
}
