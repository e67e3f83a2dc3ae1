using System.Globalization;

namespace Warmup.Cli;

/// <summary>What became of the files of a plan's folder.</summary>
/// <param name="Folder">The folder.</param>
/// <param name="Files">All files, in order, each with whether it was there already.</param>
/// <param name="InWords">What was written, if nothing was there.</param>
internal sealed record PlanWritten(string Folder, List<PlanWritten.Entry> Files, string InWords)
{
    /// <summary>What was there and what was written.</summary>
    public override string ToString()
    {
        var kept = Files.Count(f => f.Kept);
        var written = Files.Count - kept;
        return kept == 0 ? InWords
            : kept == Files.Count ? string.Create(CultureInfo.InvariantCulture, $"{Folder} is complete: all {kept} files of this plan were there, and nothing was written")
            : string.Create(CultureInfo.InvariantCulture, $"{Folder} is complete: {kept} of the {Files.Count} files of this plan were there and stay, and {written} {(written == 1 ? "was" : "were")} written");
    }

    /// <summary>A file, and whether it was there already.</summary>
    internal sealed record Entry(string Path, bool Kept);
}

/// <summary>The work was stopped, and can go on.</summary>
internal sealed class StoppedException(string message, Exception stopped) : OperationCanceledException(message, stopped);
