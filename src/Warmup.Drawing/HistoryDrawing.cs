using System.Globalization;

namespace Warmup.Drawing;

/// <summary>Puts measurements over time on pages of A4 in portrait, four voices a page.</summary>
internal sealed class HistoryDrawing
{
    // In points. Notes and seconds stand left of the plots, and half a date on each side of them.
    private const double Axis = 34;
    private const double Side = 26;
    private const double PitchHeight = 84;
    private const double ToneHeight = 34;
    private const double Heading = 18;
    private const double Between = 18;
    private const double Dates = 16;
    private const double LabelWidth = 50;
    private const double Small = 7;

    private const string Line = "#12496b";
    private const string Bar = "#b3d2e2";
    private const string Full = "#4f87a3";

    private readonly HistoryChart _chart;
    private readonly PageComposer _composer;
    private readonly DateOnly _first;
    private readonly int _days;

    public HistoryDrawing(HistoryChart chart, TextShaper shaper)
    {
        (_chart, _composer) = (chart, new PageComposer(shaper));
        _first = chart.Voices.Min(v => v.Points[0].Date);
        _days = chart.Voices.Max(v => v.Points[^1].Date).DayNumber - _first.DayNumber;
    }

    private double Left => _composer.Left + Axis + Side;

    private double Right => _composer.Right - Side;

    public PageSet Draw()
    {
        _composer.Paragraph("title", _chart.Title, 15, most: 3);
        _composer.Paragraph(
            "legend",
            "Bars: the comfortable range on a day, dashed where it was assumed from the voice type; thin strokes: the full range, where it is known. The lines join the lowest and the highest comfortable notes; the line below is the longest sustained tone in seconds.",
            8,
            PageComposer.Soft);
        _composer.Y += 6;
        foreach (var voice in _chart.Voices)
        {
            _composer.Need(Heading + PitchHeight + Between + ToneHeight + Dates);
            _composer.Y += Heading;
            _composer.Put("voice", _composer.Left, _composer.Y - 5, voice.Name, 10.5);
            Pitches(voice, _composer.Y);
            Tones(voice, _composer.Y + PitchHeight + Between);
            _composer.Y += PitchHeight + Between + ToneHeight + Dates;
        }

        _composer.Need(90);
        _composer.Y += 8;
        foreach (var caution in Cautions.All)
        {
            _composer.Paragraph("caution", $"{caution.Text} ({caution.Source})", 7.2);
        }

        const string note = "These numbers help with planning. They are no diagnosis; the teacher's ear and a doctor's word overrule them.";
        _composer.Feet(_chart.Title, note);
        return new PageSet(_chart.Title, string.Join("; ", _chart.Voices.Select(v => $"{v.Name}: {string.Join(", ", v.Points)}")), _composer.Pages);
    }

    /// <summary>The place of a day; the middle where there is only one.</summary>
    private double X(DateOnly date) => _days == 0 ? (Left + Right) / 2 : Left + ((Right - Left) * (date.DayNumber - _first.DayNumber) / _days);

    private void Pitches(MeasuredVoice voice, double top)
    {
        var lowest = voice.Points.Min(p => (p.FullLow ?? p.Low).Midi) - 1;
        var highest = voice.Points.Max(p => (p.FullHigh ?? p.High).Midi) + 1;
        double Y(NoteName note) => top + (PitchHeight * (highest - note.Midi) / (highest - lowest));
        for (var midi = lowest; midi <= highest; midi++)
        {
            if (midi % 12 == 0)
            {
                var octave = NoteName.FromMidi(midi);
                Stroke("octave", Left - Side, Y(octave), Right + Side, Y(octave), 0.5, PageComposer.Hair);
                _composer.Put("octave-name", Left - Side - 4, Y(octave) + 2.5, octave.ToString(), Small, PageComposer.Soft, anchor: 1);
            }
        }

        foreach (var point in voice.Points)
        {
            var x = X(point.Date);
            if (point.FullLow is not null || point.FullHigh is not null)
            {
                Stroke("full", x, Y(point.FullLow ?? point.Low), x, Y(point.FullHigh ?? point.High), 1, Full);
            }

            Stroke("range", x, Y(point.Low), x, Y(point.High), 5, Bar, point.IsAssumed ? 3 : 0);
        }

        Joined("low", voice, p => Y(p.Low));
        Joined("high", voice, p => Y(p.High));
        foreach (var point in Labelled(voice))
        {
            _composer.Put("low-name", X(point.Date) + 4, Y(point.Low) + 8, point.Low.ToString(), Small);
            _composer.Put("high-name", X(point.Date) + 4, Y(point.High) - 3, point.High.ToString(), Small);
        }
    }

    private void Tones(MeasuredVoice voice, double top)
    {
        var most = voice.Points.Max(p => p.SustainedSeconds.ToDouble());
        double Y(MeasuredPoint point) => top + (ToneHeight * (1 - (point.SustainedSeconds.ToDouble() / most)));
        Stroke("zero", Left - Side, top + ToneHeight, Right + Side, top + ToneHeight, 0.5, PageComposer.Hair);
        _composer.Put("zero-name", Left - Side - 4, top + ToneHeight + 2.5, "0 s", Small, PageComposer.Soft, anchor: 1);
        Joined("tone", voice, Y);
        foreach (var point in Labelled(voice))
        {
            _composer.Put("tone-seconds", X(point.Date) + 4, Y(point) - 3, string.Create(CultureInfo.InvariantCulture, $"{point.SustainedSeconds.ToDouble():0.##} s"), Small);
            _composer.Put("date", X(point.Date), top + ToneHeight + 11, point.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), Small, PageComposer.Soft, anchor: 0.5);
        }
    }

    private void Joined(string kind, MeasuredVoice voice, Func<MeasuredPoint, double> height)
    {
        for (var i = 0; i < voice.Points.Count; i++)
        {
            var (x, y) = (X(voice.Points[i].Date), height(voice.Points[i]));
            _composer.Add(new DotShape($"{kind}-dot", x, y, 2, Line));
            if (i > 0)
            {
                Stroke(kind, X(voice.Points[i - 1].Date), height(voice.Points[i - 1]), x, y, 1.2, Line);
            }
        }
    }

    /// <summary>The points whose numbers have room: the last, which counts, and before it each that is far enough from the next.</summary>
    private List<MeasuredPoint> Labelled(MeasuredVoice voice)
    {
        var labelled = new List<MeasuredPoint>();
        foreach (var point in voice.Points.Reverse())
        {
            if (labelled.Count == 0 || X(labelled[^1].Date) - X(point.Date) >= LabelWidth)
            {
                labelled.Add(point);
            }
        }

        labelled.Reverse();
        return labelled;
    }

    private void Stroke(string kind, double x1, double y1, double x2, double y2, double width, string colour, double dash = 0) =>
        _composer.Add(new StrokeShape(kind, x1, y1, x2, y2, width, colour, dash));
}
