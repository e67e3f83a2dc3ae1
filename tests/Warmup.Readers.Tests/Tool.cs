namespace Warmup.Readers.Tests;

/// <summary>A program of this machine that reads what is written. A test that needs one which is missing is skipped and says so.</summary>
internal sealed class Tool
{
    private readonly string _names;
    private readonly string? _path;

    private Tool(params string[] names)
    {
        _names = string.Join(" or ", names);
        _path = ProgramRun.Find(names);
    }

    public static Tool MuseScore { get; } = new("mscore3", "musescore3");

    public static Tool PdfToPpm { get; } = new("pdftoppm");

    public static Tool MusicXmlToLy { get; } = new("musicxml2ly");

    public static Tool LilyPond { get; } = new("lilypond");

    public static Tool Node { get; } = new("node");

    // The system's own: Debian's packages are for it.
    public static Tool Python { get; } = new("/usr/bin/python3");

    /// <summary>The first of some programs that this machine lacks, as the reason of a skip; null where all are there.</summary>
    public static string? Missing(params Tool[] tools) =>
        tools.FirstOrDefault(t => t._path is null) is { } missing ? $"{missing._names} is not installed on this machine" : null;

    /// <summary>Runs the program to its end.</summary>
    public ProgramRun Run(string folder, params string[] arguments)
    {
        var start = ProgramRun.Prepare(_path!, folder, arguments);

        // No screen, no user's settings, plain English.
        start.Environment["QT_QPA_PLATFORM"] = "offscreen";
        start.Environment["XDG_RUNTIME_DIR"] = folder;
        start.Environment["XDG_CONFIG_HOME"] = folder;
        start.Environment["XDG_DATA_HOME"] = folder;
        start.Environment["LC_ALL"] = "C.UTF-8";
        return ProgramRun.Of(start);
    }
}
