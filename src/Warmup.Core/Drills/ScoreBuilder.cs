namespace Warmup;

/// <summary>Makes a score of lines in time and pitches.</summary>
internal static class ScoreBuilder
{
    public static Score Build(Drill drill, Expansion lines, CancellationToken cancellation)
    {
        var timed = TimedLines.Of(drill, lines, cancellation);
        return Build(drill, drill.Title, timed, new TunedPitches(drill, timed.Palette));
    }

    /// <summary>The score of a drill that the lines in time and the pitches suit.</summary>
    public static Score Build(Drill drill, string title, TimedLines timed, TunedPitches heights)
    {
        var section = timed.ToSection(drill, title, heights);
        var findings = heights.Respelled is null ? timed.Lines.Findings : [.. timed.Lines.Findings, heights.Respelled];

        // Speeds one after the other are practised to meet the first beat again; a single one may run on on purpose.
        if (drill.Speeds.Count > 1 && section.UnevenEnd() is { } uneven && findings.All(f => f.Code != uneven.Code))
        {
            findings = [.. findings, uneven];
        }

        return new Score(title, [section], heights.Drone, drill.HasDrone && drill.DroneStyle.Missing(drill.Scale) is { } missing ? [.. findings, missing] : findings);
    }
}
