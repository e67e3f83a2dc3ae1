namespace Warmup.MusicXml;

/// <summary>The dashed bar lines where angas end inside a measure.</summary>
internal static class AngaLines
{
    /// <summary>Whether angas end inside a measure; one as short as an anga has none inside.</summary>
    public static bool AreIn(Section section, Measure measure) =>
        IsTala(section.Meter) && section.Meter.AngaEnd(Rational.Zero) < section.Meter.Beats && measure.Length >= section.Meter.Beats;

    /// <summary>Whether a tala is counted, whose angas are then shown; a time signature shows its groups itself.</summary>
    public static bool IsTala(Meter meter) => !meter.IsFree && MeterWords.Of(meter).IsTala;

    /// <summary>Writes the line before a note that begins where an anga ends, and gives the end of the anga in which the note lies.</summary>
    /// <param name="xml">The writer.</param>
    /// <param name="layout">The layout of the measure.</param>
    /// <param name="start">Where the note begins, in ticks.</param>
    /// <param name="anga">The end of the anga before, in ticks.</param>
    public static long Before(XmlByteWriter xml, MeasureLayout layout, long start, long anga)
    {
        if (start < anga)
        {
            return anga;
        }

        if (start == anga)
        {
            Write(xml);
        }

        return layout.AngaEnd(start);
    }

    public static void Write(XmlByteWriter xml) =>
        xml.Raw("      <barline location=\"middle\">\n        <bar-style>dashed</bar-style>\n      </barline>\n"u8);

    /// <summary>
    /// Writes, at the end of a measure with such lines, its own lines at both ends: one editor takes a dashed line inside a measure for the end of the
    /// measure before, and believes the last it reads.
    /// </summary>
    /// <param name="xml">The writer.</param>
    /// <param name="styleBefore">The line after the measure before; empty in the first measure.</param>
    /// <param name="hasOwn">Whether the measure's right line is written besides.</param>
    public static void Close(XmlByteWriter xml, ReadOnlySpan<byte> styleBefore, bool hasOwn)
    {
        if (styleBefore.IsEmpty)
        {
            return;
        }

        Line(xml, "left"u8, styleBefore);
        if (!hasOwn)
        {
            Line(xml, "right"u8, "regular"u8);
        }
    }

    public static void Line(XmlByteWriter xml, ReadOnlySpan<byte> location, ReadOnlySpan<byte> style) =>
        xml.Raw("      <barline location=\""u8).Raw(location).Raw("\">\n        <bar-style>"u8).Raw(style).Raw("</bar-style>\n      </barline>\n"u8);
}
