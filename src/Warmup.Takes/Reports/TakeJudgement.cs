namespace Warmup.Takes;

/// <summary>Whether what was heard is the drill at all. The bounds are the project's own settings.</summary>
internal static class TakeJudgement
{
    private const double LeastVoice = 0.5;
    private const double LeastExplained = 0.4;
    private const double MostForeign = 0.5;
    private const int LeastNotes = 3;

    // Departures for each note that a singer of the drill may make, and how many more in a few notes, by chance.
    private const double MostTrouble = 0.3;
    private const double ByChance = 0.7;

    // How much cheaper the drill must explain the take than any melody does, in all: many notes with a few faults show it, and so do few without. On its own tonic
    // it may even cost a little more, since it is the drill that was to be sung, and more still where most of the singing is in its notes; any tune can be moved to another.
    private const double LeastEvidence = -1;
    private const double LeastEvidenceInNotes = -6;
    private const double MostlyInNotes = 0.65;
    private const double LeastEvidenceMoved = 2;

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

        if (facts.Explained < LeastExplained || facts.Foreign > MostForeign)
        {
            return "much was sung that is not in it";
        }

        if (facts.Trouble > MostTrouble + (ByChance / Math.Sqrt(facts.Sung)))
        {
            return "its notes were not heard in their order";
        }

        var least = !facts.IsOwnTonic ? LeastEvidenceMoved : facts.Explained < MostlyInNotes ? LeastEvidence : LeastEvidenceInNotes;
        return facts.Evidence < least ? "another melody explains as well what was sung" : null;
    }
}

/// <summary>What decides whether a take is its drill.</summary>
/// <param name="Heard">Notes heard as they are in the drill.</param>
/// <param name="Sung">All notes sung, other ones too.</param>
/// <param name="Explained">The share of the voice's time that lies in notes; where a drone's strings sound alone there is none.</param>
/// <param name="Foreign">The share of it that lies in passes of lines of which fewer than half of the notes were heard.</param>
/// <param name="Trouble">Departures for each note heard: other notes, left-out ones inside what was sung, and jumps.</param>
/// <param name="Evidence">How much cheaper the drill explains the take than any melody does.</param>
/// <param name="IsOwnTonic">Whether it was sung on the drill's own tonic, or an octave of it.</param>
internal readonly record struct TakeFacts(int Heard, int Sung, double Explained, double Foreign, double Trouble, double Evidence, bool IsOwnTonic);
