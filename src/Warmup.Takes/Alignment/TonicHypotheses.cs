using MathNet.Numerics.Statistics;

namespace Warmup.Takes;

/// <summary>A take laid under its drill with a tonic and a pace.</summary>
/// <param name="Shift">What the singer sings above the drill, in cents, octaves included.</param>
/// <param name="Alignment">The notes in the take.</param>
/// <param name="Pace">How fast it goes.</param>
/// <param name="Rival">The cost of the best other octave or tonic above this one's.</param>
/// <param name="Evidence">What the take costs more as any melody at all.</param>
internal sealed record TonicHypothesis(double Shift, TakeAlignment Alignment, PaceCurve Pace, double Rival, double Evidence)
{
    /// <summary>The same with some notes taken out.</summary>
    /// <param name="isOut">Whether the note of a number is taken out.</param>
    /// <param name="isHeld">Whether the one before it has its time then.</param>
    public TonicHypothesis Without(Func<int, bool> isOut, Func<int, bool> isHeld)
    {
        var (spans, margins) = (new List<SungSpan>(), new List<double>());
        for (var s = 0; s < Alignment.Spans.Length; s++)
        {
            if (!isOut(s))
            {
                spans.Add(Alignment.Spans[s]);
                margins.Add(Alignment.Margins[s]);
            }
            else if (isHeld(s))
            {
                spans[^1] = spans[^1] with { To = Alignment.Spans[s].To };
            }
        }

        return this with { Alignment = Alignment with { Spans = [.. spans], Margins = [.. margins] } };
    }
}

/// <summary>
/// Decides the octave and the tonic once for the whole take, by whole alignments: what is heard of a single moment cannot tell a voice from
/// its octave.
/// </summary>
internal static class TonicHypotheses
{
    private const int Most = 6;

    // So much of a long take is enough to choose by: 90 s.
    private const int FramesToChoose = 9_000;

    // A singer who has the drill's tonic in the ear takes it, or its octave; anything else has to explain the take clearly better.
    private const double OtherTonic = 12;
    private const double OtherOctave = 2;
    private const double Same = 70;

    // So far from its pitch, in cents, a note may still be it.
    private const double Near = 120;

    // Where more notes than this have odd lengths, they may have been divided or run together.
    private const double ManyOdd = 0.15;

    // How much more another tonic or octave may cost and still be a rival.
    private const double Rivalry = 10;

    public static TonicHypothesis Best(DrillNotes drill, PitchTrack track, Voicing voicing, AlignmentWeights weights, CancellationToken cancellation)
    {
        var tried = new List<(double Shift, TakeAlignment Alignment, double Cost)>();
        foreach (var shift in TonicSearch.Shifts(drill, track, voicing, Most))
        {
            var limit = tried.Count == 0 ? double.PositiveInfinity : tried.Min(t => t.Cost) - Price(shift) + Rivalry;
            var alignment = new Aligner(drill, track, voicing, shift, _ => 1, new Steadiness(weights.Deviation, weights.LengthAtFirst), weights, FramesToChoose, Aligner.CoarseStep).Align(limit, cancellation);
            tried.Add((shift, alignment, alignment.Cost + Price(shift)));
        }

        tried.Sort((a, b) => a.Cost != b.Cost ? a.Cost.CompareTo(b.Cost) : a.Shift.CompareTo(b.Shift));
        var (best, first, cost) = tried[0];
        var rival = tried.Count > 1 ? tried[1].Cost - cost : double.PositiveInfinity;

        // Tonic, pace and steadiness from all notes together; then once more from the notes that were found with them.
        var found = first;
        Aligner? aligner = null;
        for (var n = 0; n < 2 && found.Spans.Length > 0; n++)
        {
            var pace = PaceCurve.Of(drill.Notes, found.Spans);
            var above = Above(drill, track, found.Spans, best);
            var shift = above.Count == 0 ? 0 : above.Median();
            var steadiness = Steadiness.Of(above.Select(a => a - shift), drill.Notes, found.Spans, pace, weights);
            best += shift;
            aligner = new Aligner(drill, track, voicing, best, pace.At, steadiness, weights);
            found = aligner.Align(double.PositiveInfinity, cancellation);
            if (n == 0 && pace.Odd > ManyOdd)
            {
                // Such notes make a pace of their own, which then confirms them: the drill's may explain more.
                var plain = new Aligner(drill, track, voicing, best, _ => 1, steadiness, weights);
                var asWritten = plain.Align(found.Cost, cancellation);
                (found, aligner) = asWritten.Cost < found.Cost ? (asWritten, plain) : (found, aligner);
            }
        }

        return new TonicHypothesis(best, found, PaceCurve.Of(drill.Notes, found.Spans), rival, aligner?.Evidence(found, voicing.HasGround) ?? 0);
    }

    /// <summary>How far above a shift the notes were sung whose pitch could be followed, in cents.</summary>
    private static List<double> Above(DrillNotes drill, PitchTrack track, SungSpan[] spans, double shift)
    {
        var above = new List<double>();
        foreach (var span in spans.Where(s => !s.IsOther))
        {
            var wanted = drill.Notes[span.Note].Cents + shift;
            var (onset, end) = (span.From / (double)PitchTrack.FramesASecond, span.To / (double)PitchTrack.FramesASecond);
            var heard = NoteContour.Measure(track, onset, end, wanted, Near);
            if (heard.Found > 0.5)
            {
                above.Add(heard.Cents - wanted);
            }
        }

        return above;
    }

    /// <summary>Whether a shift is the drill's own tonic, or an octave of it.</summary>
    public static bool IsOwnTonic(double shift) => Math.Abs(shift - (1200 * Math.Round(shift / 1200))) <= Same;

    private static double Price(double shift) => (Math.Abs(Math.Round(shift / 1200)) * OtherOctave) + (IsOwnTonic(shift) ? 0 : OtherTonic);
}
