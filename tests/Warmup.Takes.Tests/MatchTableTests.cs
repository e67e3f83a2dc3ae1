namespace Warmup.Takes.Tests;

/// <summary>What it costs to hear a note in a stretch of a take.</summary>
public class MatchTableTests
{
    /// <summary>All frames of a note are off alike, which counts once; a weaker pitch that lies nearer in each of them is no other course of the note.</summary>
    [Fact]
    public void A_weaker_pitch_that_lies_nearer_does_not_make_a_note_cost_more()
    {
        var alone = Cost(new PitchCandidate(6_046, 0.6f));
        Assert.InRange(alone, 1, 7);
        Assert.Equal(alone, Cost(new PitchCandidate(6_046, 0.6f), new PitchCandidate(6_005, 0.45f)), 0.1);
    }

    /// <summary>The cost of MIDI note 60 in two seconds of the same pitches.</summary>
    private static double Cost(params PitchCandidate[] candidates)
    {
        var track = new PitchTrack();
        for (var f = 0; f < 200; f++)
        {
            track.Add([.. candidates, .. new PitchCandidate[PitchTrack.Candidates - candidates.Length]], -10, rise: 0);
            track.AddLow(-10);
            track.AddLow(-10);
        }

        track.Follow();
        var weights = AlignmentWeights.Default;
        return new MatchTable(track, Voicing.Of(track), [6_000], track.Count, weights, 6_000, deviation: 20).OfNote(0, 0, track.Count);
    }
}
