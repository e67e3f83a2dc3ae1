namespace Warmup.Sheets;

/// <summary>A line of a sheet: the signs from its first note to its last breath or silence.</summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record SheetLine
{
    private SheetLine(int number, ScoreLine line, ValueList<SheetSign> signs, ValueList<SheetSign> written)
    {
        Number = number;
        Line = line;
        Signs = signs;
        Written = written;
    }

    /// <summary>The line's number in its section, from 1.</summary>
    public int Number { get; }

    /// <summary>The line of the score: when it begins and ends, its speed, its answer.</summary>
    public ScoreLine Line { get; }

    /// <summary>
    /// The signs, note by note: the note, a hold for each further unit it sounds, a breath, and silence for each unit until the next note. Units of
    /// silence are counted from the note on, also where a breath or an answer fills them.
    /// </summary>
    public ValueList<SheetSign> Signs { get; }

    /// <summary>The signs as they are written: without units of silence that a breath fills.</summary>
    public ValueList<SheetSign> Written { get; }

    /// <summary>Whether a sign or an answer stands between two aksharas.</summary>
    internal bool HasSignsBetween(int start, int end)
    {
        foreach (ref readonly var sign in Written.AsSpan())
        {
            if (sign.At >= start && sign.At < end)
            {
                return true;
            }
        }

        return Line.HasAnswer && Rational.Max(Line.AnswerOnset, start) < Rational.Min(Line.End, end);
    }

    /// <summary>A line of a section.</summary>
    /// <param name="section">The section.</param>
    /// <param name="index">The index of the line.</param>
    /// <param name="tones">The tone of each pitch.</param>
    /// <param name="signs">A list to gather the signs in; whatever it holds is lost.</param>
    internal static SheetLine Of(Section section, int index, SheetTone[] tones, List<SheetSign> signs)
    {
        signs.Clear();
        var line = section.Lines[index];
        var notes = section.Notes.AsSpan().Slice(line.FirstNote, line.NoteCount);
        var unit = line.Speed.Unit;
        for (var at = line.Onset; at < notes[0].Onset; at += unit)
        {
            signs.Add(new SheetSign(at, SheetSignKind.Silence, line.FirstNote, null));
        }

        for (var i = 0; i < notes.Length; i++)
        {
            ref readonly var note = ref notes[i];
            var number = line.FirstNote + i;
            var (onset, end) = (note.Onset, note.End);
            var next = i + 1 < notes.Length ? notes[i + 1].Onset : line.End;
            signs.Add(new SheetSign(onset, SheetSignKind.Note, number, tones[note.PitchIndex]));
            for (var at = onset + unit; at < end; at += unit)
            {
                signs.Add(new SheetSign(at, SheetSignKind.Hold, number, null));
            }

            if (section.BreathAfter(number) is { } breath)
            {
                signs.Add(new SheetSign(breath.Onset, SheetSignKind.Breath, number, null));
            }

            for (var at = onset + (unit * ((end - onset) / unit).Ceiling()); at < next; at += unit)
            {
                signs.Add(new SheetSign(at, SheetSignKind.Silence, number, null));
            }
        }

        var all = signs.ToValueList();
        signs.RemoveAll(s => s.Kind == SheetSignKind.Silence && section.BreathAfter(s.Note) is { } breath && s.At >= breath.Onset && s.At < breath.Onset + breath.Length);
        return new SheetLine(index + 1, line, all, signs.Count == all.Count ? all : signs.ToValueList());
    }

    /// <summary>The number and what is written.</summary>
    public override string ToString() => OneLine.Of($"{Number}: {string.Join(' ', Signs.ConvertAll(s => s.Text))}");
}
