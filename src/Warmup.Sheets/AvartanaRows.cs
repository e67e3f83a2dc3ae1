namespace Warmup.Sheets;

/// <summary>
/// How the lines of a sheet are divided into rows: a row for each avartana where it fits. A longer avartana is divided where angas end, and an anga
/// that is too wide between aksharas.
/// </summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record AvartanaRows
{
    private readonly Meter _meter;
    private readonly int _longestFree;
    private readonly ValueList<bool> _bars;
    private readonly ValueList<int> _ends;

    /// <summary>Divides the avartana of a meter.</summary>
    /// <param name="meter">The meter.</param>
    /// <param name="longestFree">The most aksharas of a row in free rhythm, at least 1.</param>
    /// <param name="fits">Whether a row has room for a number of aksharas, the first argument, and of bar lines, the second. One akshara always gets a row.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="longestFree"/> is less than 1.</exception>
    public AvartanaRows(Meter meter, int longestFree, Func<int, int, bool> fits)
    {
        ArgumentNullException.ThrowIfNull(meter);
        ArgumentNullException.ThrowIfNull(fits);
        _meter = meter;
        _longestFree = Require.InRange(longestFree, 1, int.MaxValue);
        var bars = new bool[meter.Beats + 1];
        for (var beat = 1; beat < bars.Length; beat++)
        {
            bars[beat] = meter.AccentOf(beat) != BeatAccent.None;
        }

        _bars = [.. bars];
        var ends = new List<int> { 0 };
        while (ends[^1] < meter.Beats)
        {
            ends.Add(EndOfRow(ends[^1], fits));
        }

        _ends = ends.ToValueList();
    }

    /// <summary>Whether each avartana has one row; true in free rhythm, which has no avartanas to divide.</summary>
    public bool HasWholeAvartanas => _meter.IsFree || _ends.Count == 2;

    /// <summary>The most aksharas of a row.</summary>
    public int Longest
    {
        get
        {
            var longest = _meter.IsFree ? _longestFree : 0;
            for (var i = 1; i < _ends.Count; i++)
            {
                longest = Math.Max(longest, _ends[i] - _ends[i - 1]);
            }

            return longest;
        }
    }

    /// <summary>Whether a bar line stands at a boundary between aksharas: an anga or an avartana ends there.</summary>
    /// <param name="boundary">The boundary in aksharas from the section's beginning.</param>
    public bool HasBar(int boundary) => !_meter.IsFree && boundary > 0 && _bars[((boundary - 1) % _meter.Beats) + 1];

    /// <summary>The row in which an akshara of a line stands: where it begins and ends, in aksharas from the section's beginning.</summary>
    /// <param name="at">The akshara, 0 or more.</param>
    /// <param name="to">Where the line ends; in free rhythm its last row ends there too.</param>
    public (int Start, int End) RowOf(int at, int to)
    {
        if (_meter.IsFree)
        {
            return (at, Math.Min(to, at + _longestFree));
        }

        var avartana = at / _meter.Beats * _meter.Beats;
        var row = 0;
        while (_ends[row + 1] <= at - avartana)
        {
            row++;
        }

        return (avartana + _ends[row], avartana + _ends[row + 1]);
    }

    /// <summary>The meter, and how many rows an avartana has.</summary>
    public override string ToString() => _meter.IsFree
        ? $"{_meter}, at most {_longestFree} aksharas a row"
        : $"{_meter}, {(HasWholeAvartanas ? "a row" : $"{_ends.Count - 1} rows")} for an avartana";

    /// <summary>The end of the row that begins at an akshara of the avartana: the last end of an anga that fits, else the last akshara.</summary>
    private int EndOfRow(int start, Func<int, int, bool> fits)
    {
        var (end, anga, bars) = (start + 1, 0, 0);
        for (var p = start + 1; p <= _meter.Beats; p++)
        {
            bars += _bars[p] ? 1 : 0;
            if (!fits(p - start, bars))
            {
                break;
            }

            (end, anga) = (p, _bars[p] ? p : anga);
        }

        return anga > 0 ? anga : end;
    }
}
