using System.Diagnostics.CodeAnalysis;
using Warmup.Sheets;

namespace Warmup.Drawing;

/// <summary>
/// Blocks of a section are the same if a reader sees no difference: the same signs at the same distances and places in the avartana, in the same speed
/// and tempo.
/// </summary>
internal sealed class SameSigns(Section section) : IEqualityComparer<SheetBlock>
{
    public bool AreSame(SheetLine a, SheetLine b) =>
        a.Line.Speed == b.Line.Speed && a.Line.HasAnswer == b.Line.HasAnswer && a.Signs.Count == b.Signs.Count
        && Place(a) == Place(b) && section.TempoAt(a.Line.Onset) == section.TempoAt(b.Line.Onset)
        && a.Signs.Zip(b.Signs).All(p => p.First.Kind == p.Second.Kind && p.First.Tone == p.Second.Tone && p.First.At - a.Line.Onset == p.Second.At - b.Line.Onset);

    public bool Equals(SheetBlock? x, SheetBlock? y) => ReferenceEquals(x, y)
        || (x is not null && y is not null && x.Lines.Count == y.Lines.Count && x.Lines.Zip(y.Lines).All(p => AreSame(p.First, p.Second)));

    public int GetHashCode([DisallowNull] SheetBlock block) => HashCode.Combine(block.Lines.Count, block.Lines[0].Signs.Count, block.Lines[^1].Signs.Count);

    private Rational Place(SheetLine line) => section.Meter.IsFree
        ? Rational.Zero
        : line.Line.Onset - (section.Meter.Beats * (line.Line.Onset / section.Meter.Beats).Floor());
}
