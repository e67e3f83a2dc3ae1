using System.Globalization;
using Warmup.Sheets;

namespace Warmup.Drawing;

/// <summary>
/// Lines of one speed, a row an avartana where it fits. Every sign stands at its time: the place in a row is in proportion to the aksharas,
/// the same for all rows of the block.
/// </summary>
internal sealed class SheetLines
{
    private const double Size = 14;
    private const double SmallestSize = 6;
    private const double Gutter = 30;
    private const double WidestAkshara = 64;

    // Letters get so small to keep an avartana in one row, but not smaller.
    private const double SmallestWhole = 9.5;

    // In parts of the letters' size: the least space between letters, and how far a letter stands behind a bar line.
    private const double Gap = 0.25;
    private const double Inset = 0.36;

    private readonly Flow _flow;
    private readonly Section _section;
    private readonly SpeedRun _run;
    private readonly SungLetters _letters;
    private readonly Dictionary<int, Breath> _breaths;
    private readonly AvartanaRows _rows;
    private readonly double _size;
    private readonly double _akshara;
    private int _open = -1;

    public SheetLines(Flow flow, Section section, SpeedRun run, SungLetters letters, Dictionary<int, Breath> breaths)
    {
        (_flow, _section, _run, _letters, _breaths) = (flow, section, run, letters, breaths);
        var width = flow.Right - flow.Left - Gutter;
        var need = Needed();
        var whole = section.Meter.IsFree ? 0 : width / need / section.Meter.Beats;

        // Where one akshara alone would not fit a row, letters get smaller still.
        _size = whole >= SmallestWhole ? Math.Min(Size, whole) : Math.Clamp(width / need, SmallestSize, Size);
        need = Math.Min(need * _size, width);
        _rows = new AvartanaRows(section.Meter, Math.Max(1, (int)(width / Math.Max(need, 28))), (aksharas, _) => aksharas * need <= width + 0.001);
        _akshara = Math.Min(Math.Max(WidestAkshara, need), width / _rows.Longest);
    }

    private double Height => (_size * 2.3) + (2.4 * (_section.Lines[_run.First].Speed.Kalam - 1));

    public void Draw(CancellationToken cancellation)
    {
        _flow.Need(Height + 14);
        Header();
        for (var l = _run.First; l < _run.End; l++)
        {
            cancellation.ThrowIfCancellationRequested();
            Line(l);
        }

        _flow.Y += 4;
    }

    /// <summary>The width of an akshara that keeps all letters apart, in parts of their size.</summary>
    private double Needed()
    {
        var need = Inset + Gap + _flow.Shaper.Of("S").Width;
        for (var l = _run.First; l < _run.End; l++)
        {
            SvaraSign? last = null;
            foreach (var sign in Signs(l).Where(s => s.Kind != SignKind.Breath))
            {
                if (last is { } before && sign.At > before.At)
                {
                    need = Math.Max(need, (_flow.Shaper.Of(Text(before)).Width + Gap) / (sign.At - before.At).ToDouble());
                }

                last = sign;
            }

            if (last is { } end)
            {
                // The last letter stays in front of the next akshara's bar line.
                var rest = (double)(end.At.Floor() + 1) - end.At.ToDouble();
                need = Math.Max(need, (_flow.Shaper.Of(Text(end)).Width + Inset) / rest);
            }
        }

        return need;
    }

    /// <summary>The signs of a line: silence only where neither a breath nor an answer fills it.</summary>
    private IEnumerable<SvaraSign> Signs(int line)
    {
        var sung = _section.Lines[line].Onset + _section.Lines[line].Length - _section.Lines[line].Answer;
        return SvaraSign.Of(_section, _section.Lines[line], _breaths).Where(s => s.Kind != SignKind.Silence
            || (s.At < sung && !(_breaths.TryGetValue(s.Note, out var breath) && s.At < breath.Onset + breath.Length)));
    }

    private string Text(SvaraSign sign) => sign.Kind switch
    {
        SignKind.Note => _letters.Of(_section.PitchOf(_section.Notes[sign.Note]).Tone),
        SignKind.Hold => SvaraCells.Hold,
        SignKind.Breath => SvaraCells.Breath,
        _ => SvaraCells.Silence,
    };

    private double X(int start, double at) => _flow.Left + Gutter + (Inset * _size) + ((at - start) * _akshara);

    private void Header()
    {
        if (_section.Meter.IsFree || !_rows.AreWhole)
        {
            return;
        }

        _flow.Y += 10;
        for (var a = 0; a < _section.Meter.Beats; a++)
        {
            _flow.Put("akshara", X(0, a), _flow.Y - 2, (a + 1).ToString(CultureInfo.InvariantCulture), 7, Flow.Soft);
        }
    }

    private void Line(int index)
    {
        var line = _section.Lines[index];
        var signs = Signs(index).ToList();
        var end = line.Onset + line.Length;
        var (from, to) = ((int)line.Onset.Floor(), (int)end.Ceiling());
        var isFirst = true;
        for (var at = from; at < to;)
        {
            var (start, stop) = _rows.RowOf(at, to);
            var row = signs.Where(s => s.At >= start && s.At < stop).ToList();
            var answer = Rational.Max(end - line.Answer, start);
            var isAnswered = line.Answer.Sign > 0 && answer < stop;
            if (row.Count > 0 || isAnswered)
            {
                // Lines that run on share the row of their avartana.
                if (start != _open || _section.Meter.IsFree)
                {
                    if (_flow.Need(Height))
                    {
                        Header();
                    }

                    _flow.Y += Height;
                    _open = start;
                    if (!_rows.AreWhole)
                    {
                        var place = start % _section.Meter.Beats;
                        _flow.Put("row", _flow.Left + Gutter - 3, _flow.Y - (_size * 0.8), string.Create(CultureInfo.InvariantCulture, $".{place + 1}"), 7, Flow.Soft, anchor: 1);
                    }
                }

                var baseline = _flow.Y - (_size * 0.8);
                if (isAnswered)
                {
                    var last = Rational.Min(end, stop);
                    var (x, width) = (X(start, answer.ToDouble()) - (Inset * _size) + 1, (last - answer).ToDouble() * _akshara - 2);
                    _flow.Add(new BoxMark("answer", x, baseline - (_size * 0.95), width, _size * 1.2, "#e4e4e4"));
                    if (width > 34)
                    {
                        _flow.Put("answer-label", x + 4, baseline, "answer", 8, Flow.Soft);
                    }
                }

                Bars(start, Math.Max(start, from), Math.Min(stop, end.Floor()), baseline);
                if (isFirst)
                {
                    Number(index, X(start, line.Onset.ToDouble()), line.Onset == start, baseline);
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

    /// <summary>A line's number: in front of its row, or under its first letter where it begins inside one.</summary>
    private void Number(int index, double x, bool beginsRow, double baseline)
    {
        var text = (index + 1).ToString(CultureInfo.InvariantCulture);
        if (beginsRow)
        {
            _flow.Put("line", _flow.Left + 14, baseline, text, 8, Flow.Soft, anchor: 1);
        }
        else
        {
            // Below whatever the letter has below the baseline, its octave dots included.
            var tone = _section.PitchOf(_section.Notes[_section.Lines[index].FirstNote]).Tone;
            var below = (_flow.Shaper.Of(_letters.Of(tone)).Bottom * _size) + (tone.Octave < 0 ? _size * 0.3 : 0);
            _flow.Put("line", x, baseline + Math.Max(_size * 0.72, below + (_size * 0.48)), text, Math.Min(7, _size * 0.6), Flow.Soft);
        }
    }

    private void Sign(SvaraSign sign, double x, double baseline)
    {
        switch (sign.Kind)
        {
            case SignKind.Note:
                _flow.Tone("note", x, baseline, _section.PitchOf(_section.Notes[sign.Note]).Tone, _letters, _size);
                break;
            case SignKind.Breath:
                _flow.Put("breath", x, baseline - (_size * 0.62), SvaraCells.Breath, _size * 0.8);
                break;
            case SignKind.Hold:
                _flow.Put("hold", x, baseline, SvaraCells.Hold, _size);
                break;
            default:
                _flow.Put("silence", x, baseline, SvaraCells.Silence, _size, Flow.Soft);
                break;
        }
    }

    /// <summary>A line over the letters of each akshara for the second speed, two for the third, three for the fourth (common practice).</summary>
    private void Speed(List<SvaraSign> row, int start, double baseline, int kalam)
    {
        foreach (var akshara in row.Where(s => s.Kind is SignKind.Note or SignKind.Hold).GroupBy(s => s.At.Floor()))
        {
            var (first, last) = (akshara.First(), akshara.Last());
            for (var k = 1; k < kalam; k++)
            {
                var y = baseline - (_size * 1.22) - ((k - 1) * 2.4);
                _flow.Add(new StrokeMark(
                    "speed", X(start, first.At.ToDouble()), y, X(start, last.At.ToDouble()) + (_flow.Shaper.Of(Text(last)).Width * _size), y, 0.8, Flow.Ink));
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
            _flow.Add(new StrokeMark("bar", x, baseline - (_size * 0.85), x, baseline + (_size * 0.25), 0.7, Flow.Soft));
            if (p % _section.Meter.Beats == 0)
            {
                _flow.Add(new StrokeMark("bar", x - 2, baseline - (_size * 0.85), x - 2, baseline + (_size * 0.25), 0.7, Flow.Soft));
            }
        }
    }
}
