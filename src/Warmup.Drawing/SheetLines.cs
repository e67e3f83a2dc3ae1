using System.Globalization;
using Warmup.Sheets;

namespace Warmup.Drawing;

/// <summary>
/// Draws lines of one speed, a row for each avartana where it fits. Every sign stands at its time: the middle of its ink lies in proportion to the aksharas, half
/// a note after the bar line, and the proportion is the same in all rows.
/// </summary>
internal sealed class SheetLines
{
    /// <summary>The letters' size where a row has room for it.</summary>
    public const double Size = 14;

    // Letters may get this small to keep an avartana in one row, or else an anga.
    private const double SmallestWhole = 9.5;
    private const double SmallestAnga = 7;
    private const double SmallestSize = 6;
    private const double WidestAkshara = 64;

    // In parts of the letters' size: the least space between letters, and between a letter and a bar line.
    private const double Gap = 0.25;
    private const double Room = 0.25;
    private const double SpeedGap = 2.4;

    private readonly PageComposer _composer;
    private readonly Section _section;
    private readonly IReadOnlyList<(SheetLine Line, string Label)> _lines;
    private readonly SheetStyle _style;
    private readonly AvartanaRows _rows;
    private readonly ValueList<SheetRow> _all;
    private readonly double _slot;
    private readonly double _size;
    private readonly double _akshara;
    private readonly double _gutter;
    private readonly double _height;
    private readonly double _speedHeight;
    private readonly double _above;
    private readonly double _below;

    /// <summary>Lines to draw.</summary>
    /// <param name="composer">Where they are drawn.</param>
    /// <param name="section">Their section.</param>
    /// <param name="lines">The lines, at least one, with what stands before them.</param>
    /// <param name="style">The letters' size where a row has room for it, and how close the rows are.</param>
    public SheetLines(PageComposer composer, Section section, IReadOnlyList<(SheetLine Line, string Label)> lines, SheetStyle style)
    {
        (_composer, _section, _lines, _style) = (composer, section, lines, style);
        var all = lines.Select(l => l.Line).ToValueList();
        _slot = SlotOf(all);
        var need = Needed(composer.Shaper, section, all, _slot);
        var beats = section.Meter.Beats;
        var whole = section.Meter.IsFree ? 0 : Width(SheetStyle.Gutter) / need / beats;
        var isWhole = whole >= Math.Min(SmallestWhole, style.Letters);
        _gutter = isWhole || section.Meter.IsFree ? SheetStyle.Gutter : SheetStyle.WideGutter;
        var width = Width(_gutter);
        _size = isWhole ? Math.Min(style.Letters, whole) : Divided(section.Meter, width / need, style.Letters);
        need = Math.Min(need * _size, width);
        var bars = isWhole ? AvartanaRows.BarsInARow(section, all, aksharas => aksharas * need <= width + 0.001) : 1;
        _rows = new AvartanaRows(
            section.Meter, Math.Max(1, (int)(width / Math.Max(need, 28))), (aksharas, _) => aksharas * need <= width + 0.001, bars, (int)all[0].Line.Onset.Floor());
        _akshara = _rows.HasWholeAvartanas ? Math.Min(Math.Max(WidestAkshara, need), width / _rows.Longest) : width / _rows.Longest;
        _all = _rows.RowsOf(all);
        (_speedHeight, _above, _below) = Extents();
        _height = Math.Max(style.Leading * _size, _above + _below + 2);
    }

    /// <summary>Whether an avartana has several rows, of which each but the first says where in it it begins.</summary>
    public bool IsDivided => !_rows.HasWholeAvartanas;

    private int Kalam => _lines[0].Line.Line.Speed.Kalam;

    /// <summary>The letters' size at which lines keep an avartana, or all bars of a figure, in one row, if one is large enough; else the largest.</summary>
    /// <param name="shaper">The fonts.</param>
    /// <param name="section">The section.</param>
    /// <param name="lines">The lines.</param>
    /// <param name="width">The width of a page between its margins.</param>
    public static double SizeOf(TextShaper shaper, Section section, ValueList<SheetLine> lines, double width)
    {
        var (room, need) = (width - SheetStyle.Gutter, Needed(shaper, section, lines, SlotOf(lines)));
        var whole = section.Meter.IsFree ? Size : room / need / section.Meter.Beats;
        if (section.Meter.IsFree || whole < SmallestWhole)
        {
            return Size;
        }

        // Two bars a row need no smaller letters: a line of two goes on in the next row as well as in the next bar.
        whole = Math.Min(Size, whole);
        var bars = BarsAt(SmallestWhole);
        return bars > Math.Max(2, BarsAt(whole)) ? room / need / section.Meter.Beats / bars : whole;

        int BarsAt(double size) => AvartanaRows.BarsInARow(section, lines, aksharas => aksharas * need * size <= room + 0.001);
    }

    /// <summary>Draws all rows.</summary>
    /// <param name="tail">The height of what must follow the last rows on the same page; 0 where more lines do.</param>
    /// <param name="cancellation">Stops the work.</param>
    public void Draw(double tail, CancellationToken cancellation)
    {
        // No row stands alone at the foot or at the head of a page.
        _composer.Need((_height * Math.Min(2, _all.Count)) + 14 + (_all.Count <= 2 ? tail : 0));
        Header();
        for (var r = 0; r < _all.Count; r++)
        {
            cancellation.ThrowIfCancellationRequested();
            var isLastPair = r == _all.Count - 2 && r > 0;
            if (_composer.Need(isLastPair ? (2 * _height) + tail : _height))
            {
                Header();
            }

            _composer.Y += _height;
            Row(_all[r], _composer.Y - _below - ((_height - _above - _below) / 2));
        }

        _composer.Y += 4;
    }

    private double Width(double gutter) => _composer.Right - _composer.Left - gutter;

    /// <summary>The part of an akshara that a sign has for itself: all notes begin at multiples of it.</summary>
    private static double SlotOf(ValueList<SheetLine> lines)
    {
        // More parts than can be told apart are as many as the speed has notes.
        const int most = 18;
        long parts = 1;
        foreach (var sign in lines.SelectMany(l => l.Written).Where(s => s.Kind != SheetSignKind.Breath))
        {
            parts = Rational.Lcm(parts, sign.At.Denominator);
            if (parts > most)
            {
                return 1.0 / Math.Min(most, lines[0].Line.Speed.NotesPerAkshara.Ceiling());
            }
        }

        return 1.0 / parts;
    }

    /// <summary>An avartana of several rows: letters of which the longest anga fits one row, if they are large enough; else of which an akshara does.</summary>
    private static double Divided(Meter meter, double room, double largest)
    {
        var longest = 1;
        for (var beat = 0; !meter.IsFree && beat < meter.Beats; beat++)
        {
            longest = Math.Max(longest, meter.AngaEnd(beat) - beat);
        }

        return room / longest >= SmallestAnga ? Math.Min(largest, room / longest) : Math.Clamp(room, SmallestSize, largest);
    }

    /// <summary>The width of an akshara that keeps all letters apart, and off the bar lines, in parts of their size.</summary>
    private static double Needed(TextShaper shaper, Section section, ValueList<SheetLine> lines, double slot)
    {
        var need = 0.0;
        SheetSign? last = null;
        foreach (var sign in lines.SelectMany(l => l.Written).Where(s => s.Kind != SheetSignKind.Breath))
        {
            var (left, right) = Reach(shaper, sign);
            if (last is { } before && sign.At > before.At)
            {
                need = Math.Max(need, (Reach(shaper, before).Right + left + Gap) / (sign.At - before.At).ToDouble());
            }

            var (akshara, at) = (sign.At.Floor(), sign.At.ToDouble());
            if (HasBar(section.Meter, akshara + 1))
            {
                need = Math.Max(need, (right + Room) / Math.Max(akshara + 1 - at - (slot / 2), slot / 2));
            }

            if (sign.At.IsInteger && HasBar(section.Meter, akshara))
            {
                need = Math.Max(need, (left + Room) / (slot / 2));
            }

            last = sign;
        }

        return Math.Max(need, shaper.Of("S").Width + Gap);
    }

    private static bool HasBar(Meter meter, long boundary) => !meter.IsFree && meter.AccentOf((int)(boundary % meter.Beats)) != BeatAccent.None;

    /// <summary>How far a sign reaches to the left and to the right of its middle, in parts of the letters' size.</summary>
    private static (double Left, double Right) Reach(TextShaper shaper, SheetSign sign)
    {
        var shaped = shaper.Of(sign.Tone?.Letter ?? sign.Text);
        var half = shaped.InkWidth / 2;
        return (half, half + (sign.Tone is { Variant.Length: > 0 } tone ? PageComposer.VariantWidth(shaper, tone) : 0));
    }

    /// <summary>How far above the baselines the lowest line of the speed lies, and how far the rows reach above and below them.</summary>
    private (double Speed, double Above, double Below) Extents()
    {
        double above = _size, below = 0;
        foreach (var row in _all)
        {
            foreach (var tone in row.Signs.Select(s => s.Tone).OfType<SheetTone>())
            {
                var shaped = _composer.Shaper.Of(tone.Letter);
                above = Math.Max(above, (shaped.Top * _size) + (tone.Octave > 0 ? _size * 0.33 : 0));
                below = Math.Max(below, (shaped.Bottom * _size) + (tone.Octave < 0 ? _size * 0.33 : 0));
            }

            foreach (var line in row.Beginnings.Where(l => !BeginsRow(row, l)))
            {
                below = Math.Max(below, NumberBelow(line));
            }
        }

        var speed = Math.Max(_size * 1.1, above + 1.5);
        return (speed, Kalam > 1 ? speed + ((Kalam - 2) * SpeedGap) + 1 : above, below);
    }

    private bool BeginsRow(SheetRow row, SheetLine line) => _section.Meter.IsFree || line.Line.Onset == row.Start;

    /// <summary>The place of an edge between aksharas, at which bars stand.</summary>
    private double Edge(int start, double at) => _composer.Left + _gutter + ((at - start) * _akshara);

    /// <summary>The middle of a sign.</summary>
    private double Middle(int start, double at) => Edge(start, at + (_slot / 2));

    private void Header()
    {
        if (_section.Meter.IsFree || !_rows.HasWholeAvartanas)
        {
            return;
        }

        _composer.Y += 10;
        for (var a = 0; a < _section.Meter.Beats * _rows.Avartanas; a++)
        {
            var number = ((a % _section.Meter.Beats) + 1).ToString(CultureInfo.InvariantCulture);
            _composer.PutMiddle("akshara", Middle(0, a), _composer.Y - 2, number, 7, PageComposer.Soft);
        }
    }

    private void Row(SheetRow row, double baseline)
    {
        var (first, last) = (row.Lines[0], row.Lines[^1]);
        if (!_rows.HasWholeAvartanas && row.Start % _section.Meter.Beats is var place and > 0)
        {
            _composer.Put("row", _composer.Left + _gutter - 6, baseline, string.Create(CultureInfo.InvariantCulture, $"from {place + 1}"), 7, PageComposer.Soft, anchor: 1);
        }

        foreach (var line in row.Lines.Where(l => l.Line.HasAnswer))
        {
            Answer(row, line.Line, baseline);
        }

        // The last row of the section is closed, since the rest of its avartana is silent.
        var end = last.Number == _section.Lines.Count ? row.End : Rational.Min(last.Line.End, row.End).ToDouble();
        Bars(row.Start, Math.Max(row.Start, (int)first.Line.Onset.Floor()), end, baseline);
        foreach (var line in row.Beginnings)
        {
            Number(row, line, baseline);
        }

        var signs = row.Signs;
        foreach (var sign in signs.Where(s => !IsAnswered(row, s)))
        {
            Sign(sign, row.Start, baseline);
        }

        Speed(signs, row.Start, baseline);
    }

    /// <summary>Whether a unit of silence lies in a field for an answer.</summary>
    private static bool IsAnswered(SheetRow row, SheetSign sign) =>
        sign.Kind == SheetSignKind.Silence && row.Lines.Any(l => l.Line.HasAnswer && sign.At >= l.Line.AnswerOnset && sign.At < l.Line.End);

    private void Answer(SheetRow row, ScoreLine line, double baseline)
    {
        var (from, to) = (Rational.Max(line.AnswerOnset, row.Start), Rational.Min(line.End, row.End));
        if (from >= to)
        {
            return;
        }

        var (x, width) = (Edge(row.Start, from.ToDouble()) + 2, ((to - from).ToDouble() * _akshara) - 5);
        _composer.Add(new BoxShape("answer", x, baseline - (_size * 0.95), width, _size * 1.2, "#e4e4e4"));
        if (width > 34)
        {
            _composer.Put("answer-label", x + 4, baseline, "answer", 8, PageComposer.Soft);
        }
    }

    /// <summary>Writes a line's number: before its row, or under its first letter where it begins inside a row.</summary>
    private void Number(SheetRow row, SheetLine line, double baseline)
    {
        var label = _lines.First(l => l.Line == line).Label;
        if (BeginsRow(row, line))
        {
            _composer.Put("line", _composer.Left + 14, baseline, label, 8, PageComposer.Soft, anchor: 1);
        }
        else
        {
            _composer.Put("line", Middle(row.Start, line.Line.Onset.ToDouble()), baseline + NumberBelow(line), label, NumberSize, PageComposer.Soft, anchor: 0.5);
        }
    }

    private double NumberSize => Math.Min(7, _size * 0.6);

    /// <summary>How far below the baseline a line's number stands: below everything that the letter has there, its octave sign included.</summary>
    private double NumberBelow(SheetLine line)
    {
        var tone = line.Signs.First(s => s.Tone is not null).Tone!;
        var below = (_composer.Shaper.Of(tone.Letter).Bottom * _size) + (tone.Octave < 0 ? _size * 0.3 : 0);
        return Math.Max(_size * 0.72, below + (NumberSize * 0.75) + 2);
    }

    private void Sign(SheetSign sign, int start, double baseline)
    {
        var at = sign.At.ToDouble();
        switch (sign.Kind)
        {
            case SheetSignKind.Note:
                _composer.Tone("note", Middle(start, at), baseline, sign.Tone!, _size, middle: true);
                break;
            case SheetSignKind.Breath:
                // In the middle of its own time where that is shorter than a note's.
                var rest = Math.Min(_slot, sign.At.Floor() + 1 - at);
                _composer.PutMiddle("breath", Edge(start, at + (rest / 2)), baseline - (_size * 0.62), SheetSign.Breath, _size * 0.8);
                break;
            case SheetSignKind.Hold:
                _composer.PutMiddle("hold", Middle(start, at), baseline, SheetSign.Hold, _size);
                break;
            default:
                _composer.PutMiddle("silence", Middle(start, at), baseline, SheetSign.Silence, _size, PageComposer.Soft);
                break;
        }
    }

    /// <summary>Draws a line over the letters of each akshara for the second speed, two for the third, three for the fourth (common practice).</summary>
    private void Speed(ValueList<SheetSign> signs, int start, double baseline)
    {
        foreach (var akshara in signs.Where(s => s.Kind is SheetSignKind.Note or SheetSignKind.Hold).GroupBy(s => s.At.Floor()))
        {
            var (first, last) = (akshara.First(), akshara.Last());
            var left = Middle(start, first.At.ToDouble()) - (Reach(_composer.Shaper, first).Left * _size);
            var right = Middle(start, last.At.ToDouble()) + (Reach(_composer.Shaper, last).Right * _size);
            for (var k = 1; k < Kalam; k++)
            {
                var y = baseline - _speedHeight - ((k - 1) * SpeedGap);
                _composer.Add(new StrokeShape("speed", left, y, right, y, 0.8, PageComposer.Ink));
            }
        }
    }

    private void Bars(int start, int from, double to, double baseline)
    {
        for (var p = from + 1; p <= to; p++)
        {
            if (!_rows.HasBar(p))
            {
                continue;
            }

            var isEnd = p % _section.Meter.Beats == 0;
            foreach (var x in (double[])(isEnd ? [Edge(start, p) - 1, Edge(start, p) + 1] : [Edge(start, p)]))
            {
                _composer.Add(new StrokeShape("bar", x, baseline - (_size * 0.85), x, baseline + (_size * 0.25), 0.7, PageComposer.Soft));
            }
        }
    }
}
