namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>Only the first and the last note of each line: a growing leap when the lines grow. A line of one note stays.</summary>
    public Pattern Ends() => new EndsPattern(this);
}

internal sealed record EndsPattern(Pattern Inner) : UnaryPattern(Inner, Inner.UsualNotes)
{
    public static PatternWord WordEntry { get; } = PatternWord.Combinator("ends", p => p.Ends());

    private protected override string Word => WordEntry.Name;

    internal override Line[] Lines(Frame frame, Expander expander) => Map(Inner.Lines(frame, expander), static line => line.Notes.Count <= 2 && AllLeaps(line)
        ? line
        : line.Notes.Count == 1 ? line : new Line([line.Notes[0], line.Notes[^1] with { Link = Link.Leap }]));

    private static bool AllLeaps(Line line)
    {
        foreach (var note in line.Notes)
        {
            if (note.Link != Link.Leap)
            {
                return false;
            }
        }

        return true;
    }
}
