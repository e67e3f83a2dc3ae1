namespace Warmup.Sheets;

/// <summary>
/// How lines are divided into rows: an avartana a row where it fits; a longer one at the ends of angas, and a wide anga between aksharas.
/// </summary>
internal sealed class AvartanaRows
{
    private readonly Meter _meter;
    private readonly int _most;
    private readonly bool[] _bars;
    private readonly List<int> _ends = [0];

    /// <summary>Divides the avartana of a meter.</summary>
    /// <param name="meter">The meter.</param>
    /// <param name="most">The most aksharas of a row in free rhythm, at least 1.</param>
    /// <param name="fits">Whether so many aksharas with so many ends of angas fit a row.</param>
    public AvartanaRows(Meter meter, int most, Func<int, int, bool> fits)
    {
        _meter = meter;
        _most = most;
        _bars = new bool[meter.Beats + 1];
        var bar = 0;
        foreach (var group in meter.Groups)
        {
            _bars[bar += group] = true;
        }

        while (!meter.IsFree && _ends[^1] < meter.Beats)
        {
            var from = _ends[^1];
            var (end, anga, bars) = (from + 1, 0, 0);
            for (var p = from + 1; p <= meter.Beats; p++)
            {
                bars += _bars[p] ? 1 : 0;
                if (!fits(p - from, bars))
                {
                    break;
                }

                (end, anga) = (p, _bars[p] ? p : anga);
            }

            _ends.Add(anga > 0 ? anga : end);
        }
    }

    /// <summary>Whether an avartana has one row; in free rhythm there is none to divide.</summary>
    public bool AreWhole => _meter.IsFree || _ends.Count == 2;

    /// <summary>The most aksharas of a row.</summary>
    public int Longest => _meter.IsFree ? _most : Enumerable.Range(1, _ends.Count - 1).Max(i => _ends[i] - _ends[i - 1]);

    /// <summary>Whether an anga ends at a boundary, given in aksharas from the section's beginning.</summary>
    public bool HasBar(int boundary) => _meter.Beats > 0 && boundary > 0 && _bars[((boundary - 1) % _meter.Beats) + 1];

    /// <summary>The row that an akshara of a line stands in: where it begins and ends, in aksharas from the section's beginning.</summary>
    /// <param name="at">The akshara.</param>
    /// <param name="to">Where the line ends: in free rhythm its last row does too.</param>
    public (int Start, int End) RowOf(int at, int to)
    {
        if (_meter.IsFree)
        {
            return (at, Math.Min(to, at + _most));
        }

        var avartana = at / _meter.Beats * _meter.Beats;
        var row = 0;
        while (_ends[row + 1] <= at - avartana)
        {
            row++;
        }

        return (avartana + _ends[row], avartana + _ends[row + 1]);
    }
}
