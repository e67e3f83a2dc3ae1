using Warmup.Drawing;

namespace Warmup.Cli;

/// <summary>What was measured of singers over time, drawn as lines over the days.</summary>
internal static class HistoryDrawn
{
    /// <summary>Whether a file's ending asks for a chart.</summary>
    public static bool IsChart(string path) => Path.GetExtension(path).ToUpperInvariant() is ".SVG" or ".PDF";

    /// <summary>Writes the chart in the format of the file's ending, and names what it leaves out.</summary>
    public static void Write(Terminal terminal, ValueList<Singer> singers, string path, bool force, bool quiet)
    {
        var dated = singers.Select(s => (Singer: s, Points: s.Older.Append(s.Measurement).Where(m => m.Date is not null).ToList())).ToList();
        ValueList<MeasuredVoice> voices = [.. dated.Where(d => d.Points.Count > 0).Select(d => new MeasuredVoice(d.Singer.Alias, d.Points.Select(Point).ToValueList()))];
        if (voices.IsEmpty)
        {
            throw new InputException("--out: no measurement has a date to draw it at; note the day with --measured 2026-12-01, or in the file of the class");
        }

        var chart = new HistoryChart(voices);
        Formats.RefuseUnwritable(path, force);
        AtomicFile.Write(path, stream => Draw(chart, path, stream), force);
        if (quiet)
        {
            return;
        }

        terminal.Out.WriteLine($"wrote {path} (measurements over time)");
        var without = dated.Where(d => d.Points.Count < 1 + d.Singer.Older.Count).Select(d => d.Singer.Alias).ToList();
        if (without.Count > 0)
        {
            terminal.Out.WriteLine($"not drawn, since it has no date: a measurement of {string.Join(", ", without)}");
        }
    }

    private static void Draw(HistoryChart chart, string path, Stream stream)
    {
        if (Path.GetExtension(path).Equals(".pdf", StringComparison.OrdinalIgnoreCase))
        {
            chart.WritePdf(stream);
        }
        else
        {
            chart.WriteSvg(stream);
        }
    }

    private static MeasuredPoint Point(Measurement measured) => new(measured.Date!.Value, measured.Low, measured.High, measured.SustainedSeconds)
    {
        FullLow = measured.FullLow,
        FullHigh = measured.FullHigh,
        IsAssumed = measured.IsRangeAssumed,
    };
}
