namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>
    /// The rule grown anew on the other list, each line read backwards, so that it starts on a new note and comes home. In a scale
    /// whose descent has more notes than its ascent there are more lines.
    /// </summary>
    /// <remarks>It undoes itself in every scale.</remarks>
    public Pattern Reversed() => new ReversedPattern(this);
}

internal sealed record ReversedPattern(Pattern Inner) : UnaryPattern(Inner, Inner.UsualNotes)
{
    public static PatternWord WordEntry { get; } = PatternWord.Combinator("reversed", p => p.Reversed());

    private protected override string Word => WordEntry.Name;

    internal override Line[] Lines(Frame frame, Expander expander) => Map(Inner.Lines(frame.Swap(), expander), Turn);

    private static Line Turn(Line line)
    {
        var source = line.Notes;
        var notes = new LineNote[source.Count];
        for (var i = 0; i < notes.Length; i++)
        {
            // A link belongs to the pair of notes, so it moves to the note that is now second.
            var link = i == 0 ? Link.Leap : source[source.Count - i].Link;
            notes[i] = source[source.Count - 1 - i] with { Link = link };
        }

        return new Line(ValueList.Adopt(notes));
    }
}
