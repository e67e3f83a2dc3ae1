using System.Globalization;
using Spectre.Console;

namespace Warmup.Cli;

/// <summary>Prints what fits a class.</summary>
internal static class ClassTable
{
    // The most singers for whom the smallest change is printed.
    private const int MostChanges = 8;

    // In a larger class a text that has stood in the table is named by the singer beside whom it stands.
    private const int MostFullTexts = 20;
    private const int ShortText = 40;

    public static void Print(Terminal terminal, ClassFit fit)
    {
        var output = terminal.Out;
        var words = fit.Words;
        output.WriteLine($"{fit.Score.Title}, {words.Tonic(fit.Score.Sections[0].TonicName)}, tempo {fit.Drill.Tempo.Start}, {words.Speed(fit.Drill.Speeds[0])}, {words.Delivery(fit.Drill.Delivery)}, {Count(fit.Singers.Count, "singer")}");
        PrintRows(terminal, fit.Report, full: true);
        if (fit.Singers.Count == 1)
        {
            PrintLines(terminal, fit);
        }

        PrintTonics(terminal, fit.Report, words);
        PrintChanges(terminal, fit);
        output.WriteLine();
        output.WriteLine(fit.Plan is { } plan
            ? $"Breaths for all together, at tempo {fit.Drill.Tempo.Start}: {plan.Describe()}"
            : $"Breaths for all together, at tempo {fit.Drill.Tempo.Start}: none possible: {fit.NoPlan?.Describe()}");
        SingingTable.PrintBreaths(terminal, fit.ClassBreaths);
        PrintWindows(terminal, fit.Windows, words);
        output.WriteLine("Phrase lengths, levels and breath costs are this project's own settings; the times of pitch changes are those of Xu and Sun 2002, measured with speakers.");
        output.WriteLine();
    }

    /// <summary>The class table alone, with the best tonic; for a check of a drill with several singers.</summary>
    public static void PrintInShort(Terminal terminal, Drill drill, ValueList<Singer> singers, CancellationToken cancellation)
    {
        if (singers.Count < 2)
        {
            return;
        }

        var report = ClassReport.Of([drill], singers, cancellationToken: cancellation);
        terminal.Out.WriteLine("The class, each in the octave that suits the singer:");
        PrintRows(terminal, report, full: false);
        var words = ClassFit.WordsOf(drill);
        if (!report.Tonics.IsEmpty)
        {
            terminal.Out.WriteLine($"Best common tonic: {report.Tonics[0].Tonic}: {report.Tonics[0].Explain(words.TonicSyllable)}");
        }

        PrintGroups(terminal, report, words);
        terminal.Out.WriteLine();
    }

    private static void PrintRows(Terminal terminal, ClassReport report, bool full)
    {
        var table = new Table().Border(TableBorder.Ascii2).AddColumns("singer", "fits", "octave", "top fifth", "bottom fifth", "why, and what would help");
        var said = new Dictionary<string, string>();
        foreach (var row in report.Rows)
        {
            foreach (var cell in row.Cells)
            {
                table.AddRow(
                    Terminal.Plain(row.Singer + (row.Singer.IsRangeAssumed ? ", assumed" : string.Empty)),
                    Verdict(cell.Verdict),
                    Octave(cell.Octaves),
                    Share(cell.TopShare),
                    Share(cell.BottomShare),
                    Terminal.Plain(Said(full && cell.Fix.Length > 0 ? $"{cell.Why}; {cell.Fix}" : cell.Why, row.Singer.Alias)));
            }
        }

        terminal.Rich.Write(table);

        string Said(string text, string alias)
        {
            if (report.Rows.Count <= MostFullTexts || text.Length <= ShortText || said.TryAdd(text, alias))
            {
                return text;
            }

            return $"as for {said[text]}";
        }
    }

    /// <summary>For a single singer: where in the range each line lies, and every note outside.</summary>
    private static void PrintLines(Terminal terminal, ClassFit fit)
    {
        var octaves = fit.Report.Rows[0].Cells[0].Octaves;
        var use = RangeUse.Of((fit.Drill with { Tonic = fit.Drill.Tonic.Transposed(12 * octaves) }).ToScore(), fit.Singers[0]);
        var table = new Table().Border(TableBorder.Ascii2).AddColumns("line", "lowest", "highest", "sung (s)", "top fifth (s)", "bottom fifth (s)", "outside (s)", "notes outside");
        foreach (var line in use.Lines)
        {
            var outside = use.Outside.Where(n => (n.Place.Section, n.Place.Line) == (line.Place.Section, line.Place.Line))
                .Select(n => string.Create(CultureInfo.InvariantCulture, $"{n.Tone} {n.Semitones.ToDouble():+0.##;-0.##} on {fit.Words.Beat} {n.Place.Beat?.ToDouble() + 1:0.##}"));
            table.AddRow(
                line.Place.Line.ToString(CultureInfo.InvariantCulture),
                line.Lowest.ToString(),
                line.Highest.ToString(),
                Seconds(line.Seconds),
                Seconds(line.TopSeconds),
                Seconds(line.BottomSeconds),
                Seconds(line.OutsideSeconds),
                Terminal.Plain(string.Join(", ", outside)));
        }

        terminal.Rich.Write(table);
    }

    private static string Seconds(Rational seconds) => seconds.ToDouble().ToString("0.##", CultureInfo.InvariantCulture);

    private static void PrintTonics(Terminal terminal, ClassReport report, MeterWords words)
    {
        var hasKattai = !words.IsSolfege;
        terminal.Out.WriteLine("Tonics, the best first (fewest singers out, fewest semitones out, nearest to the middle of the ranges, lowest):");
        string[] kattai = hasKattai ? ["kattai"] : [];
        var table = new Table().Border(TableBorder.Ascii2).AddColumns(["tonic", .. kattai, "out", "semitones out", "why"]);
        foreach (var tonic in report.Tonics)
        {
            string[] number = hasKattai ? [tonic.KattaiNumber] : [];
            table.AddRow(
            [
                tonic.Tonic.ToString(),
                .. number,
                tonic.SingersOut.ToString(CultureInfo.InvariantCulture),
                tonic.SemitonesOut.ToDouble().ToString("0.##", CultureInfo.InvariantCulture),
                Terminal.Plain(tonic.Explain(words.TonicSyllable)),
            ]);
        }

        terminal.Rich.Write(table);
        PrintGroups(terminal, report, words);
    }

    private static void PrintGroups(Terminal terminal, ClassReport report, MeterWords words)
    {
        if (report.Groups.IsEmpty)
        {
            return;
        }

        terminal.Out.WriteLine("No tonic suits everyone; in two groups:");
        foreach (var group in report.Groups)
        {
            terminal.Out.WriteLine($"  {Names(group)} on {group.Tonic}: {group.Explain(words.TonicSyllable)}");
        }
    }

    private static string Names(TonicFit group) => string.Join(" ", group.Singers.Take(MostChanges).Select(s => s.Singer.Alias))
        + (group.Singers.Count > MostChanges ? $" and {group.Singers.Count - MostChanges} more" : string.Empty);

    private static void PrintChanges(Terminal terminal, ClassFit fit)
    {
        var out_ = fit.Report.Tonics.IsEmpty ? [] : fit.Report.Rows.Where(r => r.Cells[0].Verdict == ClassVerdict.DoesNotFit).ToList();
        foreach (var row in out_.Take(MostChanges))
        {
            var drill = fit.Drill with { Tonic = fit.Drill.Tonic.Transposed(12 * row.Cells[0].Octaves) };
            var changes = RangeChange.Smallest(drill, row.Singer);
            if (!changes.IsEmpty)
            {
                terminal.Out.WriteLine($"{row.Singer.Alias} alone, for the range: {string.Join("; or ", changes.ConvertAll(c => c.Text))}");
            }
        }
    }

    private static void PrintWindows(Terminal terminal, ValueList<TempoWindow> windows, MeterWords words)
    {
        terminal.Out.WriteLine(windows.IsEmpty
            ? $"Tempi are not searched for in drills of more than {TempoWindow.MostNotes} notes."
            : "Tempi for all together, with the drill's own rests (slow enough for the throat, fast enough for the breath):");
        foreach (var window in windows)
        {
            terminal.Out.WriteLine(window.IsEmpty ? $"  {words.Speed(window.Speed)}: no tempo" : $"  {words.Speed(window.Speed)}: {string.Join(", ", window.Intervals)}");
            foreach (var interval in window.Intervals)
            {
                terminal.Out.WriteLine($"    {interval}: not slower ({interval.Below}); not faster ({interval.Above})");
            }

            foreach (var closer in window.ClosedBy)
            {
                terminal.Out.WriteLine($"    what is in the way: the {closer}");
            }

            foreach (var opener in window.OpenedBy)
            {
                terminal.Out.WriteLine($"    what would help: {opener}");
            }
        }
    }

    public static string Verdict(ClassVerdict verdict) => verdict switch
    {
        ClassVerdict.Fits => "yes",
        ClassVerdict.FitsWithBreaths => "with breaths",
        _ => "no",
    };

    private static string Octave(int octaves) => octaves switch
    {
        0 => "as written",
        -1 => "lower",
        1 => "higher",
        _ => string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(octaves)} {(octaves < 0 ? "lower" : "higher")}"),
    };

    private static string Share(Rational share) => string.Create(CultureInfo.InvariantCulture, $"{share.ToDouble() * 100:0} %");

    private static string Count(int count, string what) => string.Create(CultureInfo.InvariantCulture, $"{count} {what}{(count == 1 ? string.Empty : "s")}");
}
