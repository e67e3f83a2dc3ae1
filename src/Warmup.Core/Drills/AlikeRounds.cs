namespace Warmup;

public sealed partial record Section
{
    /// <summary>
    /// How many times through the drill, from one on, are exactly alike: the same notes, words, holds, breaths and tempo, each a whole number of
    /// avartanas after the one before, so that a sheet can print one of them. The time itself counts, so that the number is at least 1.
    /// </summary>
    /// <param name="round">A time through the drill, from 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such time.</exception>
    public int AlikeFrom(int round)
    {
        Require.InRange(round, 0, Rounds - 1);
        var (first, next) = (FirstLine(round), FirstLine(round + 1));
        var count = 1;
        while (round + count < Rounds && IsAlike(first, FirstLine(round + count), next - first))
        {
            count++;
        }

        return count;
    }

    private int FirstLine(int round)
    {
        var (low, high) = (0, Lines.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = Lines[middle].Round < round ? (middle + 1, high) : (low, middle);
        }

        return low;
    }

    private bool IsAlike(int first, int second, int count)
    {
        var shift = second < Lines.Count ? Lines[second].Onset - Lines[first].Onset : Rational.Zero;
        if (second + count > Lines.Count || (!Meter.IsFree && !(shift / Meter.Beats).IsInteger))
        {
            return false;
        }

        for (var l = 0; l < count; l++)
        {
            var (a, b) = (Lines[first + l], Lines[second + l]);
            if (b.Round != Lines[second].Round || b.Onset - a.Onset != shift || (a.Length, a.Answer, a.NoteCount, a.Speed) != (b.Length, b.Answer, b.NoteCount, b.Speed)
                || TempoAt(a.Onset) != TempoAt(b.Onset) || !HasAlikeNotes(a, b, shift))
            {
                return false;
            }
        }

        return second + count == Lines.Count || Lines[second + count].Round != Lines[second].Round;
    }

    private bool HasAlikeNotes(ScoreLine a, ScoreLine b, Rational shift)
    {
        for (var n = 0; n < a.NoteCount; n++)
        {
            var (one, other) = (Notes[a.FirstNote + n], Notes[b.FirstNote + n]);
            var (breath, then) = (BreathAfter(a.FirstNote + n), BreathAfter(b.FirstNote + n));
            if (other.Onset - one.Onset != shift
                || (one.LengthSteps, one.PitchIndex, one.SyllableIndex, one.IsHeld, one.Joining, one.Loudness) != (other.LengthSteps, other.PitchIndex, other.SyllableIndex, other.IsHeld, other.Joining, other.Loudness)
                || breath?.Length != then?.Length || breath?.Onset + shift != then?.Onset)
            {
                return false;
            }
        }

        return true;
    }
}
