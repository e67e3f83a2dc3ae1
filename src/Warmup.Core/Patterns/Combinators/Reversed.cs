namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>
    /// The rule built on the other list, each line sung backwards, so that it starts on a new note and comes home. In a scale whose
    /// descent has more notes than its ascent there are more lines.
    /// </summary>
    /// <remarks>It undoes itself in every scale.</remarks>
    public Pattern Reversed() => new ReversedPattern(this);
}

internal sealed record ReversedPattern(Pattern Inner) : UnaryPattern(Inner)
{
    public static PatternWord WordEntry { get; } = PatternWord.Unary(
        "reversed",
        "the rule built on the other list, each line sung backwards",
        "the rule is built on the other list and every line is sung backwards",
        p => p.Reversed());

    internal override Operation Operation => new(WordEntry);

    internal override LawClass Class => LawClass.Turn;

    internal override bool UndoesItself => true;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var lines = Inner.Lines(frame.Swap(), expander);
        var turned = new LineSheet(lines.Length, (int)Line.CountNotes(lines));
        foreach (ref readonly var line in lines.AsSpan())
        {
            Turn(line.AsSpan(), turned.Add(line.Count));
        }

        return turned.Lines;
    }

    private static LineNote Moved(LineNote note, Approach approach, LineNote silence) => note with { Approach = approach, Rest = silence.Rest };

    private static void Turn(ReadOnlySpan<LineNote> source, Span<LineNote> notes)
    {
        for (var i = 0; i < notes.Length; i++)
        {
            // An approach and a silence belong to a pair of notes, so they move to the other one; the silence at the line's end stays there.
            var at = source.Length - 1 - i;
            ref readonly var note = ref source[at];
            ref readonly var silence = ref source[at == 0 ? source.Length - 1 : at - 1];
            var approach = i == 0 ? Approach.Leap : source[at + 1].Approach;
            notes[i] = note.HasRest || silence.HasRest ? Moved(note, approach, silence) : note.ReachedBy(approach);
        }
    }
}
