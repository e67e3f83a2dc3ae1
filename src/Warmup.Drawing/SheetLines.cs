using System.Globalization;
using Warmup.Sheets;

namespace Warmup.Drawing;

/// <summary>
/// Draws lines of one speed, a row for each avartana where it fits. Every sign stands at its time: its place in a row is in proportion to the aksharas, and the
/// proportion is the same in all rows.
/// </summary>
internal sealed class SheetLines
{
    /// <summary>The letters' size where a row has room for it.</summary>
    public const double Size = 14;

    private const double SmallestSize = 6;
    private const double Gutter = 30;
    private const double WidestAkshara = 64;

    // Letters may get this small to keep an avartana in one row.
    private const double SmallestWhole = 9.5;

    // In parts of the letters' size: the least space between letters, and how far a letter stands after a bar line.
    private const double Gap = 0.25;
    private const double Inset = 0.36;

    private readonly PageComposer _composer;
    private readonly Section _section;
    private readonly IReadOnlyList<(SheetLine Line, string Label)> _lines;
    private readonly AvartanaRows _rows;
    private readonly double _size;
    private readonly double _akshara;
    private int _open = -1;

    /// <summary>Lines to draw.</summary>
    /// <param name="composer">Where they are drawn.</param>
    /// <param name="section">Their section.</param>
    /// <param name="lines">The lines, at least one, with what stands before them.</param>
    /// <param name="largest">The letters' size where a row has room for it.</param>
    public SheetLines(PageComposer composer, Section section, IReadOnlyList<(SheetLine Line, string Label)> lines, double largest = Size)
    {
        (_composer, _section, _lines) = (composer, section, lines);
        var width = composer.Right - composer.Left - Gutter;
        var need = Needed();
        var whole = section.Meter.IsFree ? 0 : width / need / section.Meter.Beats;

        // Where one akshara alone would not fit a row, letters get smaller still.
        _size = whole >= SmallestWhole ? Math.Min(largest, whole) : Math.Clamp(width / need, SmallestSize, largest);
        need = Math.Min(need * _size, width);
        _rows = new AvartanaRows(section.Meter, Math.Max(1, (int)(width / Math.Max(need, 28))), (aksharas, _) => aksharas * need <= width + 0.001);
        _akshara = Math.Min(Math.Max(WidestAkshara, need), width / _rows.Longest);
    }

    private double Height => (_size * 2.3) + (2.4 * (_lines[0].Line.Line.Speed.Kalam - 1));

    public void Draw(CancellationToken cancellation)
    {
        _composer.Need(Height + 14);
        Header();
        foreach (var (line, label) in _lines)
        {
            cancellation.ThrowIfCancellationRequested();
            Line(line, label);
        }

        _composer.Y += 4;
    }

    /// <summary>The width of an akshara that keeps all letters apart, in parts of their size.</summary>
    private double Needed()
    {
        var need = Inset + Gap + _composer.Shaper.Of("S").Width;
        foreach (var (line, _) in _lines)
        {
            SheetSign? last = null;
            foreach (var sign in Signs(line).Where(s => s.Kind != SheetSignKind.Breath))
            {
                if (last is { } before && sign.At > before.At)
                {
                    need = Math.Max(need, (_composer.Shaper.Of(before.Text).Width + Gap) / (sign.At - before.At).ToDouble());
                }

                last = sign;
            }

            if (last is { } end)
            {
                // The last letter stays before the next akshara's bar line.
                var rest = (double)(end.At.Floor() + 1) - end.At.ToDouble();
                need = Math.Max(need, (_composer.Shaper.Of(end.Text).Width + Inset) / rest);
            }
        }

        return need;
    }

    /// <summary>The signs of a line; silence has one only where neither a breath nor an answer fills it.</summary>
    private IEnumerable<SheetSign> Signs(SheetLine line) => line.Signs.Where(s => s.Kind != SheetSignKind.Silence
        || (s.At < line.Line.AnswerOnset && !(_section.BreathAfter(s.Note) is { } breath && s.At < breath.Onset + breath.Length)));

    private double X(int start, double at) => _composer.Left + Gutter + (Inset * _size) + ((at - start) * _akshara);

    private void Header()
    {
        if (_section.Meter.IsFree || !_rows.HasWholeAvartanas)
        {
            return;
        }

        _composer.Y += 10;
        for (var a = 0; a < _section.Meter.Beats; a++)
        {
            _composer.Put("akshara", X(0, a), _composer.Y - 2, (a + 1).ToString(CultureInfo.InvariantCulture), 7, PageComposer.Soft);
        }
    }

    private void Line(SheetLine sheetLine, string label)
    {
        var line = sheetLine.Line;
        var signs = Signs(sheetLine).ToList();
        var end = line.End;
        var (from, to) = ((int)line.Onset.Floor(), (int)end.Ceiling());
        var isFirst = true;
        for (var at = from; at < to;)
        {
            var (start, stop) = _rows.RowOf(at, to);
            var row = signs.Where(s => s.At >= start && s.At < stop).ToList();
            var answer = Rational.Max(line.AnswerOnset, start);
            var isAnswered = line.HasAnswer && answer < stop;
            if (row.Count > 0 || isAnswered)
            {
                // Lines that run on share the row of their avartana.
                if (start != _open || _section.Meter.IsFree)
                {
                    if (_composer.Need(Height))
                    {
                        Header();
                    }

                    _composer.Y += Height;
                    _open = start;
                    if (!_rows.HasWholeAvartanas)
                    {
                        var place = start % _section.Meter.Beats;
                        _composer.Put("row", _composer.Left + Gutter - 3, _composer.Y - (_size * 0.8), string.Create(CultureInfo.InvariantCulture, $".{place + 1}"), 7, PageComposer.Soft, anchor: 1);
                    }
                }

                var baseline = _composer.Y - (_size * 0.8);
                if (isAnswered)
                {
                    var last = Rational.Min(end, stop);
                    var (x, width) = (X(start, answer.ToDouble()) - (Inset * _size) + 1, (last - answer).ToDouble() * _akshara - 2);
                    _composer.Add(new BoxShape("answer", x, baseline - (_size * 0.95), width, _size * 1.2, "#e4e4e4"));
                    if (width > 34)
                    {
                        _composer.Put("answer-label", x + 4, baseline, "answer", 8, PageComposer.Soft);
                    }
                }

                Bars(start, Math.Max(start, from), Math.Min(stop, end.Floor()), baseline);
                if (isFirst)
                {
                    Number(sheetLine, label, X(start, line.Onset.ToDouble()), line.Onset == start, baseline);
                }

                foreach (var sign in row)
                {
                    Sign(sign, X(start, sign.At.ToDouble()), baseline);
                }

                Speed(row, start, baseline, line.Speed.Kalam);
                isFirst = false;
            }

            at = stop;
        }
    }

    /// <summary>Writes a line's number: before its row, or under its first letter where it begins inside a row.</summary>
    private void Number(SheetLine line, string text, double x, bool beginsRow, double baseline)
    {
        if (beginsRow)
        {
            _composer.Put("line", _composer.Left + 14, baseline, text, 8, PageComposer.Soft, anchor: 1);
        }
        else
        {
            // Below everything that the letter has below the baseline, its octave dots included.
            var tone = line.Signs[0].Tone!;
            var below = (_composer.Shaper.Of(tone.Letter).Bottom * _size) + (tone.Octave < 0 ? _size * 0.3 : 0);
            _composer.Put("line", x, baseline + Math.Max(_size * 0.72, below + (_size * 0.48)), text, Math.Min(7, _size * 0.6), PageComposer.Soft);
        }
    }

    private void Sign(SheetSign sign, double x, double baseline)
    {
        switch (sign.Kind)
        {
            case SheetSignKind.Note:
                _composer.Tone("note", x, baseline, sign.Tone!, _size);
                break;
            case SheetSignKind.Breath:
                _composer.Put("breath", x, baseline - (_size * 0.62), SheetSign.Breath, _size * 0.8);
                break;
            case SheetSignKind.Hold:
                _composer.Put("hold", x, baseline, SheetSign.Hold, _size);
                break;
            default:
                _composer.Put("silence", x, baseline, SheetSign.Silence, _size, PageComposer.Soft);
                break;
        }
    }

    /// <summary>Draws a line over the letters of each akshara for the second speed, two for the third, three for the fourth (common practice).</summary>
    private void Speed(List<SheetSign> row, int start, double baseline, int kalam)
    {
        foreach (var akshara in row.Where(s => s.Kind is SheetSignKind.Note or SheetSignKind.Hold).GroupBy(s => s.At.Floor()))
        {
            var (first, last) = (akshara.First(), akshara.Last());
            for (var k = 1; k < kalam; k++)
            {
                var y = baseline - (_size * 1.22) - ((k - 1) * 2.4);
                _composer.Add(new StrokeShape(
                    "speed", X(start, first.At.ToDouble()), y, X(start, last.At.ToDouble()) + (_composer.Shaper.Of(last.Text).Width * _size), y, 0.8, PageComposer.Ink));
            }
        }
    }

    private void Bars(int start, int from, long to, double baseline)
    {
        for (var p = from + 1; p <= to; p++)
        {
            if (!_rows.HasBar(p))
            {
                continue;
            }

            var x = X(start, p) - (Inset * _size);
            _composer.Add(new StrokeShape("bar", x, baseline - (_size * 0.85), x, baseline + (_size * 0.25), 0.7, PageComposer.Soft));
            if (p % _section.Meter.Beats == 0)
            {
                _composer.Add(new StrokeShape("bar", x - 2, baseline - (_size * 0.85), x - 2, baseline + (_size * 0.25), 0.7, PageComposer.Soft));
            }
        }
    }
}
