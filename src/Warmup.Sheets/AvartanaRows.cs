namespace Warmup.Sheets;

/// <summary>
/// How the lines of a sheet are divided into rows: a row for each avartana where it fits. A longer avartana is divided where angas end, and an anga
/// that is too wide between aksharas. Short bars can share a row.
/// </summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record AvartanaRows
{
    private const int MostBars = 4;

    private readonly Meter _meter;
    private readonly int _longestFree;
    private readonly ValueList<bool> _bars;
    private readonly ValueList<int> _ends;
    private readonly int _origin;

    /// <summary>Divides the avartana of a meter.</summary>
    /// <param name="meter">The meter.</param>
    /// <param name="longestFree">The most aksharas of a row in free rhythm, at least 1.</param>
    /// <param name="fits">Whether a row has room for a number of aksharas, the first argument, and of bar lines, the second. One akshara always gets a row.</param>
    /// <param name="avartanas">How many avartanas, or bars, a row has if all of them fit; 1 by default.</param>
    /// <param name="origin">
    /// An akshara from the section's beginning, 0 or more: a row of several avartanas begins with the avartana in which it lies, and the other rows follow.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">
    /// <paramref name="longestFree"/> or <paramref name="avartanas"/> is less than 1, or <paramref name="origin"/> below 0.
    /// </exception>
    public AvartanaRows(Meter meter, int longestFree, Func<int, int, bool> fits, int avartanas = 1, int origin = 0)
    {
        ArgumentNullException.ThrowIfNull(meter);
        ArgumentNullException.ThrowIfNull(fits);
        _meter = meter;
        _longestFree = Require.InRange(longestFree, 1, int.MaxValue);
        _origin = meter.IsFree ? 0 : Require.InRange(origin, 0, int.MaxValue) / meter.Beats * meter.Beats;
        Avartanas = Require.InRange(avartanas, 1, int.MaxValue);
        var bars = new bool[meter.Beats + 1];
        for (var beat = 1; beat < bars.Length; beat++)
        {
            bars[beat] = meter.AccentOf(beat) != BeatAccent.None;
        }

        _bars = [.. bars];
        if (Avartanas > 1 && (meter.IsFree || !fits(Avartanas * meter.Beats, Avartanas * bars.Count(b => b))))
        {
            Avartanas = 1;
        }

        if (Avartanas > 1)
        {
            _ends = [0, Avartanas * meter.Beats];
            return;
        }

        var ends = new List<int> { 0 };
        while (ends[^1] < meter.Beats)
        {
            ends.Add(EndOfRow(ends[^1], fits));
        }

        _ends = ends.ToValueList();
    }

    /// <summary>How many avartanas, or bars, a row has; 1 where an avartana has several rows.</summary>
    public int Avartanas { get; }

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

        var length = Avartanas * _meter.Beats;
        var first = _origin % length;
        var avartana = ((at + length - first) / length * length) - length + first;
        var row = 0;
        while (_ends[row + 1] <= at - avartana)
        {
            row++;
        }

        return (Math.Max(0, avartana + _ends[row]), avartana + _ends[row + 1]);
    }

    /// <summary>
    /// How many bars should share a row: as many as each line has, up to four, where all lines begin with a bar and are equally long; else two, and one for
    /// a tala, whose avartana has a row of its own (the project's own setting).
    /// </summary>
    /// <param name="section">The section of the lines.</param>
    /// <param name="lines">The lines, at least one.</param>
    /// <param name="fits">Whether a row has room for a number of beats.</param>
    public static int BarsInARow(Section section, ValueList<SheetLine> lines, Func<int, bool> fits)
    {
        ArgumentNullException.ThrowIfNull(section);
        ArgumentNullException.ThrowIfNull(fits);
        if (section.Meter.IsFree || MeterWords.Of(section.Meter).IsTala)
        {
            return 1;
        }

        var first = lines[0].Line;
        if (lines[^1].Line.End - first.Onset <= section.Meter.Beats)
        {
            return 1;
        }

        var bars = first.Length / section.Meter.Beats;
        var areAlike = bars.IsInteger && bars > 1 && bars <= MostBars
            && lines.All(l => l.Line.Length == first.Length && (l.Line.Onset / section.Meter.Beats).IsInteger);
        if (areAlike && fits((int)bars.Floor() * section.Meter.Beats))
        {
            return (int)bars.Floor();
        }

        return fits(2 * section.Meter.Beats) ? 2 : 1;
    }

    /// <summary>The rows of lines, in order: lines that run on share a row, and in free rhythm each line begins one.</summary>
    /// <param name="lines">The lines, in order.</param>
    public ValueList<SheetRow> RowsOf(ValueList<SheetLine> lines)
    {
        var rows = new List<SheetRow>();
        foreach (var line in lines)
        {
            var to = (int)line.Line.End.Ceiling();
            for (var at = (int)line.Line.Onset.Floor(); at < to;)
            {
                var (start, end) = RowOf(at, to);
                if (line.HasSignsBetween(start, end))
                {
                    if (rows.Count > 0 && rows[^1].Start == start && !_meter.IsFree)
                    {
                        rows[^1] = rows[^1].With(line);
                    }
                    else
                    {
                        rows.Add(new SheetRow(start, end, [line]));
                    }
                }

                at = end;
            }
        }

        return rows.ToValueList();
    }

    /// <summary>The meter, and how many rows an avartana has.</summary>
    public override string ToString() => _meter.IsFree
        ? $"{_meter}, at most {_longestFree} aksharas a row"
        : Avartanas > 1
            ? $"{_meter}, a row for {Avartanas} avartanas"
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
