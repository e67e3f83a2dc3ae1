namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>Only the first and the last note of each line: a growing leap when the lines grow. A line of one note stays.</summary>
    public Pattern Ends() => new EndsPattern(this);
}

internal sealed record EndsPattern(Pattern Inner) : UnaryPattern(Inner, Inner.UsualNotes, 2)
{
    public static PatternWord WordEntry { get; } = PatternWord.Unary(
        "ends", "only the first and the last note of each line", "only the first and the last note of each line are kept", p => p.Ends());

    internal override Operation Operation => new(WordEntry);

    internal override LawClass Class => LawClass.EachLine;

    internal override bool IsSameTurnedRound => true;

    internal override UnaryPattern? After(UnaryPattern inner) => inner is EndsPattern ? this : null;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var lines = Inner.Lines(frame, expander);
        var ends = new LineSheet(lines.Length, 2 * lines.Length);
        foreach (var line in lines)
        {
            var notes = line.Notes.AsSpan();
            var kept = ends.Add(Math.Min(notes.Length, 2));
            kept[0] = notes[0];
            if (notes.Length > 1)
            {
                kept[0] = notes[0] with { Rest = default };
                kept[1] = notes[^1] with { Approach = Approach.Leap };
            }
        }

        return ends.Lines;
    }
}
