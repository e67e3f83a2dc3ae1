using Warmup.Reading;

namespace Warmup.Cli;

/// <summary>Reads the drills in files that options name.</summary>
internal static class DrillFile
{
    /// <summary>Why a section's lines are no pattern.</summary>
    public const string NotWrittenOut = "the lines have no common unit of length, or are too long to be written out for another scale";

    /// <summary>Whether a text names a file that drills are read from and that is there.</summary>
    public static bool IsNamed(string text) => MusicReader.Endings.Contains(Path.GetExtension(text.Trim()).ToLowerInvariant()) && File.Exists(text.Trim());

    /// <summary>Reads a file; each refusal names the option and the file.</summary>
    public static ReadMusic Read(string option, string path, ReadingOptions options, CancellationToken cancellation) =>
        Read(option, path, InputFile.Read(option, path, ReadingLimits.Bytes, "a file such as drill.musicxml, drill.mid or drill.txt", static b => b, isText: false), options, cancellation);

    /// <summary>Reads a file's bytes; each refusal names the option and the file.</summary>
    public static ReadMusic Read(string option, string path, byte[] bytes, ReadingOptions options, CancellationToken cancellation) =>
        MusicReader.TryRead(path, bytes, options, out var music, out var refusal, cancellation) ? music : throw new InputException($"{option}: {path}, {refusal}");

    /// <summary>What gives a section's lines in any scale: the rule of all of them, otherwise the lines written out.</summary>
    public static Pattern PatternOf(string option, string path, ReadSection section, CancellationToken cancellation) => RuleFinder.FindPattern(section, cancellation)
        ?? throw new InputException($"{option}: {path}, {NotWrittenOut}");
}
