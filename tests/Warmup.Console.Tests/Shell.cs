namespace Warmup.Cli.Tests;

/// <summary>Runs the program as a shell would, in a folder of its own that is gone afterwards.</summary>
public sealed class Shell : IDisposable
{
    public Shell() => Folder = Directory.CreateTempSubdirectory("warmup-").FullName;

    public string Folder { get; }

    public string[] Files => [.. Directory.EnumerateFiles(Folder, "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(Folder, f)).Order(StringComparer.Ordinal)];

    public string At(string name) => Path.Combine(Folder, name);

    public static (int Code, string Out, string Error) Run(params string[] args)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        var code = Program.Run(args, output, error);
        return (code, output.ToString(), error.ToString());
    }

    /// <summary>Waits, half a minute at most.</summary>
    public static async Task Until(Func<bool> done)
    {
        for (var i = 0; i < 3000 && !done(); i++)
        {
            await Task.Delay(10, TestContext.Current.CancellationToken);
        }
    }

    /// <summary>A drill command with good options, of which some may be replaced.</summary>
    public string[] Drill(params (string Option, string Value)[] changed)
    {
        var options = new Dictionary<string, string>
        {
            ["--scale"] = "mohanam",
            ["--pattern"] = "ladder",
            ["--tonic"] = "G3",
            ["--tempo"] = "60",
            ["--out"] = At("a.mid"),
        };
        foreach (var (option, value) in changed)
        {
            options[option] = value;
        }

        return ["drill", .. options.SelectMany(o => (string[])[o.Key, o.Value])];
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
