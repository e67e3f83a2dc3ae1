namespace Warmup.Voices;

/// <summary>Every note of a score in seconds, and what a breath after it would be.</summary>
internal static class BreathCandidates
{
    // The finest grid of a section: divisions stay within what notation files hold.
    private const int MostResolution = 16_383;

    public static Place[] Of(Score score, BreathNeed need)
    {
        var places = new Place[score.NoteCount];
        var at = 0;
        var starts = score.SectionStarts();
        for (var s = 0; s < score.Sections.Count; s++)
        {
            var (section, sectionStart) = (score.Sections[s], starts[s]);
            var grid = Grid(section.Resolution);
            var shortestNotes = ShortestNotes(section);

            // Where the tempo does not change, all breaths take as many steps.
            long? steps = section.TempoChanges.IsEmpty ? (need.ShortestBreathSeconds * section.Tempo * grid / 60).Ceiling() : null;
            for (var n = 0; n < section.Notes.Count; n++, at++)
            {
                var note = section.Notes[n];
                var start = section.SecondsAt(note.Onset);
                var end = section.SecondsAt(note.Onset + note.Length);
                if (at > 0)
                {
                    // Silence that is long enough by itself ends a span without a planned breath.
                    var silent = sectionStart + start - places[at - 1].End >= need.ShortestBreathSeconds;
                    places[at - 1] = places[at - 1] with { EndsSpan = silent, Breath = silent ? null : places[at - 1].Breath };
                }

                var breath = BreathAfter(score, s, n, grid, shortestNotes[note.LineIndex], need.ShortestBreathSeconds, steps);
                var shortened = breath is null ? end : section.SecondsAt(breath.Onset);
                places[at] = new Place(s, n, sectionStart + start, sectionStart + end, sectionStart + shortened, false, breath);
            }
        }

        if (places.Length > 0)
        {
            places[^1] = places[^1] with { EndsSpan = true, Breath = null };
        }

        return places;
    }

    /// <summary>The grid on which breaths of a section fall: 24ths of an akshara unless the section's own grid forbids them.</summary>
    public static int Grid(int resolution) => Joined(resolution) <= MostResolution ? Delivery.FinestBreathGrid : resolution;

    /// <summary>The resolution that holds a section and its planned breaths.</summary>
    public static int Resolution(int resolution) => Joined(resolution) <= MostResolution ? Joined(resolution) : resolution;

    /// <summary>The least common multiple of a resolution and the breaths' grid.</summary>
    private static int Joined(int resolution) => resolution * (int)new Rational(Delivery.FinestBreathGrid, resolution).Numerator;

    /// <summary>The shortest note of each line, in grid steps.</summary>
    private static int[] ShortestNotes(Section section)
    {
        var shortest = new int[section.Lines.Count];
        Array.Fill(shortest, int.MaxValue);
        foreach (var note in section.Notes)
        {
            shortest[note.LineIndex] = Math.Min(shortest[note.LineIndex], note.LengthSteps);
        }

        return shortest;
    }

    private static PlannedBreath? BreathAfter(Score score, int s, int n, int grid, int shortestOfLine, Rational shortest, long? steps)
    {
        var section = score.Sections[s];
        var note = section.Notes[n];
        var isLast = n + 1 == section.Notes.Count;
        var next = isLast ? default : section.Notes[n + 1];
        var atLineEnd = isLast || next.LineIndex != note.LineIndex;
        if (!atLineEnd && next.PitchIndex == note.PitchIndex)
        {
            return null; // a pair sung as one
        }

        var until = isLast ? section.Length : next.Onset;
        var length = steps is not { } least ? LengthBefore(section, until, note.Onset, grid, shortest)
            : least <= ((until - note.Onset) * grid).Floor() ? new Rational(least, grid)
            : (Rational?)null;
        if (length is not { } aksharas)
        {
            return null;
        }

        var onset = until - aksharas;
        var kept = onset - note.Onset;
        if (section.SecondsAt(onset) - section.SecondsAt(note.Onset) < BreathCosts.LeastSoundSeconds || kept > note.Length)
        {
            return null;
        }

        return Make(score, s, n, onset, until - onset, shortestOfLine);
    }

    /// <summary>
    /// The breath that lets go of a held last note as late as the capacity allows; none where the note would be too short, or is not held.
    /// </summary>
    /// <param name="score">The score.</param>
    /// <param name="place">The place of the note.</param>
    /// <param name="latest">The last moment of the span, in seconds from the score's beginning.</param>
    public static PlannedBreath? LetGo(Score score, Place place, Rational latest)
    {
        var section = score.Sections[place.Section];
        var note = section.Notes[place.Note];
        if (!note.IsHeld)
        {
            return null;
        }

        // Seconds from the note's onset to the end of the span; the point is found by halving, since the tempo may change on the way.
        var grid = Grid(section.Resolution);
        var start = section.SecondsAt(note.Onset);
        bool IsTooLate(long steps) => section.SecondsAt(note.Onset + new Rational(steps, grid)) - start > latest - place.Start;
        long low = 0;
        var high = (note.Length * grid).Floor() + 1;
        if (section.TempoChanges.IsEmpty)
        {
            low = Math.Clamp(((latest - place.Start) * section.Tempo * grid / 60).Floor(), 0, high - 1);
            high = low + 1;
        }

        while (high - low > 1)
        {
            var middle = low + ((high - low) / 2);
            (low, high) = IsTooLate(middle) ? (low, middle) : (middle, high);
        }

        var onset = note.Onset + new Rational(low, grid);
        if (section.SecondsAt(onset) - start < BreathCosts.LeastSoundSeconds || onset >= note.Onset + note.Length)
        {
            return null;
        }

        var until = place.Note + 1 == section.Notes.Count ? section.Length : section.Notes[place.Note + 1].Onset;
        return Make(score, place.Section, place.Note, onset, until - onset, note.LengthSteps) with { IsEarlyRelease = true };
    }

    private static PlannedBreath Make(Score score, int s, int n, Rational onset, Rational length, int shortestOfLine)
    {
        var section = score.Sections[s];
        var note = section.Notes[n];
        var isLast = n + 1 == section.Notes.Count;
        var next = isLast ? default : section.Notes[n + 1];
        var atLineEnd = isLast || next.LineIndex != note.LineIndex;
        var rest = onset + length - note.Onset - note.Length;
        var kept = onset - note.Onset;
        var leap = !isLast && Math.Abs(section.PitchOf(next).Midi - section.PitchOf(note).Midi) >= BreathCosts.Leap;
        var harm = rest * 2 >= length ? BreathCosts.FromRest
            : note.IsHeld || note.LengthSteps >= 2L * shortestOfLine ? BreathCosts.AfterHeldNote
            : leap ? BreathCosts.BeforeLeap
            : BreathCosts.Elsewhere;
        harm += kept * 2 < note.Length ? BreathCosts.HalfLost : 0;
        return new PlannedBreath(
            score.PlaceOf(s, note.LineIndex, onset),
            n,
            n - section.Lines[note.LineIndex].FirstNote + 1,
            length,
            atLineEnd,
            atLineEnd ? BreathCosts.AtLineEnd : BreathCosts.InsideLine,
            harm);
    }

    /// <summary>The least length on the grid that lasts as long as a breath and ends at a point; none where it would reach back to a note's onset.</summary>
    private static Rational? LengthBefore(Section section, Rational until, Rational onset, int grid, Rational shortest)
    {
        // Found by halving, since the tempo may change on the way.
        var end = section.SecondsAt(until);
        bool Lasts(long steps) => end - section.SecondsAt(until - new Rational(steps, grid)) >= shortest;
        long low = 0;
        var high = ((until - onset) * grid).Floor();
        if (high <= 0 || !Lasts(high))
        {
            return null;
        }

        while (high - low > 1)
        {
            var middle = low + ((high - low) / 2);
            (low, high) = Lasts(middle) ? (low, middle) : (middle, high);
        }

        return new Rational(high, grid);
    }

    /// <summary>A note in seconds from the score's beginning, and the breath that could follow it.</summary>
    /// <param name="Section">The index of the section.</param>
    /// <param name="Note">The index of the note in the section.</param>
    /// <param name="Start">Its onset.</param>
    /// <param name="End">Its end as written.</param>
    /// <param name="ShortenedEnd">Its end if a breath follows.</param>
    /// <param name="EndsSpan">Whether the silence after it, or the end of the score, ends a span anyway.</param>
    /// <param name="Breath">The breath that could follow; <see langword="null"/> where none can or need.</param>
    internal readonly record struct Place(int Section, int Note, Rational Start, Rational End, Rational ShortenedEnd, bool EndsSpan, PlannedBreath? Breath);
}
