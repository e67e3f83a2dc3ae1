using System.Globalization;

namespace Warmup;

internal sealed record WrittenPattern : Pattern
{
    private const string Letters = "SRGMPDN";

    public WrittenPattern(ValueList<ValueList<WrittenNote>> lines, bool byLetter)
        : base(1, 1, Total(lines), Longest(lines))
    {
        Written = lines;
        ByLetter = byLetter;
    }

    /// <summary>At least one line of at least one note; the reader ensures it.</summary>
    public new ValueList<ValueList<WrittenNote>> Written { get; }

    /// <summary>Whether the positions are letters; otherwise steps.</summary>
    public bool ByLetter { get; }

    internal override string Text => $"[{string.Join(" / ", WrittenLines)}]";

    /// <summary>The lines as text.</summary>
    internal IEnumerable<string> WrittenLines => Written.ConvertAll(line => string.Join(' ', line.ConvertAll(Show)));

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var lines = new Line[Written.Count];
        for (var l = 0; l < lines.Length; l++)
        {
            var written = Written[l];
            var notes = new LineNote[written.Count];
            for (var i = 0; i < notes.Length; i++)
            {
                var note = written[i];
                var direction = ByLetter && !GoesForward(written, i) ? Other(frame.Direction) : frame.Direction;
                var tone = ByLetter ? LetterTone(frame, ref direction, note.Position, expander) : Tone(frame, note.Position);
                notes[i] = new LineNote(tone, direction, Approach.Leap) { Length = note.Units, Rest = note.Rest };
            }

            lines[l] = new Line(ValueList.Adopt(notes));
        }

        return lines;
    }

    /// <summary>Whether the line goes forward from a note; where it ends, whether it came forward.</summary>
    private static bool GoesForward(ValueList<WrittenNote> line, int at)
    {
        for (var i = at + 1; i < line.Count; i++)
        {
            if (line[i].Position != line[at].Position)
            {
                return line[i].Position > line[at].Position;
            }
        }

        for (var i = at - 1; i >= 0; i--)
        {
            if (line[i].Position != line[at].Position)
            {
                return line[i].Position < line[at].Position;
            }
        }

        return true;
    }

    private static ScaleTone LetterTone(Frame frame, ref ScaleDirection direction, int position, Expander expander)
    {
        if (PlaceOf(frame.Scale.List(direction), position) is not { } place)
        {
            var missing = direction;
            direction = Other(direction);
            place = PlaceOf(frame.Scale.List(direction), position) ?? throw new PatternException(new Finding(
                FindingCode.PatternRefused,
                Severity.Error,
                $"{frame.Scale.Name} has no {ShowLetter(position)}, and the written line needs it",
                "write the line in numbers, counted from 1, or take a scale with the letter"));
            expander.Note(new Finding(
                FindingCode.NoteMissingFromList,
                Severity.Note,
                $"{frame.Scale.Name} has no {ShowLetter(position)} in its {(missing == ScaleDirection.Ascent ? "ascent" : "descent")}: the written line takes it from the other list",
                "nothing needs to change"));
        }

        // In a moved or mirrored span the letter names the note that stands there in the plain one.
        return frame.Scale.List(direction)[frame.Place(direction, place)] ?? throw new PatternException(new Finding(
            FindingCode.BeyondScale, Severity.Error, $"{frame.Scale.Name} does not go as far as the written line's {ShowLetter(position)}", "move the line by fewer steps"));
    }

    private static int? PlaceOf(ScaleList list, int position)
    {
        var octave = Math.DivRem(position, 7, out var letter);
        if (letter < 0)
        {
            letter += 7;
            octave--;
        }

        if (!list.HasUpperTonic)
        {
            // Such a list is never repeated: the letter is looked for where it stands, in its octave.
            for (var place = -Scale.LongestList; place <= Scale.LongestList; place++)
            {
                if (list[place] is { } tone && tone.LetterIndex == position)
                {
                    return place;
                }
            }

            return null;
        }

        for (var place = 0; place < list.Top; place++)
        {
            var tone = list[place]!.Value;
            if (tone.Degree.Letter - 1 == letter)
            {
                return place + ((octave - tone.Octave) * list.Top);
            }
        }

        return null;
    }

    private static ScaleDirection Other(ScaleDirection direction) => direction == ScaleDirection.Ascent ? ScaleDirection.Descent : ScaleDirection.Ascent;

    private string Show(WrittenNote note) =>
        (ByLetter ? ShowLetter(note.Position) : Place.Show(note.Position))
        + string.Concat(Enumerable.Repeat(" ,", note.Units - 1))
        + string.Concat(Enumerable.Repeat(" -", note.Rest));

    private static string ShowLetter(int position)
    {
        var octave = position >= 0 ? position / 7 : ((position + 1) / 7) - 1;
        return Letters[position - (7 * octave)] + new string(octave < 0 ? '_' : '\'', Math.Abs(octave));
    }

    private static long Total(ValueList<ValueList<WrittenNote>> lines) => lines.Sum(l => (long)l.Count);

    private static long Longest(ValueList<ValueList<WrittenNote>> lines) => lines.Max(l => (long)l.Count);
}
