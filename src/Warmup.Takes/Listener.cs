namespace Warmup.Takes;

/// <summary>Holds recordings against the drills that were to be sung.</summary>
public static class Listener
{
    /// <summary>Listens to a take.</summary>
    /// <param name="score">The drill as it was to be sung.</param>
    /// <param name="sound">The recording, read from its beginning to its end.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <returns>What was sung; the same for the same score and sound.</returns>
    /// <exception cref="SoundException">The recording is broken, or longer than half an hour.</exception>
    public static TakeReport Hear(Score score, SoundSource sound, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(score);
        ArgumentNullException.ThrowIfNull(sound);
        return Hear(score, PitchTracker.Track(sound, cancellationToken), AlignmentWeights.Default, cancellationToken);
    }

    internal static TakeReport Hear(Score score, PitchTrack track, AlignmentWeights weights, CancellationToken cancellation)
    {
        var drill = new DrillNotes(score);
        var voicing = Voicing.Of(track);
        if (TakeJudgement.OfSound(track, voicing) is { } silent)
        {
            return TakeJudgement.NotTheDrill(track, silent);
        }

        var hypothesis = TonicHypotheses.Best(drill, track, voicing, weights, cancellation);
        return new TakeWriter(drill, track, voicing, hypothesis, weights).Write();
    }
}
