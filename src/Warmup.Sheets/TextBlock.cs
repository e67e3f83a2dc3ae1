using System.Globalization;

namespace Warmup.Sheets;

/// <summary>
/// A block in plain text, in columns under the aksharas: a row for each avartana where it fits, <c>|</c> after an anga, <c>||</c> after an avartana,
/// and over the letters a row of lines that show the speed, one for the second, two for the third (common practice).
/// </summary>
internal sealed class TextBlock
{
    public const string AngaEnd = "|";
    public const string AvartanaEnd = "||";

    // What fits on a page of fixed-width type.
    private const int WidestRow = 108;
    private const int BarWidth = 2;

    private static readonly char[] SpeedLines = [' ', '-', '=', '\u2261'];

    private readonly Meter _meter;
    private readonly SheetBlock _block;
    private readonly List<LineCells> _cells = [];
    private readonly int _parts;
    private readonly int _cell;
    private readonly AvartanaRows _rows;

    public TextBlock(Meter meter, SheetBlock block)
    {
        _meter = meter;
        _block = block;
        _parts = block.Parts;
        foreach (var line in block.Lines)
        {
            _cells.Add(new LineCells(line, _parts, t => t.ToString()));
        }

        _cell = _cells.Max(l => l.Widest) + 1;
        _rows = new AvartanaRows(meter, Math.Max(1, WidestRow / Akshara), (aksharas, bars) => (aksharas * Akshara) + (bars * BarWidth) <= WidestRow);
    }

    /// <summary>Whether each avartana has one row; true in free rhythm.</summary>
    public bool HasWholeRows => _rows.HasWholeAvartanas;

    /// <summary>The numbers of the aksharas over the columns; empty in free rhythm and where an avartana has several rows.</summary>
    public string Header()
    {
        if (_meter.IsFree || !HasWholeRows)
        {
            return string.Empty;
        }

        var row = NewRow(0, Beats);
        for (var a = 0; a < Beats; a++)
        {
            Put(row, Column(0, a), (a + 1).ToString(CultureInfo.InvariantCulture));
            Bar(row, 0, a + 1);
        }

        return new string(row).TrimEnd();
    }

    /// <summary>
    /// The rows of a line: the letters, above them the lines that show its speed, which are empty in the first speed, and the akshara with which the
    /// row begins.
    /// </summary>
    /// <param name="index">The index of the line in the block.</param>
    public IEnumerable<(string SpeedLines, string Letters, int Akshara)> Rows(int index)
    {
        var line = _block.Lines[index].Line;
        var cells = _cells[index].Cells;
        var (from, to) = ((int)line.Onset.Floor(), (int)line.End.Ceiling());
        for (var at = from; at < to;)
        {
            var (start, end) = _rows.RowOf(at, to);
            var letters = NewRow(start, end);
            var speed = NewRow(start, end);
            foreach (var akshara in cells.Where(c => c.Key >= (long)start * _parts && c.Key < (long)end * _parts).GroupBy(c => (int)(c.Key / _parts)))
            {
                var (left, right) = (int.MaxValue, 0);
                foreach (var (slot, text) in akshara)
                {
                    var column = Column(start, akshara.Key) + ((int)(slot % _parts) * _cell);
                    Put(letters, column, text);
                    (left, right) = (Math.Min(left, column), column + text.Length);
                }

                speed.AsSpan(left, right - left).Fill(SpeedLines[line.Speed.Kalam - 1]);
            }

            for (var p = Math.Max(start, from) + 1; p <= Math.Min(end, to) && p <= line.End; p++)
            {
                Bar(letters, start, p);
            }

            // A line that ends just after a row's beginning has nothing to show there.
            if (letters.AsSpan().ContainsAnyExcept(' '))
            {
                yield return (new string(speed).TrimEnd(), new string(letters).TrimEnd(), _meter.IsFree ? start - from : start % Beats);
            }

            at = end;
        }
    }

    private int Beats => _meter.Beats;

    private int Akshara => _parts * _cell;

    /// <summary>The columns in front of an akshara in a row: the aksharas and the bars between.</summary>
    private int Column(int from, int akshara)
    {
        var columns = (akshara - from) * Akshara;
        for (var p = from + 1; p <= akshara; p++)
        {
            columns += _rows.HasBar(p) ? BarWidth : 0;
        }

        return columns;
    }

    private void Bar(char[] row, int from, int boundary)
    {
        if (_rows.HasBar(boundary))
        {
            Put(row, Column(from, boundary) - BarWidth, boundary % Beats == 0 ? AvartanaEnd : AngaEnd);
        }
    }

    private char[] NewRow(int from, int to)
    {
        var row = new char[Column(from, to) + 1];
        row.AsSpan().Fill(' ');
        return row;
    }

    private static void Put(char[] row, int column, string text) => text.CopyTo(row.AsSpan(column));
}
