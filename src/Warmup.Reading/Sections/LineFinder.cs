namespace Warmup.Reading;

/// <summary>Finds where the lines of a section begin.</summary>
internal static class LineFinder
{
    private static readonly Rational LongRest = 1;

    /// <summary>The indexes of the notes with which lines begin, the first note's among them, and what told.</summary>
    public static (List<int> Starts, LinesFoundBy By) Find(RawPiece piece, RawPart part, RawSection section)
    {
        if (AtMarks(part, section, MarkKind.LineNumber) is { Count: > 1 } numbered)
        {
            return (numbered, LinesFoundBy.LineNumbers);
        }

        // Where this project's own file has a single line, there is nothing to number in notation, and one marker in a MIDI file.
        var isOneMarked = part.Marks.Exists(m => m.Kind == MarkKind.LineNumber && m.Onset >= section.Start && m.Onset < section.End);
        if (piece.IsOurs && (isOneMarked || (section.Head is not null && AtMarks(part, section, MarkKind.System).Count <= 1)))
        {
            return ([0], LinesFoundBy.LineNumbers);
        }

        (MarkKind Kind, LinesFoundBy By)[] marks =
        [
            (MarkKind.Rehearsal, LinesFoundBy.RehearsalMarks), (MarkKind.System, LinesFoundBy.Systems), (MarkKind.LyricLine, LinesFoundBy.LyricLines), (MarkKind.Repeat, LinesFoundBy.Repeats),
        ];
        foreach (var (kind, by) in marks)
        {
            if (AtMarks(part, section, kind) is { Count: > 1 } found)
            {
                return (found, by);
            }
        }

        if (After(section, static n => n.HasBreath || n.HasFermata) is { Count: > 1 } breaths)
        {
            return (breaths, LinesFoundBy.Breaths);
        }

        var notes = section.Notes;
        var rests = new List<int> { 0 };
        for (var n = 1; n < notes.Length; n++)
        {
            if (notes[n].Onset - notes[n - 1].End >= LongRest)
            {
                rests.Add(n);
            }
        }

        return rests.Count > 1 ? (rests, LinesFoundBy.Rests)
            : Repeated(part, section) is { Count: > 1 } repeated ? (repeated, LinesFoundBy.Repetition)
            : ([0], LinesFoundBy.Nothing);
    }

    private static List<int> AtMarks(RawPart part, RawSection section, MarkKind kind)
    {
        var starts = new List<int> { 0 };
        var note = 0;
        foreach (var mark in part.Marks)
        {
            if (mark.Kind != kind || mark.Onset < section.Start || mark.Onset >= section.End)
            {
                continue;
            }

            while (note < section.Notes.Length && section.Notes[note].Onset < mark.Onset)
            {
                note++;
            }

            if (note < section.Notes.Length && note > starts[^1])
            {
                starts.Add(note);
            }
        }

        return starts;
    }

    private static List<int> After(RawSection section, Func<RawNote, bool> ends)
    {
        var starts = new List<int> { 0 };
        for (var n = 1; n < section.Notes.Length; n++)
        {
            if (ends(section.Notes[n - 1]))
            {
                starts.Add(n);
            }
        }

        return starts;
    }

    /// <summary>Groups of 1, 2, 4 or 8 measures with the same rhythm each; the last may be shorter or held.</summary>
    private static List<int> Repeated(RawPart part, RawSection section)
    {
        var measures = part.Measures.Where(m => m >= section.Start && m < section.End).ToList();
        foreach (var size in (int[])[1, 2, 4, 8])
        {
            if (measures.Count >= 2 * size && Groups(measures, size, section.Notes) is { } starts)
            {
                return starts;
            }
        }

        return [];
    }

    private static List<int>? Groups(List<Rational> measures, int size, RawNote[] notes)
    {
        var starts = new List<int>();
        var note = 0;
        for (var m = 0; m < measures.Count && note < notes.Length; m += size)
        {
            var (first, start) = (note, measures[m]);
            var end = m + size < measures.Count ? measures[m + size] : notes[^1].End;
            while (note < notes.Length && notes[note].Onset < end)
            {
                note++;
            }

            var isLast = note == notes.Length;
            var isSame = note > first && notes[first].Onset >= start;
            for (var n = first; isSame && !isLast && starts.Count > 0 && n < note; n++)
            {
                var other = n - first;
                isSame = notes[n].Onset - start == notes[other].Onset - measures[0] && notes[n].Length == notes[other].Length;
            }

            isSame &= isLast || starts.Count < 2 || note - first == starts[1] - starts[0];
            if (!isSame)
            {
                return null;
            }

            starts.Add(first);
        }

        return starts;
    }
}
