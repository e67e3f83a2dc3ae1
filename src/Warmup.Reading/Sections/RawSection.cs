namespace Warmup.Reading;

/// <summary>A stretch of a part that has one scale, tonic and meter.</summary>
/// <param name="Number">Its number, from 1.</param>
/// <param name="Start">Where it begins, in quarter notes.</param>
/// <param name="End">Where it ends.</param>
/// <param name="Notes">Its notes, at least one.</param>
/// <param name="Head">What its head says, if anything.</param>
/// <param name="Title">Its title, if it has one.</param>
internal sealed record RawSection(int Number, Rational Start, Rational End, RawNote[] Notes, HeadWords? Head, string Title)
{
    /// <summary>The sections of a part: where this project's own files begin them, otherwise one.</summary>
    public static List<RawSection> Of(RawPiece piece, RawPart part)
    {
        var starts = new List<(Rational Onset, HeadWords? Head, string Title)>();
        HeadWords? head = null;
        var isDouble = false;
        var marks = part.Marks;
        for (var m = 0; m < marks.Count; m++)
        {
            var mark = marks[m];
            if (mark.Kind == MarkKind.Section)
            {
                starts.Add((mark.Onset, null, string.Empty));
            }
            else if (mark.Kind == MarkKind.DoubleBar)
            {
                isDouble = true;
                if (piece.IsOurs && StartsWithoutHead(piece, marks, m) && (starts.Count == 0 || starts[^1].Onset < mark.Onset))
                {
                    starts.Add((mark.Onset, head, TitleAt(marks, m, mark.Onset)));
                }
            }
            else if (mark.Kind == MarkKind.Words && HeadWords.Of(mark.Text) is { } read)
            {
                head = read;
                if (starts.Count > 0 && starts[^1].Onset == mark.Onset)
                {
                    starts[^1] = (mark.Onset, head, starts[^1].Title);
                }
                else if (starts.Count == 0 || isDouble)
                {
                    starts.Add((mark.Onset, head, TitleAt(marks, m, mark.Onset)));
                }
            }
        }

        if (starts.Count == 0 || starts[0].Onset.Sign > 0)
        {
            starts.Insert(0, (Rational.Zero, null, string.Empty));
        }

        return Cut(part, starts);
    }

    private static List<RawSection> Cut(RawPart part, List<(Rational Onset, HeadWords? Head, string Title)> starts)
    {
        var sections = new List<RawSection>();
        var note = 0;
        for (var s = 0; s < starts.Count; s++)
        {
            var end = s + 1 < starts.Count ? starts[s + 1].Onset : Rational.Max(part.End, starts[s].Onset);
            var first = note;
            while (note < part.Notes.Count && (s + 1 == starts.Count || part.Notes[note].Onset < end))
            {
                note++;
            }

            if (note > first)
            {
                sections.Add(new RawSection(s + 1, starts[s].Onset, end, [.. part.Notes[first..note]], starts[s].Head, starts[s].Title));
            }
        }

        return sections;
    }

    /// <summary>Whether a section begins at a double bar without words of its own: a tempo stands there, and no line number at its first note.</summary>
    private static bool StartsWithoutHead(RawPiece piece, List<RawMark> marks, int bar)
    {
        for (var m = bar + 1; m < marks.Count && marks[m].Onset == marks[bar].Onset; m++)
        {
            if (marks[m].Kind == MarkKind.LineNumber)
            {
                return false;
            }
        }

        return piece.HasTempoAt(marks[bar].Onset);
    }

    private static string TitleAt(List<RawMark> marks, int from, Rational onset)
    {
        for (var m = from; m < marks.Count && marks[m].Onset == onset; m++)
        {
            if (marks[m].Kind == MarkKind.Words && marks[m].Text.Length > 0 && marks[m].Text != "count-in" && HeadWords.Of(marks[m].Text) is null)
            {
                return marks[m].Text;
            }
        }

        return string.Empty;
    }
}
