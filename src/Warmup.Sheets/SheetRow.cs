namespace Warmup.Sheets;

/// <summary>A row of a sheet: an avartana, or a part of one, with what stands in it of each line.</summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record SheetRow
{
    internal SheetRow(int start, int end, ValueList<SheetLine> lines)
    {
        Start = start;
        End = end;
        Lines = lines;
    }

    /// <summary>Its first akshara, from the section's beginning.</summary>
    public int Start { get; }

    /// <summary>The akshara after its last.</summary>
    public int End { get; }

    /// <summary>The lines that have a sign or an answer in it, in order; at least one.</summary>
    public ValueList<SheetLine> Lines { get; }

    /// <summary>The signs of all its lines, in order, as they are written.</summary>
    public ValueList<SheetSign> Signs => Lines.SelectMany(l => l.Written.Where(s => s.At >= Start && s.At < End)).ToValueList();

    /// <summary>The lines that begin in it, in order.</summary>
    public ValueList<SheetLine> Beginnings => Lines.Where(l => l.Line.Onset >= Start && l.Line.Onset < End).ToValueList();

    /// <summary>The row with one more line.</summary>
    internal SheetRow With(SheetLine line) => new(Start, End, [.. Lines, line]);

    /// <summary>From where to where, and what is written.</summary>
    public override string ToString() => OneLine.Of($"{Start} to {End}: {string.Join(' ', Signs.ConvertAll(s => s.Text))}");
}
