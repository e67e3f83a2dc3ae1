namespace Warmup.Listening.Tests;

/// <summary>A program of the machine. A test that needs one which is not there skips and says what to install.</summary>
public sealed class Tool
{
    private readonly string _path;

    private Tool(string path) => _path = path;

    /// <summary>The program with a name, or skips the test.</summary>
    /// <param name="name">The name, or the whole path.</param>
    /// <param name="package">The Debian package that has it.</param>
    public static Tool Get(string name, string package)
    {
        var path = ProgramRun.Find(name);
        Assert.SkipWhen(path is null, $"{name} is not installed (Debian: apt-get install {package})");
        return new Tool(path!);
    }

    /// <summary>The Python of the system with mido, or skips the test. The system's own, since Debian's packages are for it.</summary>
    public static Tool Mido()
    {
        var python = Get("/usr/bin/python3", "python3-mido");
        Assert.SkipWhen(python.Start("-c", "import mido").Code != 0, "python3 has no mido (Debian: apt-get install python3-mido)");
        return python;
    }

    /// <summary>The sound font TimGM6mb, or skips the test.</summary>
    public static string SoundFont() => SoundFont("/usr/share/sounds/sf2/TimGM6mb.sf2", "timgm6mb-soundfont");

    /// <summary>A sound font, or skips the test.</summary>
    /// <param name="path">Where it lies.</param>
    /// <param name="package">The Debian package that has it.</param>
    public static string SoundFont(string path, string package)
    {
        Assert.SkipUnless(File.Exists(path), $"{path} does not exist (Debian: apt-get install {package})");
        return path;
    }

    /// <summary>Runs the program and gives what it prints; an exit code other than 0 fails the test.</summary>
    public string Run(params string[] arguments)
    {
        var (code, output, error) = Start(arguments);
        Assert.True(code == 0, $"{_path} {string.Join(' ', arguments)} ended with {code}: {error}");
        return output;
    }

    private ProgramRun Start(params string[] arguments) => ProgramRun.Of(_path, Environment.CurrentDirectory, arguments);
}
