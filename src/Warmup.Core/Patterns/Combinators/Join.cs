namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>All lines as one phrase.</summary>
    public Pattern Join() => new JoinPattern(this);
}

internal sealed record JoinPattern(Pattern Inner) : UnaryPattern(Inner, Inner.UsualNotes, Inner.UsualNotes)
{
    public static PatternWord WordEntry { get; } = PatternWord.Unary(
        "join", "all lines joined into one phrase", "all lines are joined into one phrase", p => p.Join());

    internal override Operation Operation => new(WordEntry);

    internal override LawClass Class => LawClass.Other;

    internal override UnaryPattern? After(UnaryPattern inner) => inner is JoinPattern ? this : null;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var lines = Inner.Lines(frame, expander);
        if (lines.Length <= 1)
        {
            return lines;
        }

        var notes = new LineNote[Line.CountNotes(lines)];
        var at = 0;
        foreach (var line in lines)
        {
            line.Notes.AsSpan().CopyTo(notes.AsSpan(at));
            notes[at] = notes[at] with { Approach = Approach.Leap };
            at += line.Notes.Count;
        }

        return [new Line(ValueList.Adopt(notes))];
    }
}
