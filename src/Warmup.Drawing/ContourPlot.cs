using System.Globalization;
using Warmup.Sheets;

namespace Warmup.Drawing;

/// <summary>One strip of the contour at its place.</summary>
internal sealed class ContourPlot
{
    // Of labels that are closer than this only one is written, at its own line.
    private const double LabelHeight = 7.5;

    // The seconds from one tick of the time axis to the next; a minute where these are too close.
    private static readonly int[] Steps = [1, 2, 5, 10, 20, 30];

    private readonly PageComposer _composer;
    private readonly Section _section;
    private readonly ContourPitch _pitch;
    private readonly Sheet _sheet;
    private readonly ContourTime _time;
    private readonly ContourStrip _strip;
    private readonly double _second;
    private readonly (double X, double Y, double Height) _place;

    public ContourPlot(
        PageComposer composer, Sheet sheet, Section section, ContourPitch pitch, ContourTime time, ContourStrip strip, (double X, double Y, double Width, double Height) place)
    {
        (_composer, _sheet, _section, _pitch, _time, _strip) = (composer, sheet, section, pitch, time, strip);
        (_place, _second) = ((place.X, place.Y, place.Height), place.Width / (strip.To - strip.From));
    }

    private double Right => X(_strip.To);

    private double Bottom => _place.Y + _place.Height;

    public void Draw(string[] shades, (string Fill, string Edge) band, double width)
    {
        Range(band);
        Time();
        Svaras();
        Notes(shades, width);
        Breaths();
    }

    private double X(double seconds) => _place.X + ((seconds - _strip.From) * _second);

    private double Y(double cents) => Bottom - ((cents - _pitch.Low) / (_pitch.High - _pitch.Low) * _place.Height);

    private void Range((string Fill, string Edge) colours)
    {
        if (_pitch.Band is not { } band)
        {
            return;
        }

        var (top, bottom) = (Y(Math.Min(band.High, _pitch.High)), Y(Math.Max(band.Low, _pitch.Low)));
        if (bottom <= top)
        {
            return;
        }

        _composer.Add(new BoxShape("range", _place.X, top, Right - _place.X, bottom - top, colours.Fill));
        foreach (var (edge, y) in ((double, double)[])[(band.High, top), (band.Low, bottom)])
        {
            // An edge beyond the picture is not drawn.
            if (edge >= _pitch.Low && edge <= _pitch.High)
            {
                _composer.Add(new StrokeShape("range-edge", _place.X, y, Right, y, 1, colours.Edge, 4));
            }
        }
    }

    private void Time()
    {
        foreach (var at in _time.Measures)
        {
            if (at >= _strip.From - 1e-6 && at <= _strip.To + 1e-6)
            {
                _composer.Add(new StrokeShape("measure", X(at), _place.Y, X(at), Bottom, 0.6, "#9a9a9a"));
            }
        }

        // Whole steps that leave room for the numbers.
        var step = Steps.FirstOrDefault(s => s * _second >= 26, 60);
        for (var s = (int)Math.Ceiling((_strip.From - 1e-6) / step) * step; s <= _strip.To + 1e-6; s += step)
        {
            _composer.Add(new StrokeShape("tick", X(s), Bottom, X(s), Bottom + 3, 0.6, PageComposer.Soft));
            _composer.Put("second", X(s), Bottom + 10.5, string.Create(CultureInfo.InvariantCulture, $"{s} s"), 7, PageComposer.Soft, anchor: 0.5);
        }
    }

    private void Svaras()
    {
        foreach (var (tone, cents) in _pitch.Lines)
        {
            var isTonic = tone.Degree == default;
            _composer.Add(new StrokeShape("svara", _place.X, Y(cents), Right, Y(cents), isTonic ? 1.3 : 0.5, isTonic ? "#3a3a3a" : "#7d7d7d"));
        }

        foreach (var (tone, cents) in Labelled())
        {
            _composer.Tone("svara-label", _place.X - 34, Y(cents) + 2.9, _sheet.ToneOf(tone), 8.5);
            _composer.Put("cents", Right + 5, Y(cents) + 2.6, string.Create(CultureInfo.InvariantCulture, $"{cents:0.#}"), 7, PageComposer.Soft);
        }
    }

    /// <summary>The lines that have room for a label: the tonic's first, then those of sung notes, then the others, each from the lowest.</summary>
    private List<(ScaleTone Tone, double Cents)> Labelled()
    {
        var labelled = new List<(ScaleTone Tone, double Cents)>();
        foreach (var line in _pitch.Lines.OrderBy(l => l.Tone.Degree == default ? 0 : _section.Pitches.Any(p => p.Tone == l.Tone) ? 1 : 2).ThenBy(l => l.Cents))
        {
            if (labelled.TrueForAll(l => Math.Abs(Y(l.Cents) - Y(line.Cents)) >= LabelHeight))
            {
                labelled.Add(line);
            }
        }

        return [.. labelled.OrderBy(l => l.Cents)];
    }

    private void Notes(string[] shades, double width)
    {
        for (var l = 0; l < _section.Lines.Count; l++)
        {
            if (_time.Lines[l].To <= _strip.From + 1e-6 || _time.Lines[l].From >= _strip.To - 1e-6)
            {
                continue;
            }

            var line = _section.Lines[l];
            var shade = shades[l % shades.Length];
            (double X, double Y)? last = null;
            for (var n = line.FirstNote; n < line.FirstNote + line.NoteCount; n++)
            {
                var note = _section.Notes[n];
                var (from, to) = (_section.SecondsAt(note.Onset).ToDouble(), _section.SecondsAt(note.End).ToDouble());
                if (to <= _strip.From + 1e-6 || from >= _strip.To - 1e-6)
                {
                    last = null;
                    continue;
                }

                var y = Y(_section.PitchOf(note).Cents);
                var (x1, x2) = (X(Math.Max(from, _strip.From)), X(Math.Min(to, _strip.To)));

                // Notes that follow without a gap are joined; a breath or a silence stays open.
                if (last is { } before && x1 - before.X < 0.05)
                {
                    _composer.Add(new StrokeShape("join", x1, before.Y, x1, y, 1.1, shade));
                }

                // A hair shorter than it sounds, so that a repeated note shows.
                _composer.Add(new StrokeShape("note", x1, y, Math.Max(x1 + 1, x2 - 0.8), y, width, shade));
                if (n == line.FirstNote && from >= _strip.From - 1e-6)
                {
                    _composer.Put("line", x1 + 1.5, y - 4.5, (l + 1).ToString(CultureInfo.InvariantCulture), 7);
                }

                last = (x2, y);
            }
        }
    }

    private void Breaths()
    {
        foreach (var (from, to) in _time.Breaths)
        {
            if (from >= _strip.From - 1e-6 && from < _strip.To - 1e-6)
            {
                _composer.Put("breath", X((from + Math.Min(to, _strip.To)) / 2), _place.Y - 2.5, SheetSign.Breath, 9, anchor: 0.5);
            }
        }
    }
}
