using System.Globalization;

namespace Warmup.Sheets;

/// <summary>
/// A block in plain text, in columns under the aksharas: a row for each avartana where it fits, <c>|</c> after an anga, <c>||</c> after an avartana,
/// and over the letters a row of lines that show the speed, one for the second, two for the third (common practice). Lines that run on share the row
/// of their avartana; the number of a line that begins inside a row stands under its first letter.
/// </summary>
internal sealed class TextBlock
{
    public const string AngaEnd = "|";
    public const string AvartanaEnd = "||";

    // What fits on a page of fixed-width type.
    private const int WidestRow = 108;
    private const int BarWidth = 2;
    private const int DoubleBarWidth = 3;
    private const int LongestNumber = 8;

    private static readonly char[] SpeedLines = [' ', '-', '=', '\u2261'];

    private readonly Section _section;
    private readonly SheetBlock _block;
    private readonly ValueList<SheetRow> _all;
    private readonly List<LineCells> _cells;
    private readonly int _parts;
    private readonly int _cell;
    private readonly AvartanaRows _rows;

    public TextBlock(Section section, SheetBlock block)
    {
        (_section, _block) = (section, block);
        _parts = block.Parts;
        _cell = block.Lines.Max(line => new LineCells(line.Written, _parts, t => t.ToString()).Widest) + 1;
        bool Fits(int aksharas, int bars) => (aksharas * Akshara) + (bars * DoubleBarWidth) <= WidestRow;
        var bars = AvartanaRows.BarsInARow(section, block.Lines, aksharas => Fits(aksharas, (aksharas / Beats) + 1));
        _rows = new AvartanaRows(Meter, Math.Max(1, WidestRow / Akshara), Fits, bars, (int)block.Lines[0].Line.Onset.Floor());
        _all = _rows.RowsOf(block.Lines);
        _cells = [.. _all.Select(row => new LineCells(row.Signs, _parts, t => t.ToString()))];
    }

    /// <summary>Whether each avartana has one row; true in free rhythm.</summary>
    public bool HasWholeRows => _rows.HasWholeAvartanas;

    /// <summary>The number of rows.</summary>
    public int Count => _all.Count;

    private Meter Meter => _section.Meter;

    private int Beats => Meter.Beats;

    private int Akshara => _parts * _cell;

    /// <summary>The numbers of the aksharas over the columns; empty in free rhythm and where an avartana has several rows.</summary>
    public string Header()
    {
        if (Meter.IsFree || !HasWholeRows)
        {
            return string.Empty;
        }

        var row = NewRow(0, Beats * _rows.Avartanas);
        for (var a = 0; a < Beats * _rows.Avartanas; a++)
        {
            Put(row, Column(0, a), ((a % Beats) + 1).ToString(CultureInfo.InvariantCulture));
            Bar(row, 0, a + 1);
        }

        return new string(row).TrimEnd();
    }

    /// <summary>The number of the line that begins with a row, or <see langword="null"/>, and the akshara with which the row begins, from 1.</summary>
    public (int? Line, int Akshara) Label(int index)
    {
        var row = _all[index];
        var line = row.Beginnings.FirstOrDefault(l => l.Line.Onset == row.Start || Meter.IsFree);
        return (line?.Number, Meter.IsFree ? 1 : (row.Start % Beats) + 1);
    }

    /// <summary>A row: the lines over its letters that show the speed, empty in the first speed, its letters, and the numbers of lines under them.</summary>
    /// <param name="index">The index of the row.</param>
    public (string SpeedLines, string Letters, string Numbers) Row(int index)
    {
        var row = _all[index];
        var (letters, speed, numbers) = (NewRow(row.Start, row.End), NewRow(row.Start, row.End), NewRow(row.Start, row.End));
        foreach (var akshara in _cells[index].Cells.GroupBy(c => (int)(c.Key / _parts)))
        {
            var (left, right) = (int.MaxValue, 0);
            foreach (var (slot, text) in akshara)
            {
                var column = ColumnOf(row.Start, slot);
                Put(letters, column, text);
                if (_cells[index].IsSung(slot))
                {
                    (left, right) = (Math.Min(left, column), column + text.Length);
                }
            }

            if (right > 0)
            {
                speed.AsSpan(left, right - left).Fill(SpeedLines[_block.Lines[0].Line.Speed.Kalam - 1]);
            }
        }

        // The last row of the section is closed, since the rest of its avartana is silent.
        var end = _block.Lines[^1] == row.Lines[^1] && row.Lines[^1].Number == _section.Lines.Count ? row.End : row.Lines[^1].Line.End;
        for (var p = Math.Max(row.Start, (int)row.Lines[0].Line.Onset.Floor()) + 1; p <= row.End && p <= end; p++)
        {
            Bar(letters, row.Start, p);
        }

        foreach (var line in row.Beginnings.Where(l => l.Line.Onset != row.Start && !Meter.IsFree))
        {
            Put(numbers, ColumnOf(row.Start, (line.Line.Onset * _parts).Floor()), line.Number.ToString(CultureInfo.InvariantCulture));
        }

        return (new string(speed).TrimEnd(), new string(letters).TrimEnd(), new string(numbers).TrimEnd());
    }

    private int ColumnOf(int start, long slot) => Column(start, (int)(slot / _parts)) + ((int)(slot % _parts) * _cell);

    /// <summary>The columns in front of an akshara in a row: the aksharas and the bars between.</summary>
    private int Column(int from, int akshara)
    {
        var columns = (akshara - from) * Akshara;
        for (var p = from + 1; p <= akshara; p++)
        {
            columns += WidthOfBar(p);
        }

        return columns;
    }

    private int WidthOfBar(int boundary) => !_rows.HasBar(boundary) ? 0 : boundary % Beats == 0 ? DoubleBarWidth : BarWidth;

    private void Bar(char[] row, int from, int boundary)
    {
        if (_rows.HasBar(boundary))
        {
            Put(row, Column(from, boundary) - WidthOfBar(boundary), boundary % Beats == 0 ? AvartanaEnd : AngaEnd);
        }
    }

    // With room for a number that is longer than the last letter.
    private char[] NewRow(int from, int to)
    {
        var row = new char[Column(from, to) + LongestNumber];
        row.AsSpan().Fill(' ');
        return row;
    }

    private static void Put(char[] row, int column, string text) => text.CopyTo(row.AsSpan(column));
}
