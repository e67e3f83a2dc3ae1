namespace Warmup.MusicXml;

/// <summary>The length that the time signature of a measure states.</summary>
internal static class FreeBars
{
    /// <summary>The length for each measure of a section: its own, or that of the longest bar of free rhythm.</summary>
    public static Func<Measure, Rational> Lengths(Section section, MusicXmlFreeBars wanted)
    {
        if (!section.Meter.IsFree || wanted == MusicXmlFreeBars.OwnSignatures)
        {
            return m => m.Length;
        }

        var longest = Rational.Zero;
        foreach (var measure in section.Measures)
        {
            longest = Rational.Max(longest, measure.Length);
        }

        return _ => longest;
    }
}
