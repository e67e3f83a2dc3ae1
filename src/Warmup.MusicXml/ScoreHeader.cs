using System.Buffers;
using System.Globalization;

namespace Warmup.MusicXml;

/// <summary>Writes everything before the first part: title, identification, page, list of parts.</summary>
internal static class ScoreHeader
{
    private const int LongestTitle = 60;

    /// <summary>Writes the head.</summary>
    /// <param name="xml">The writer.</param>
    /// <param name="score">The score.</param>
    /// <param name="options">The options.</param>
    /// <param name="page">What <see cref="Page"/> makes of the options.</param>
    /// <param name="parts">The parts.</param>
    public static void Write(XmlByteWriter xml, Score score, MusicXmlOptions options, ReadOnlySpan<byte> page, List<ScorePart> parts)
    {
        xml.Raw(
            """
            <?xml version="1.0" encoding="UTF-8" standalone="no"?>
            <!DOCTYPE score-partwise PUBLIC "-//Recordare//DTD MusicXML 4.0 Partwise//EN" "http://www.musicxml.org/dtds/partwise.dtd">
            <score-partwise version="4.0">

            """u8);
        if (score.Title.Length > 0)
        {
            xml.Raw("  <work>\n    <work-title>"u8).Text(ShortTitle(score.Title)).Raw("</work-title>\n  </work>\n"u8);
        }

        Identification(xml, score, options);
        xml.Raw(page);

        xml.Raw("  <part-list>\n"u8);
        foreach (var part in parts)
        {
            // The only part need not be named on the page.
            var id = part.Number;
            xml.Raw("    <score-part id=\"P"u8).Number(id).Raw(parts.Count == 1 ? "\">\n      <part-name print-object=\"no\">"u8 : "\">\n      <part-name>"u8)
                .Text(part.Name.Full).Raw("</part-name>\n"u8);
            if (parts.Count > 1)
            {
                xml.Raw("      <part-abbreviation>"u8).Text(part.Name.Short).Raw("</part-abbreviation>\n"u8);
            }

            xml.Raw("      <score-instrument id=\"P"u8).Number(id).Raw("-I1\">\n        <instrument-name>"u8).Text(part.Instrument.Name)
                .Raw("</instrument-name>\n        <instrument-sound>"u8).Text(part.Instrument.Sound)
                .Raw("</instrument-sound>\n      </score-instrument>\n      <midi-instrument id=\"P"u8).Number(id).Raw("-I1\">\n"u8);
            part.WriteMidi(xml);
            xml.Raw("      </midi-instrument>\n    </score-part>\n"u8);
        }

        xml.Raw("  </part-list>\n"u8);
    }

    /// <summary>
    /// A title that fits a page's width: of one longer than 60 characters (the project's own bound) as much as does, up to a colon. The notation
    /// programs tried print a longer one over both edges.
    /// </summary>
    public static string ShortTitle(string title)
    {
        if (title.Length <= LongestTitle)
        {
            return title;
        }

        var colon = title.LastIndexOf(": ", LongestTitle, StringComparison.Ordinal);
        return colon > 0 ? title[..colon] : title;
    }

    /// <summary>Tala, tonic and scale: <c>Adi (4+2+2), S = D3, Mohanam</c>. A time signature stands on the staff and is not repeated.</summary>
    public static string Of(Section section)
    {
        var isSolfa = section.IsSungIn(Syllables.Solfa) || section.IsSungIn(Syllables.LaBasedSolfa);
        var meter = section.Meter.IsFree ? "free rhythm, " : AngaLines.IsTala(section.Meter) ? $"{section.Meter}, " : string.Empty;
        return $"{meter}{TonicText(section, MeterWords.Of(section.Meter, isSolfa))}, {section.Scale.Name}";
    }

    /// <summary>The tonic; where it does not lie on the keyboard at A4 = 440 Hz, also by how much: <c>S = F#3 +12.3 cents (188.33 Hz)</c>.</summary>
    private static string TonicText(Section section, MeterWords words)
    {
        var tonic = section.Tonic;
        var isStandard = tonic.A4.Equals(Tonic.StandardA4);
        if (tonic.OffsetCents == 0 && isStandard)
        {
            return words.Tonic(section.TonicName);
        }

        var offset = tonic.OffsetCents == 0 ? string.Empty : string.Create(CultureInfo.InvariantCulture, $" {tonic.OffsetCents:+0.0;-0.0;+0.0} cents");
        var reference = isStandard ? string.Empty : string.Create(CultureInfo.InvariantCulture, $", A4 = {tonic.A4:0.##} Hz");
        return string.Create(CultureInfo.InvariantCulture, $"{words.Tonic(section.TonicName)}{offset} ({tonic.Hz:0.00} Hz{reference})");
    }

    private static void Identification(XmlByteWriter xml, Score score, MusicXmlOptions options)
    {
        xml.Raw(
            """
              <identification>
                <encoding>
                  <software>Warmup</software>

            """u8);
        if (options.Date is { } date)
        {
            Span<byte> text = stackalloc byte["yyyy-MM-dd".Length];
            date.TryFormat(text, out var length, "yyyy-MM-dd", CultureInfo.InvariantCulture);
            xml.Raw("      <encoding-date>"u8).Raw(text[..length]).Raw("</encoding-date>\n"u8);
        }

        xml.Raw("      <supports element=\"accidental\" type=\"yes\"/>\n      <supports element=\"beam\" type=\"yes\"/>"u8);
        xml.Raw(options.HasNewSystems
            ? "\n      <supports element=\"print\" type=\"yes\" attribute=\"new-system\" value=\"yes\"/>\n    </encoding>\n"u8
            : "\n    </encoding>\n"u8);
        var open = false;
        if (ShortTitle(score.Title).Length < score.Title.Length)
        {
            xml.Raw("    <miscellaneous>\n      <miscellaneous-field name=\"title\">"u8).Text(score.Title).Raw("</miscellaneous-field>\n"u8);
            open = true;
        }

        for (var i = 0; i < score.Sections.Count; i++)
        {
            var tonic = score.Sections[i].Tonic;
            if (tonic.OffsetCents == 0)
            {
                continue;
            }

            xml.Raw(open ? ""u8 : "    <miscellaneous>\n"u8);
            open = true;
            xml.Raw("      <miscellaneous-field name=\"tonic-offset-cents-"u8).Number(i + 1).Raw("\">"u8)
                .Number((decimal)tonic.OffsetCents).Raw("</miscellaneous-field>\n"u8);
        }

        xml.Raw(open ? "    </miscellaneous>\n"u8 : ""u8);
        xml.Raw("  </identification>\n"u8);
    }

    /// <summary>The page's size and margins, the same for every score; empty where no paper is chosen.</summary>
    public static byte[] Page(MusicXmlOptions options)
    {
        if (options.Paper == MusicXmlPaper.Unspecified)
        {
            return [];
        }

        var page = new ArrayBufferWriter<byte>();
        using var xml = new XmlByteWriter(page);

        // A tenth is a tenth of the space between two lines; a staff is 40 tenths high.
        const decimal MillimetresAnInch = 25.4m;
        const decimal Margin = 15;
        var (width, height) = options.Paper == MusicXmlPaper.A4 ? (210m, 297m) : (8.5m * MillimetresAnInch, 11 * MillimetresAnInch);
        decimal Tenths(decimal millimetres) => Math.Round(millimetres * 40 / options.StaffMillimetres, 2);
        xml.Raw("  <defaults>\n    <scaling>\n      <millimeters>"u8).Number(options.StaffMillimetres)
            .Raw("</millimeters>\n      <tenths>40</tenths>\n    </scaling>\n    <page-layout>\n      <page-height>"u8).Number(Tenths(height))
            .Raw("</page-height>\n      <page-width>"u8).Number(Tenths(width))
            .Raw("</page-width>\n      <page-margins type=\"both\">\n        <left-margin>"u8).Number(Tenths(Margin))
            .Raw("</left-margin>\n        <right-margin>"u8).Number(Tenths(Margin))
            .Raw("</right-margin>\n        <top-margin>"u8).Number(Tenths(Margin))
            .Raw("</top-margin>\n        <bottom-margin>"u8).Number(Tenths(Margin))
            .Raw("</bottom-margin>\n      </page-margins>\n    </page-layout>\n  </defaults>\n"u8);
        xml.Flush();
        return page.WrittenSpan.ToArray();
    }
}
