namespace Warmup;

/// <summary>The lines of a pattern in a scale, and what is worth saying about them.</summary>
/// <param name="Lines">The lines, at least one unless the pattern is empty.</param>
/// <param name="Findings">Remarks, such as a turning note that the descent lacks.</param>
public sealed record Expansion(ValueList<Line> Lines, ValueList<Finding> Findings)
{
    /// <summary>The number of notes in all lines.</summary>
    public int NoteCount => (int)Line.CountNotes(Lines.AsSpan());

    /// <summary>The lines' letters, joined by <c> / </c>.</summary>
    public string ToLetters() => string.Join(" / ", Lines.ConvertAll(l => l.ToLetters()));

    /// <summary>The lines' tones, joined by <c> / </c>.</summary>
    public override string ToString() => string.Join(" / ", Lines);
}
