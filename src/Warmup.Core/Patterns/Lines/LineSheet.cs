namespace Warmup;

/// <summary>Lines whose notes follow each other in one array.</summary>
/// <param name="lines">The number of the lines.</param>
/// <param name="notes">The number of all their notes.</param>
internal ref struct LineSheet(int lines, int notes)
{
    private readonly LineNote[] _notes = new LineNote[notes];
    private int _used;
    private int _line;

    /// <summary>The lines, once all are added.</summary>
    public Line[] Lines { get; } = new Line[lines];

    /// <summary>Adds a line.</summary>
    /// <param name="count">The number of its notes.</param>
    /// <returns>Where to put them.</returns>
    public Span<LineNote> Add(int count)
    {
        Lines[_line++] = new Line(ValueList.Part(_notes, _used, count));
        _used += count;
        return _notes.AsSpan(_used - count, count);
    }
}
