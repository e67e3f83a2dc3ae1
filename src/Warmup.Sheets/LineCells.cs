namespace Warmup.Sheets;

/// <summary>
/// Lines in cells, one for each part of an akshara in which something begins: a letter where a note begins, <c>,</c> for each further unit of
/// the note, <c>v</c> where a breath begins, <c>-</c> for each further unit of silence.
/// </summary>
internal sealed class LineCells
{
    private readonly SortedDictionary<long, string> _cells = [];
    private readonly HashSet<long> _sung = [];
    private readonly int _parts;

    /// <summary>The cells of signs.</summary>
    /// <param name="signs">The signs, in order.</param>
    /// <param name="parts">The parts of an akshara that have a cell each.</param>
    /// <param name="letterOf">The letter of a tone, with its octave.</param>
    public LineCells(IEnumerable<SheetSign> signs, int parts, Func<SheetTone, string> letterOf)
    {
        _parts = parts;
        foreach (var sign in signs)
        {
            // A unit of silence has no sign where a breath or a hold stands already.
            if (sign.Kind != SheetSignKind.Silence || !_cells.ContainsKey(Slot(sign.At)))
            {
                Add(sign.At, sign.Tone is { } tone ? letterOf(tone) : sign.Text);
            }

            if (sign.Kind is SheetSignKind.Note or SheetSignKind.Hold)
            {
                _sung.Add(Slot(sign.At));
            }
        }
    }

    /// <summary>The cells in order, by the number of their part of an akshara from the section's beginning.</summary>
    public IReadOnlyDictionary<long, string> Cells => _cells;

    /// <summary>The most letters of a cell.</summary>
    public int Widest => _cells.Count == 0 ? 0 : _cells.Values.Max(c => c.Length);

    /// <summary>Whether a note begins or is held in a cell.</summary>
    public bool IsSung(long slot) => _sung.Contains(slot);

    private long Slot(Rational at) => (at * _parts).Floor();

    /// <summary>Adds a sign at its place. Signs that share a place stand side by side, so that none is lost.</summary>
    private void Add(Rational at, string sign)
    {
        var slot = Slot(at);
        _cells[slot] = _cells.TryGetValue(slot, out var before) ? before + sign : sign;
    }
}
