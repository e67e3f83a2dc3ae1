namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>Two patterns note by note within each line: the first note of this one's line, the first of the other's, ...</summary>
    /// <param name="other">The other pattern. Notes and lines that are left over when one ends follow.</param>
    /// <exception cref="ArgumentException">The result is too deep, has too many parts or too many notes.</exception>
    public Pattern Weave(Pattern other) => new WeavePattern(this, other);
}

internal sealed record WeavePattern(Pattern First, Pattern Second) : BinaryPattern(First, Second, First.UsualLongest + Second.UsualLongest)
{
    public static PatternWord WordEntry { get; } = PatternWord.Binary("weave", "note by note with the lines of another pattern", (p, q) => p.Weave(q))
        with { Said = "the notes take turns" };

    internal override PatternWord Connective => WordEntry;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var first = First.Lines(frame, expander);
        var second = Second.Lines(frame, expander);
        expander.Bound(first.Concat(second));
        var lines = new Line[Math.Max(first.Length, second.Length)];
        for (var i = 0; i < lines.Length; i++)
        {
            lines[i] = i >= first.Length ? second[i] : i >= second.Length ? first[i] : Weave(first[i], second[i]);
        }

        return lines;
    }

    private static Line Weave(Line first, Line second)
    {
        var notes = new List<LineNote>(first.Notes.Count + second.Notes.Count);
        for (var i = 0; i < Math.Max(first.Notes.Count, second.Notes.Count); i++)
        {
            // Where two notes are woven nothing lies between them; what is left over of a run stays a run.
            var woven = i <= Math.Min(first.Notes.Count, second.Notes.Count);
            if (i < first.Notes.Count)
            {
                notes.Add(woven ? first.Notes[i] with { Approach = Approach.Leap } : first.Notes[i]);
            }

            if (i < second.Notes.Count)
            {
                notes.Add(woven ? second.Notes[i] with { Approach = Approach.Leap } : second.Notes[i]);
            }
        }

        return new Line(notes.ToValueList());
    }
}
