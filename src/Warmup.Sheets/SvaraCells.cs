namespace Warmup.Sheets;

/// <summary>
/// A line in letters on the parts of its aksharas: one where a note begins, <c>,</c> for each further unit it is held, <c>v</c>
/// where a breath begins, <c>-</c> for each further unit of silence (common practice, but for the breath sign, the project's own).
/// </summary>
internal sealed class SvaraCells
{
    public const string Hold = ",";
    public const string Breath = "v";
    public const string Silence = "-";

    private readonly SortedDictionary<long, string> _cells = [];
    private readonly int _parts;

    /// <summary>The cells of a line.</summary>
    /// <param name="section">The section.</param>
    /// <param name="line">The line.</param>
    /// <param name="breaths">The breaths by the note before them.</param>
    /// <param name="parts">The parts of an akshara that have a cell each.</param>
    /// <param name="letterOf">The letter of a tone, with its octave.</param>
    public SvaraCells(Section section, ScoreLine line, Dictionary<int, Breath> breaths, int parts, Func<ScaleTone, string> letterOf)
    {
        _parts = parts;
        foreach (var sign in SvaraSign.Of(section, line, breaths))
        {
            // A unit of silence that a breath or a hold has a sign for already has none.
            if (sign.Kind != SignKind.Silence || !_cells.ContainsKey(Slot(sign.At)))
            {
                Add(sign.At, sign.Kind switch
                {
                    SignKind.Note => letterOf(section.PitchOf(section.Notes[sign.Note]).Tone),
                    SignKind.Hold => Hold,
                    SignKind.Breath => Breath,
                    _ => Silence,
                });
            }
        }
    }

    /// <summary>The cells in order, each by the number of its part from the section's beginning.</summary>
    public IReadOnlyDictionary<long, string> Cells => _cells;

    /// <summary>The most letters of a cell.</summary>
    public int Widest => _cells.Values.Max(c => c.Length);

    private long Slot(Rational at) => (at * _parts).Floor();

    /// <summary>Puts a sign at its place; signs that share a place stand side by side, so that none is lost.</summary>
    private void Add(Rational at, string sign)
    {
        var slot = Slot(at);
        _cells[slot] = _cells.TryGetValue(slot, out var before) ? before + sign : sign;
    }
}
