namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>Each line there and back: sung, then sung backwards as <see cref="Backwards"/> does, its last note once.</summary>
    /// <exception cref="ArgumentException">The result would have too many notes.</exception>
    public Pattern ThereAndBack() => new ThereAndBackPattern(this);
}

internal sealed record ThereAndBackPattern(Pattern Inner) : UnaryPattern(Inner, 2 * Inner.UsualNotes, 2 * Inner.UsualLongest)
{
    public static PatternWord WordEntry { get; } = PatternWord.Unary(
        "there-and-back", "each line, then back again, its last note sung once", "every line is sung there and back", p => p.ThereAndBack());

    internal override Operation Operation => new(WordEntry);

    internal override LawClass Class => LawClass.EachLine;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var lines = Map(Inner.Lines(frame, expander), l => ThereAndBackLine(l, frame.Scale, expander));
        expander.Bound(lines);
        return lines;
    }

    private static Line ThereAndBackLine(Line line, Scale scale, Expander expander)
    {
        var there = line.Notes;
        var back = TurnBack.Refill(line, scale, expander).Notes;
        var notes = new LineNote[there.Count + back.Count - 1];
        there.AsSpan().CopyTo(notes);
        back.AsSpan().CopyTo(notes.AsSpan(there.Count - 1));

        // The turning note has the form of the run that leaves it and is still reached by the run that arrives.
        notes[there.Count - 1] = back[0] with { Approach = there[^1].Approach };
        return new Line(ValueList.Adopt(notes));
    }
}
