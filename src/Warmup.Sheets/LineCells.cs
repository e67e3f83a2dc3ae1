namespace Warmup.Sheets;

/// <summary>
/// A line in cells, one for each part of an akshara in which something begins: a letter where a note begins, <c>,</c> for each further unit of
/// the note, <c>v</c> where a breath begins, <c>-</c> for each further unit of silence.
/// </summary>
internal sealed class LineCells
{
    private readonly SortedDictionary<long, string> _cells = [];
    private readonly int _parts;

    /// <summary>The cells of a line.</summary>
    /// <param name="line">The line.</param>
    /// <param name="parts">The parts of an akshara that have a cell each.</param>
    /// <param name="letterOf">The letter of a tone, with its octave.</param>
    public LineCells(SheetLine line, int parts, Func<SheetTone, string> letterOf)
    {
        _parts = parts;
        foreach (var sign in line.Signs)
        {
            // A unit of silence has no sign where a breath or a hold stands already.
            if (sign.Kind != SheetSignKind.Silence || !_cells.ContainsKey(Slot(sign.At)))
            {
                Add(sign.At, sign.Tone is { } tone ? letterOf(tone) : sign.Text);
            }
        }
    }

    /// <summary>The cells in order, by the number of their part of an akshara from the section's beginning.</summary>
    public IReadOnlyDictionary<long, string> Cells => _cells;

    /// <summary>The most letters of a cell.</summary>
    public int Widest => _cells.Values.Max(c => c.Length);

    private long Slot(Rational at) => (at * _parts).Floor();

    /// <summary>Adds a sign at its place. Signs that share a place stand side by side, so that none is lost.</summary>
    private void Add(Rational at, string sign)
    {
        var slot = Slot(at);
        _cells[slot] = _cells.TryGetValue(slot, out var before) ? before + sign : sign;
    }
}
