using System.Globalization;

namespace Warmup.Sheets;

/// <summary>
/// Lines of one speed in columns under the aksharas: a row an avartana where it fits, <c>|</c> behind an anga, <c>||</c> behind an avartana,
/// and over the letters a row with the speed's lines, one for the second speed, two for the third (common practice).
/// </summary>
internal sealed class SvaraBlock
{
    public const string AngaEnd = "|";
    public const string AvartanaEnd = "||";

    // What fits on a page of fixed-width type, and the parts of an akshara that are still readable side by side.
    private const int WidestRow = 108;
    private const int MostParts = 18;
    private const int BarWidth = 2;

    private static readonly char[] SpeedLines = [' ', '-', '=', '\u2261'];

    private readonly Section _section;
    private readonly List<SvaraCells> _lines = [];
    private readonly int _first;
    private readonly int _parts;
    private readonly int _cell;
    private readonly AvartanaRows _rows;

    public SvaraBlock(Section section, int first, int end, Dictionary<int, Breath> breaths, SungLetters letters)
    {
        _section = section;
        _first = first;
        _parts = Parts(section, first, end);
        for (var l = first; l < end; l++)
        {
            _lines.Add(new SvaraCells(section, section.Lines[l], breaths, _parts, letters.WithSigns));
        }

        _cell = _lines.Max(l => l.Widest) + 1;
        _rows = new AvartanaRows(section.Meter, Math.Max(1, WidestRow / Akshara), (aksharas, bars) => (aksharas * Akshara) + (bars * BarWidth) <= WidestRow);
    }

    /// <summary>Whether an avartana has one row; in free rhythm there is none to divide.</summary>
    public bool HasWholeRows => _rows.AreWhole;

    /// <summary>The numbers of the aksharas, to stand over the columns; empty in free rhythm and where an avartana has several rows.</summary>
    public string Header()
    {
        if (_section.Meter.IsFree || !HasWholeRows)
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

    /// <summary>The rows of a line, each with the row of its speed's lines, empty in the first speed, and the akshara it begins with.</summary>
    public IEnumerable<(string Marks, string Letters, int Akshara)> Rows(int line)
    {
        var cells = _lines[line - _first].Cells;
        var (from, to) = ((int)_section.Lines[line].Onset.Floor(), (int)(_section.Lines[line].Onset + _section.Lines[line].Length).Ceiling());
        var kalam = _section.Lines[line].Speed.Kalam;
        for (var at = from; at < to;)
        {
            var (start, end) = _rows.RowOf(at, to);
            var letters = NewRow(start, end);
            var marks = NewRow(start, end);
            foreach (var akshara in cells.Where(c => c.Key >= (long)start * _parts && c.Key < (long)end * _parts).GroupBy(c => (int)(c.Key / _parts)))
            {
                var (left, right) = (int.MaxValue, 0);
                foreach (var (slot, text) in akshara)
                {
                    var column = Column(start, akshara.Key) + ((int)(slot % _parts) * _cell);
                    Put(letters, column, text);
                    (left, right) = (Math.Min(left, column), column + text.Length);
                }

                marks.AsSpan(left, right - left).Fill(SpeedLines[kalam - 1]);
            }

            for (var p = Math.Max(start, from) + 1; p <= Math.Min(end, to) && p <= _section.Lines[line].Onset + _section.Lines[line].Length; p++)
            {
                Bar(letters, start, p);
            }

            // A line that ends just behind a row's beginning has nothing to show there.
            if (letters.AsSpan().ContainsAnyExcept(' '))
            {
                yield return (new string(marks).TrimEnd(), new string(letters).TrimEnd(), _section.Meter.IsFree ? start - from : start % Beats);
            }

            at = end;
        }
    }

    private int Beats => _section.Meter.Beats;

    private int Akshara => _parts * _cell;

    /// <summary>The parts of an akshara on which all notes fall, or, where they would be too many, one for each note of it.</summary>
    internal static int Parts(Section section, int first, int end)
    {
        long parts = 1;
        var last = section.Lines[end - 1];
        foreach (var note in section.Notes.AsSpan()[section.Lines[first].FirstNote..(last.FirstNote + last.NoteCount)])
        {
            var denominator = note.Onset.Denominator;
            var (a, b) = (parts, denominator);
            while (b != 0)
            {
                (a, b) = (b, a % b);
            }

            parts = parts / a * denominator;
            if (parts > MostParts)
            {
                return (int)Math.Min(MostParts, section.Lines[first].Speed.NotesPerAkshara.Ceiling());
            }
        }

        return (int)parts;
    }

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
