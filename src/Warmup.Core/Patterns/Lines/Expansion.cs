namespace Warmup;

/// <summary>The lines of a pattern in a scale, and remarks about them.</summary>
/// <remarks>Immutable, compared by value, safe to share between threads.</remarks>
public sealed record Expansion
{
    /// <summary>Puts lines of your own in place of a pattern's, for <c>Drill.ToScore</c>.</summary>
    /// <param name="lines">The lines.</param>
    /// <param name="findings">Remarks about them; none by default.</param>
    /// <exception cref="ArgumentException">There are more than 100,000 notes.</exception>
    public Expansion(ValueList<Line> lines, ValueList<Finding> findings = default)
    {
        foreach (var finding in findings)
        {
            ArgumentNullException.ThrowIfNull(finding, nameof(findings));
        }

        (Lines, Findings) = (lines, findings);
        if (Line.CountNotes(lines.AsSpan()) is var notes and > PatternLimits.Notes)
        {
            throw new ArgumentException(PatternLimits.TooMany("notes", PatternLimits.Notes, notes), nameof(lines));
        }
    }

    private Expansion(Line[] lines, ValueList<Finding> findings) => (Lines, Findings) = (ValueList.Adopt(lines), findings);

    /// <summary>The lines; none where the pattern is empty.</summary>
    public ValueList<Line> Lines { get; }

    /// <summary>Remarks, such as a turning note that the descent lacks.</summary>
    public ValueList<Finding> Findings { get; }

    /// <summary>The number of notes in all lines.</summary>
    public int NoteCount => (int)Line.CountNotes(Lines.AsSpan());

    /// <summary>What a pattern has made: nothing needs to be checked again.</summary>
    internal static Expansion Of(Line[] lines, ValueList<Finding> findings) => new(lines, findings);

    /// <summary>The lines' letters, joined by <c> / </c>.</summary>
    public string ToLetters() => string.Join(" / ", Lines.ConvertAll(l => l.ToLetters()));

    /// <summary>The lines' tones, joined by <c> / </c>.</summary>
    public string ToTones() => string.Join(" / ", Lines.ConvertAll(l => l.ToTones()));

    /// <summary>The lines' tones, joined by <c> / </c>; at most 200 characters.</summary>
    public override string ToString() => OneLine.Of(ToTones());
}
