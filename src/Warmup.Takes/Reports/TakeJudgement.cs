namespace Warmup.Takes;

/// <summary>Whether what was heard is the drill at all. The bounds are the project's own settings.</summary>
internal static class TakeJudgement
{
    private const double LeastVoice = 0.5;
    private const double LeastExplained = 0.6;
    private const double MostTrouble = 0.5;
    private const int LeastNotes = 3;

    /// <summary>Why the sound cannot be a drill, before it is held against one; <see langword="null"/> where it may be.</summary>
    public static string? OfSound(PitchTrack track, Voicing voicing)
    {
        if (track.Seconds < 0.5)
        {
            return "the recording is shorter than half a second";
        }

        var voice = 0.0;
        for (var f = 0; f < track.Count; f++)
        {
            voice += voicing[f];
        }

        return voicing.Top < -70 || voice / PitchTrack.FramesASecond < LeastVoice ? "no singing was heard" : null;
    }

    /// <summary>A report that judges nothing.</summary>
    public static TakeReport NotTheDrill(PitchTrack track, string why) => new() { IsDrill = false, Reason = why, Seconds = Math.Round(track.Seconds, 3) };

    /// <summary>Why an alignment does not show the drill; <see langword="null"/> where it does.</summary>
    /// <param name="facts">What the alignment came to.</param>
    public static string? OfAlignment(TakeFacts facts)
    {
        if (facts.Heard < LeastNotes)
        {
            return "almost none of its notes were heard";
        }

        if (facts.Explained < LeastExplained)
        {
            return "much was sung that is not in it";
        }

        return facts.Trouble > MostTrouble ? "its notes were not heard in their order" : null;
    }
}

/// <summary>What decides whether a take is its drill.</summary>
/// <param name="Heard">Notes heard.</param>
/// <param name="Explained">The share of the voice's time that lies in notes.</param>
/// <param name="Trouble">Departures for each note heard: other notes, left-out ones inside what was sung, and jumps.</param>
/// <param name="Fit">The mean cost of a frame in the notes.</param>
internal readonly record struct TakeFacts(int Heard, double Explained, double Trouble, double Fit);
