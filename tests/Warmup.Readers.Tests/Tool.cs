using System.Diagnostics;

namespace Warmup.Readers.Tests;

/// <summary>A program of this machine that reads MusicXML. A test that needs one which is missing is skipped and says so.</summary>
internal sealed class Tool
{
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(10);

    private readonly string _names;
    private readonly string? _path;

    private Tool(params string[] names)
    {
        _names = string.Join(" or ", names);
        var folders = (Environment.GetEnvironmentVariable("PATH") ?? string.Empty).Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries);
        _path = names.SelectMany(n => folders.Select(f => Path.Combine(f, n))).FirstOrDefault(File.Exists);
    }

    public static Tool MuseScore { get; } = new("mscore3", "musescore3");

    public static Tool PdfToPpm { get; } = new("pdftoppm");

    public static Tool MusicXmlToLy { get; } = new("musicxml2ly");

    public static Tool LilyPond { get; } = new("lilypond");

    public static Tool Node { get; } = new("node");

    /// <summary>The first of some programs that this machine lacks, as the reason of a skip; null where all are there.</summary>
    public static string? Missing(params Tool[] tools) =>
        tools.FirstOrDefault(t => t._path is null) is { } missing ? $"{missing._names} is not installed on this machine" : null;

    /// <summary>Runs the program to its end.</summary>
    /// <returns>Its exit code and all that it printed.</returns>
    public (int Code, string Out, string Error) Run(string folder, params string[] arguments)
    {
        var start = new ProcessStartInfo(_path!, arguments)
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };

        // No screen, no user's settings, plain English.
        start.Environment["QT_QPA_PLATFORM"] = "offscreen";
        start.Environment["XDG_RUNTIME_DIR"] = folder;
        start.Environment["XDG_CONFIG_HOME"] = folder;
        start.Environment["XDG_DATA_HOME"] = folder;
        start.Environment["LC_ALL"] = "C.UTF-8";
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync();
        var error = process.StandardError.ReadToEndAsync();
        if (!process.WaitForExit(Longest))
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException($"{_names} took longer than {Longest}");
        }

        return (process.ExitCode, output.GetAwaiter().GetResult(), error.GetAwaiter().GetResult());
    }
}
