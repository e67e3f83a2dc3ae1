namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>Two patterns note by note within each line: the first note of this one's line, the first of the other's, and so on.</summary>
    /// <param name="other">The other pattern. The notes and lines that are left when one of them ends follow.</param>
    /// <exception cref="ArgumentException">The result is too deep, or has too many parts or notes.</exception>
    public Pattern Weave(Pattern other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return new WeavePattern(this, other);
    }
}

internal sealed record WeavePattern(Pattern First, Pattern Second) : BinaryPattern(First, Second, First.UsualLongest + Second.UsualLongest)
{
    public static PatternWord WordEntry { get; } = PatternWord.Binary(
        "weave",
        "note by note with the lines of another pattern, a note of each in turn",
        "within each line the notes of two patterns take turns",
        (p, q) => p.Weave(q));

    internal override PatternWord Connective => WordEntry;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var first = First.Lines(frame, expander);
        var second = Second.Lines(frame, expander);
        expander.Bound(Line.CountNotes(first) + Line.CountNotes(second));
        var lines = new Line[Math.Max(first.Length, second.Length)];
        for (var i = 0; i < lines.Length; i++)
        {
            lines[i] = i >= first.Length ? second[i] : i >= second.Length ? first[i] : Weave(first[i], second[i]);
        }

        return lines;
    }

    private static Line Weave(Line first, Line second)
    {
        var one = first.Notes.AsSpan();
        var other = second.Notes.AsSpan();
        var notes = new LineNote[one.Length + other.Length];
        var at = 0;
        for (var i = 0; at < notes.Length; i++)
        {
            // Where two notes are woven nothing lies between them; what is left of a run stays a run.
            var woven = i <= Math.Min(one.Length, other.Length);
            if (i < one.Length)
            {
                notes[at++] = woven ? one[i] with { Approach = Approach.Leap } : one[i];
            }

            if (i < other.Length)
            {
                notes[at++] = woven ? other[i] with { Approach = Approach.Leap } : other[i];
            }
        }

        return new Line(ValueList.Adopt(notes));
    }
}
