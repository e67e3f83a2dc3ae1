using System.CommandLine;

namespace Warmup.Cli;

/// <summary><c>--tuning</c>: a tuning's name, or a Scala file.</summary>
internal static class TuningOption
{
    private const string Name = "--tuning";
    private const string ScalaEnding = ".scl";

    public static Option<string> Create() => new(Name)
    {
        Description = $"Tuning: {string.Join(", ", Tuning.All)}, \"just: 10/9 27/16\" with ratios of your choice, or a {ScalaEnding} file.",
        DefaultValueFactory = _ => Tuning.Equal.Name,
    };

    public static bool IsScalaFile(string path) => path.EndsWith(ScalaEnding, StringComparison.OrdinalIgnoreCase);

    /// <summary>The tuning that the option names.</summary>
    /// <exception cref="InputException">There is no such tuning, or the file cannot be used; the message says why.</exception>
    public static Tuning Read(string text)
    {
        if (!IsScalaFile(text))
        {
            return OptionValue.Parsed<Tuning>(Name, text, Tuning.TryParse);
        }

        var file = InputFile.Read(Name, text, ScalaFile.LargestFile, $"a {ScalaEnding} file", bytes =>
        {
            using var stream = new MemoryStream(bytes);
            return ScalaFile.Read(stream);
        });
        try
        {
            return file.ToTuning(Path.GetFileNameWithoutExtension(text));
        }
        catch (ArgumentException)
        {
            throw new InputException(
                $"{Name}: {text} is not a tuning as it stands: it has {file.Pitches.Count} pitches; a tuning has 12, the last of them the octave 2/1, and a name of at most 100 characters");
        }
    }
}
