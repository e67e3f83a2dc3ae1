using System.CommandLine;

namespace Warmup.Cli;

/// <summary><c>--tuning</c>: a tuning's name, or a Scala file.</summary>
internal static class TuningOption
{
    private const string ScalaEnding = ".scl";

    public static Option<string> Create() => new("--tuning")
    {
        Description = $"Tuning: {string.Join(" or ", Tuning.All)}, \"just: 10/9 27/16\" with the ratios chosen, or a {ScalaEnding} file.",
        DefaultValueFactory = _ => Tuning.Equal.Name,
    };

    public static bool IsScalaFile(string path) => path.EndsWith(ScalaEnding, StringComparison.OrdinalIgnoreCase);

    /// <summary>The tuning that the option names.</summary>
    /// <exception cref="InputException">There is no such tuning, or the file cannot be used; the message says why.</exception>
    public static Tuning Read(string text)
    {
        if (!IsScalaFile(text))
        {
            return Tuning.TryParse(text, out var tuning, out var error) ? tuning! : throw new InputException($"--tuning, {error}");
        }

        try
        {
            using var stream = File.OpenRead(text);
            return ScalaFile.Read(stream).ToTuning(Path.GetFileNameWithoutExtension(text));
        }
        catch (WarmupFormatException broken)
        {
            throw new InputException($"--tuning, {text}: line {broken.Error.Line}, column {broken.Error.Column}: {broken.Error.Message}");
        }
        catch (ArgumentException refused)
        {
            throw new InputException($"--tuning, {text}: {refused.Message.Split(" (Parameter", 2)[0]}");
        }
    }
}
