namespace Warmup.Cli;

/// <summary>A drill of the demo as it is shown: its score, and how it fits each singer.</summary>
internal sealed class DemoDrill
{
    private DemoDrill(StudioDrill studio, CancellationToken cancellation)
    {
        var drill = studio.ToDrill();
        FileName = studio.FileName;
        Trains = studio.Trains;
        Score = drill.ToScore(cancellation);
        var advice = drill.Advise(Studio.Singers, cancellationToken: cancellation);
        Fits = Studio.Singers.Select(singer => new DemoFit(singer, drill, [.. advice.Where(a => a.Singer == singer)])).ToList();
    }

    /// <summary>The name of its files, without the ending.</summary>
    public string FileName { get; }

    /// <summary>What it trains, in a sentence.</summary>
    public string Trains { get; }

    public Score Score { get; }

    /// <summary>How it fits each singer.</summary>
    public IReadOnlyList<DemoFit> Fits { get; }

    public static DemoDrill Of(StudioDrill drill, CancellationToken cancellation) => new(drill, cancellation);

    /// <summary>The name of a file of the drill.</summary>
    /// <param name="ending">Its ending, with the dot.</param>
    public string File(string ending) => FileName + ending;
}

/// <summary>How a drill fits a singer.</summary>
internal sealed class DemoFit(Singer singer, Drill drill, IReadOnlyList<Advice> advice)
{
    public Singer Singer { get; } = singer;

    public bool IsFit { get; } = advice.Count == 0;

    /// <summary>The lines that do not fit: <c>line 6</c>, <c>lines 4-5, 7</c>.</summary>
    public string Lines { get; } = Named(LineNumbers.ToText(advice.Select(a => a.Finding.Place?.Line ?? 0).Where(l => l > 0).Distinct().Order()));

    /// <summary>What does not fit: the lines, and what it is with what would help.</summary>
    public IReadOnlyList<(string Lines, string Text)> Rows { get; } =
        [.. Report.Rows(advice).Select(r => (Named(r.Lines), $"{r.Worst.Finding.Message}; {r.Worst.Help(drill)}"))];

    private static string Named(string lines) => $"{Report.LinesWord(lines)} {lines}";
}
