using System.CommandLine;
using System.Text;

namespace Warmup.Cli;

/// <summary><c>warmup demo</c>: an invented class, its drills as files, and how they fit.</summary>
internal static class DemoCommand
{
    private static readonly string[] Endings = [".html", ".txt", ".mid", ".musicxml"];

    public static Command Create(Terminal terminal, CancellationToken cancellation)
    {
        var folder = new Option<string>("--out") { Description = "The folder to write to; it is made if it does not exist.", Required = true };
        var force = new Option<bool>("--force") { Description = "Replace files that exist." };
        var command = new Command("demo", "Writes the drills of an invented class, and shows how they fit its singers.") { folder, force };
        command.SetAction(parsed =>
        {
            Write(parsed.GetValue(folder)!, parsed.GetValue(force), terminal, cancellation);
            return ExitCode.Fine;
        });
        return command;
    }

    private static void Write(string folder, bool force, Terminal terminal, CancellationToken cancellation)
    {
        if (File.Exists(folder))
        {
            throw new InputException($"{folder} is a file; name a folder");
        }

        Directory.CreateDirectory(folder);
        var scores = Studio.Drills.Select(d => (d.FileName, Score: d.ToDrill().ToScore(cancellation))).ToList();
        var files = scores.SelectMany(s => Endings.Select(e => (Path: Path.Combine(folder, s.FileName + e), s.Score))).ToList();
        var singers = Path.Combine(folder, "singers.json");
        var findings = Path.Combine(folder, "findings.txt");
        var index = Path.Combine(folder, DemoIndex.FileName);
        foreach (var path in files.Select(f => f.Path).Append(singers).Append(findings).Append(index))
        {
            Formats.RefuseUnwritable(path, force);
        }

        foreach (var (path, score) in files)
        {
            Formats.Of(path).Save(score, path, force, cancellation);
        }

        AtomicFile.Write(singers, stream => SingersFile.Write(Studio.Singers, stream), force);
        AtomicFile.Write(findings, stream => stream.Write(Encoding.UTF8.GetBytes(Findings(cancellation))), force);

        AtomicFile.Write(index, stream => stream.Write(Index(scores)), force);

        terminal.Out.WriteLine($"{Studio.Name} (invented): {Studio.Singers.Count} singers, {scores.Count} drills");
        foreach (var path in files.Select(f => f.Path).Append(singers).Append(findings).Append(index))
        {
            terminal.Out.WriteLine($"  {path}");
        }

        terminal.Out.WriteLine($"Open first: {index}; it links to all other files, and its practice pages play the drills.");
        terminal.Out.WriteLine($"How the drills fit each singer, and the cautions: {findings}");
    }

    private static byte[] Index(IEnumerable<(string FileName, Score Score)> scores) => DemoIndex.Page(
        $"{Studio.Name} (invented)",
        scores.Select(s => (s.Score.Title, Endings.Select(e => (s.FileName + e, $"{Formats.Of(e).Name} ({e})"))))
            .Append(("The class", [("findings.txt", "how the drills fit each singer (.txt)"), ("singers.json", "the singers (.json)")])));

    private static string Findings(CancellationToken cancellation)
    {
        var text = new StringBuilder();
        text.Append(Studio.Name).Append(" (invented)\n");
        foreach (var drill in Studio.Drills.Select(d => d.ToDrill()))
        {
            text.Append('\n').Append(drill.Title).Append('\n');
            var advice = drill.Advise(Studio.Singers, cancellationToken: cancellation);
            foreach (var singer in Studio.Singers)
            {
                var rows = Report.Rows(advice.Where(a => a.Singer == singer)).ToList();
                text.Append("  ").Append(singer).Append(rows.Count == 0 ? ": fits\n" : ":\n");
                foreach (var (lines, worst) in rows)
                {
                    text.Append("    - ").Append(Report.LinesWord(lines)).Append(' ').Append(lines).Append(": ")
                        .Append(worst.Finding.Message).Append("; ").Append(worst.Help(drill)).Append('\n');
                }
            }
        }

        text.Append('\n');
        foreach (var caution in Cautions.All)
        {
            text.Append("- ").Append(caution.Text).Append(" (").Append(caution.Source).Append(")\n");
        }

        return text.ToString();
    }
}
