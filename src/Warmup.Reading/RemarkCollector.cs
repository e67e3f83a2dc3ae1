using System.Globalization;

namespace Warmup.Reading;

/// <summary>Gathers remarks: one for each kind in a measure, and no more than the bound.</summary>
internal sealed class RemarkCollector
{
    private readonly List<Remark> _remarks = [];
    private readonly HashSet<(RemarkKind, PlaceKind, int, string?)> _seen = [];
    private int _left;

    public void Add(RemarkKind kind, string message, PiecePlace place)
    {
        if (!_seen.Add((kind, place.Kind, place.Number, place.Part)))
        {
            return;
        }

        if (_remarks.Count >= ReadingLimits.Remarks)
        {
            _left++;
            return;
        }

        _remarks.Add(new Remark(kind, message, place));
    }

    public ValueList<Remark> ToValueList() => _left == 0
        ? _remarks.ToValueList()
        : [.. _remarks, new Remark(RemarkKind.Mended, string.Create(CultureInfo.InvariantCulture, $"{_left} further remarks were left out"), default)];
}
