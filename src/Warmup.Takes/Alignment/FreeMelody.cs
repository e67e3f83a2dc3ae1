namespace Warmup.Takes;

/// <summary>
/// What a take costs as any melody at all, whose notes are free: a drill that costs more does not explain what was sung, however its notes are
/// laid.
/// </summary>
internal static class FreeMelody
{
    /// <summary>The least cost of a melody of some pitches.</summary>
    /// <param name="table">What the pitches cost in each stretch.</param>
    /// <param name="from">The first frame.</param>
    /// <param name="until">The frame after the last.</param>
    /// <param name="note">What each note costs for being free.</param>
    public static double Cost(MatchTable table, int from, int until, double note)
    {
        var notes = new double[table.Pitches];
        Array.Fill(notes, note);
        var (rest, best) = (0.0, 0.0);
        for (var f = from; f + Aligner.Step <= until; f += Aligner.Step)
        {
            var to = f + Aligner.Step;
            rest = Math.Min(rest, best) + table.Rest(f, to);
            var next = rest;
            for (var p = 0; p < notes.Length; p++)
            {
                notes[p] = Math.Min(notes[p], best + note) + table.Of(p, f, to);
                next = Math.Min(next, notes[p]);
            }

            best = next;
        }

        return best;
    }
}
