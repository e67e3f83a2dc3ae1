using System.CommandLine;

namespace Warmup.Cli;

/// <summary><c>warmup demo</c>: an invented class, its drills as files, and how they fit.</summary>
internal static class DemoCommand
{
    private const string SingersName = "singers.json";

    /// <summary>The endings of a drill's files besides its page and its sheet to print.</summary>
    public static ValueList<string> OtherEndings => [".txt", ".mid", ".musicxml"];

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
        var title = $"{Studio.Name} (invented)";
        var drills = Studio.Drills.Select(d => DemoDrill.Of(d, cancellation)).ToList();
        (string File, string What)[] more =
        [
            (DemoFindings.PageName, "how the drills fit each singer"),
            (DemoFindings.TextName, "the same as text (.txt)"),
            (SingersName, "the singers (.json)"),
        ];
        List<(string Name, Action<Stream> Write)> files =
        [
            .. drills.SelectMany(d => ((IEnumerable<string>)[".html", ".pdf", .. OtherEndings]).Select(e => Formats.File(d.File(e), Formats.Of(e), d.Score, cancellation))),
            (SingersName, stream => SingersFile.Write(Studio.Singers, stream)),
            (DemoFindings.TextName, stream => stream.Write(DemoFindings.Text(title, drills))),
            (DemoFindings.PageName, stream => stream.Write(DemoFindings.Page($"How the drills fit: {title}", drills))),
            (DemoIndex.FileName, stream => stream.Write(DemoIndex.Page(title, drills, more))),
        ];
        Formats.WriteTogether(files.ConvertAll(f => (Path.Combine(folder, f.Name), f.Write)), force);

        terminal.Out.WriteLine($"{title}: {Studio.Singers.Count} singers, {drills.Count} drills");
        foreach (var (name, _) in files)
        {
            terminal.Out.WriteLine($"  {Path.Combine(folder, name)}");
        }

        terminal.Out.WriteLine($"Open first: {Path.Combine(folder, DemoIndex.FileName)}; it links to all other files, and its practice pages play the drills.");
        terminal.Out.WriteLine($"How the drills fit each singer, and the cautions: {Path.Combine(folder, DemoFindings.PageName)}");
    }
}
