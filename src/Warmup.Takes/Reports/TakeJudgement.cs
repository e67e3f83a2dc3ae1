namespace Warmup.Takes;

/// <summary>Whether what was heard is the drill at all. The bounds are the project's own settings.</summary>
internal static class TakeJudgement
{
    private const double LeastVoice = 0.5;
    private const double MostAmiss = 0.7;
    private const double MostAmissElsewhere = 0.5;
    private const double MostTrouble = 0.45;
    private const double MostCost = 12;
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

        if (facts.Cost > MostCost)
        {
            return "what was heard does not settle on its notes";
        }

        // Beside another tonic, where any tune can be moved to, more has to agree.
        if (1 - facts.Explained + facts.Trouble > (facts.IsOwnTonic ? MostAmiss : MostAmissElsewhere))
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
/// <param name="Cost">The cost of the alignment for each note heard.</param>
/// <param name="IsOwnTonic">Whether it was sung from the drill's tonic or an octave of it.</param>
internal readonly record struct TakeFacts(int Heard, double Explained, double Trouble, double Cost, bool IsOwnTonic);
