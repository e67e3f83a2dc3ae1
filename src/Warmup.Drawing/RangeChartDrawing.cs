using System.Globalization;
using Warmup.Sheets;

namespace Warmup.Drawing;

/// <summary>Puts a chart on the paper. Lengths are units of the drawing; the sheet is 1188 wide and 840 high, the shape of A3.</summary>
internal sealed class RangeChartDrawing
{
    /// <summary>The digits after the point that the chart's numbers keep.</summary>
    public const int Digits = 2;

    private const int Width = 1188;
    private const int Height = 840;

    // Colours that also differ in lightness, so that a black-and-white print and most colour-blind eyes can tell them apart.
    private const string Ink = "#22303c";
    private const string Soft = "#5d6b78";
    private const string Rule = "#c9ced3";
    private const string Stripe = "#f1f3f5";
    private const string Range = "#dcebf2";
    private const string RangeEnd = "#b3d2e2";
    private const string RangeEdge = "#4f87a3";
    private const string Sung = "#12496b";
    private const string Outside = "#d1495b";
    private const string TonicColour = "#b7791f";

    private const double Top = 128;
    private const double Bottom = 640;
    private const double Keys = 74;
    private const double KeysWidth = 40;
    private const double TimesWidth = 150;
    private const double Singers = 400;
    private const double Right = 1120;

    private readonly SvgWriter _svg;
    private readonly RangeChartContent _content;
    private readonly double _row;
    private readonly double _mostSeconds;

    public RangeChartDrawing(SvgWriter svg, RangeChartContent content)
    {
        _svg = svg;
        _content = content;
        _row = (Bottom - Top) / (content.Highest - content.Lowest + 1);
        _mostSeconds = content.Notes.Values.Max(n => n.Seconds.ToDouble());
    }

    public void Draw(string title, Score score)
    {
        var section = score.Sections[0];
        _svg.Attribute("width", "420mm");
        _svg.Attribute("height", "297mm");
        _svg.Attribute("viewBox", string.Create(CultureInfo.InvariantCulture, $"0 0 {Width} {Height}"));
        _svg.Attribute("font-family", "'DejaVu Sans', 'Liberation Sans', Arial, sans-serif");
        _svg.Attribute("role", "img");
        _svg.Element("title", title);
        _svg.Element("desc", string.Join("; ", _content.Bars.Select(b => $"{b.Band}: {string.Join(' ', LinesUnder(b))}")));
        Rectangle(0, 0, Width, Height, "#ffffff");
        Text(Keys, 56, Cut(title, 70), 25, Ink, bold: true);
        var sheet = Sheet.Of(score);
        var tonic = sheet.IsSolfege ? $"do = {section.TonicName}" : $"S = {section.TonicName} (kattai {section.Tonic.KattaiNumber})";
        Text(Keys, 82, string.Create(CultureInfo.InvariantCulture, $"{tonic}, {sheet.Sections[0].Blocks[0].Pace}, {score.Seconds.ToDouble():0.#} s; the top of the drill is {_content.Notes.Last().Value.Name}, the bottom {_content.Notes.First().Value.Name}"), 13, Soft);
        Text(Keys, Top - 12, "the drill's notes and how long each is sung", 12, Soft);
        var others = _content.NotShown == 0 ? string.Empty : string.Create(CultureInfo.InvariantCulture, $"; {_content.NotShown} more are not drawn");
        Text(Singers, Top - 12, $"the singers: comfortable range, and the drill in the octave that suits them{others}", 12, Soft);
        Grid();
        Keyboard();
        Times();
        TonicLines(section.Tonic.Midi);
        var width = Math.Min(104, (Right - Singers) / _content.Bars.Count);
        for (var i = 0; i < _content.Bars.Count; i++)
        {
            Bar(_content.Bars[i], Singers + (width * (i + 0.5)), width);
        }

        Legend();
        Foot();
    }

    /// <summary>The lower edge of a note's row.</summary>
    private double Floor(double midi) => Bottom - ((midi - _content.Lowest) * _row);

    private static bool IsBlack(int midi) => (midi % 12) is 1 or 3 or 6 or 8 or 10;

    private void Grid()
    {
        for (var midi = _content.Lowest; midi <= _content.Highest; midi++)
        {
            if (IsBlack(midi))
            {
                Rectangle(Keys + KeysWidth, Floor(midi + 1), Right - Keys - KeysWidth, _row, Stripe);
            }
        }

        for (var midi = _content.Lowest; midi <= _content.Highest; midi++)
        {
            if (midi % 12 == 0)
            {
                Line(Keys + KeysWidth, Floor(midi), Right, Floor(midi), Rule);
                var name = NoteName.FromMidi(midi).ToString();
                Text(Keys - 8, Floor(midi) - (_row / 2) + 4.5, name, 13, Ink, "end", bold: true);
                Text(Right + 8, Floor(midi) - (_row / 2) + 4.5, name, 13, Ink, bold: true);
            }
        }
    }

    private void Keyboard()
    {
        Rectangle(Keys, Top, KeysWidth, Bottom - Top, "#ffffff", Ink);
        for (var midi = _content.Lowest; midi <= _content.Highest; midi++)
        {
            if (IsBlack(midi))
            {
                Line(Keys, Floor(midi + 0.5), Keys + KeysWidth, Floor(midi + 0.5), Rule);
                Rectangle(Keys, Floor(midi + 1), KeysWidth * 0.62, _row, Ink);
            }
            else if (midi > _content.Lowest && !IsBlack(midi - 1))
            {
                Line(Keys, Floor(midi), Keys + KeysWidth, Floor(midi), Rule);
            }
        }
    }

    private void Times()
    {
        var left = Keys + KeysWidth + 6;
        var size = Math.Clamp(_row * 0.95, 7, 12);
        foreach (var (midi, note) in _content.Notes)
        {
            var length = Math.Max(2, TimesWidth * note.Seconds.ToDouble() / _mostSeconds);
            Rectangle(left, Floor(midi + 1) + (_row * 0.12), length, _row * 0.76, Sung, radius: 1.5);
            Text(
                left + length + 6,
                Floor(midi) - (_row / 2) + (size * 0.36),
                string.Create(CultureInfo.InvariantCulture, $"{note.Tone}  {note.Seconds.ToDouble():0.#} s"),
                size,
                Ink);
        }
    }

    private void TonicLines(int tonic)
    {
        foreach (var octaves in _content.Bars.Select(b => b.Octaves).Append(0).Distinct())
        {
            var y = Floor(tonic + (12 * octaves) + 0.5);
            Line(Singers - 26, y, Right, y, TonicColour, 1.1, "5 4");
            Text(Singers - 30, y + 4, $"S {NoteName.FromMidi(tonic + (12 * octaves))}", 12, TonicColour, "end", bold: true);
        }
    }

    private void Bar(RangeBar bar, double x, double width)
    {
        var thick = Math.Min(46, width * 0.62);
        var band = bar.Band;
        var (low, high) = (Floor(band.Low.Midi), Floor(band.High.Midi + 1));
        var fifth = (low - high) / 5;
        if (bar.FullLow is not null || bar.FullHigh is not null)
        {
            var (least, most) = (Floor((bar.FullLow ?? band.Low).Midi), Floor((bar.FullHigh ?? band.High).Midi + 1));
            Line(x, least, x, most, RangeEdge, 1.4);
            Line(x - (thick / 5), least, x + (thick / 5), least, RangeEdge, 1.4);
            Line(x - (thick / 5), most, x + (thick / 5), most, RangeEdge, 1.4);
        }

        Rectangle(x - (thick / 2), high, thick, low - high, Range);
        Rectangle(x - (thick / 2), high, thick, fifth, RangeEnd);
        Rectangle(x - (thick / 2), low - fifth, thick, fifth, RangeEnd);
        Rectangle(x - (thick / 2), high, thick, low - high, "none", RangeEdge, 3, band.IsAssumed ? "4 3" : null);
        foreach (var (midi, note) in _content.Notes)
        {
            var at = midi + (12 * bar.Octaves);
            var length = Math.Max(4, thick * 0.84 * note.Seconds.ToDouble() / _mostSeconds);
            var isOut = (at > band.High.Midi && bar.IsTooHigh) || (at < band.Low.Midi && bar.IsTooLow);
            Rectangle(x - (length / 2), Floor(at + 1) + (_row * 0.2), length, _row * 0.6, isOut ? Outside : Sung, radius: 1.5);
        }

        Names(bar, x, width);
    }

    private void Names(RangeBar bar, double x, double width)
    {
        var colour = bar.IsOut ? Outside : Sung;
        if (width >= 76)
        {
            Text(x, Bottom + 24, Cut(bar.Band.Name, (int)(width / 8)), 13.5, Ink, "middle", bold: true);
            Text(x, Bottom + 41, $"{bar.Band.Low} to {bar.Band.High}", 11, Soft, "middle");
            var y = Bottom + 57;
            foreach (var line in LinesUnder(bar))
            {
                Text(x, y, line, 11, colour, "middle", bold: bar.IsOut);
                y += 14;
            }

            return;
        }

        // Narrow bars have one slanting line each.
        var size = Math.Clamp(width * 0.55, 8, 12);
        Text(x + (size * 0.36), Bottom + 10, Cut(bar.Band.Name, (int)(82 / (size * 0.6))), size, colour, "end", bold: true, turn: -60);
    }

    private static IEnumerable<string> LinesUnder(RangeBar bar) => bar.Octaves == 0 ? bar.Verdict : bar.Verdict.Append(Octave(bar.Octaves));

    private static string Octave(int octaves) => octaves switch
    {
        -1 => "octave lower",
        1 => "octave higher",
        _ => string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(octaves)} octaves {(octaves < 0 ? "lower" : "higher")}"),
    };

    private void Legend()
    {
        const double y = 754;
        double x = Keys;
        void Entry(string fill, string? edge, string text, string? dash = null)
        {
            Rectangle(x, y - 11, 20, 13, fill, edge, 2, dash);
            Text(x + 26, y, text, 11.5, Ink);
            x += 26 + (text.Length * 6.1) + 20;
        }

        Entry(Range, RangeEdge, "comfortable range");
        Entry(RangeEnd, RangeEdge, "its top and bottom fifth");
        Entry(Sung, null, "a note, wider when sung longer");
        Entry(Outside, null, "outside the range");
        if (_content.Bars.Exists(b => b.Band.IsAssumed))
        {
            Entry("none", RangeEdge, "assumed, not measured", "4 3");
        }

        if (_content.Bars.Exists(b => b.FullLow is not null || b.FullHigh is not null))
        {
            Line(x + 11, y - 12, x + 11, y + 3, RangeEdge, 1.4);
            Line(x + 5, y - 12, x + 17, y - 12, RangeEdge, 1.4);
            Line(x + 5, y + 3, x + 17, y + 3, RangeEdge, 1.4);
            Text(x + 24, y, "full range", 11.5, Ink);
        }
    }

    private void Foot()
    {
        var lines = new List<string>
        {
            $"{Cautions.All[^1].Text} {Cautions.All[0].Text}",
            $"{Cautions.All[1].Text} {Cautions.All[2].Text} {Cautions.All[^2].Text}",
            "A fifth of the range and 50 cents of tolerance are this project's own settings. Cautions after NIDCD, Hoarseness and Taking Care of Your Voice, and common practice.",
        };
        for (var i = 0; i < lines.Count; i++)
        {
            Text(Keys, 784 + (i * 17), lines[i], 10.5, Soft);
        }
    }

    private static string Cut(string text, int most) => text.Length <= most ? text : text[..Math.Max(1, most - 1)].TrimEnd() + "…";

    private void Rectangle(double x, double y, double width, double height, string fill, string? stroke = null, double radius = 0, string? dash = null)
    {
        _svg.Begin("rect");
        _svg.Attributes(("x", x), ("y", y), ("width", width), ("height", height));
        if (radius > 0)
        {
            _svg.Attributes(("rx", radius));
        }

        _svg.Attribute("fill", fill);
        Stroke(stroke, 1.2, dash);
        _svg.End();
    }

    private void Line(double x1, double y1, double x2, double y2, string stroke, double width = 1, string? dash = null)
    {
        _svg.Begin("line");
        _svg.Attributes(("x1", x1), ("y1", y1), ("x2", x2), ("y2", y2));
        Stroke(stroke, width, dash);
        _svg.End();
    }

    private void Stroke(string? stroke, double width, string? dash)
    {
        if (stroke is null)
        {
            return;
        }

        _svg.Attribute("stroke", stroke);
        _svg.Attributes(("stroke-width", width));
        if (dash is not null)
        {
            _svg.Attribute("stroke-dasharray", dash);
        }
    }

    private void Text(double x, double y, string text, double size, string fill, string anchor = "start", bool bold = false, double turn = 0)
    {
        _svg.Begin("text");
        _svg.Attributes(("x", x), ("y", y), ("font-size", size));
        _svg.Attribute("fill", fill);
        if (anchor != "start")
        {
            _svg.Attribute("text-anchor", anchor);
        }

        if (bold)
        {
            _svg.Attribute("font-weight", "bold");
        }

        if (turn != 0)
        {
            _svg.Attribute("transform", $"rotate({_svg.Number(turn)} {_svg.Number(x)} {_svg.Number(y)})");
        }

        _svg.Text(text);
        _svg.End();
    }
}
