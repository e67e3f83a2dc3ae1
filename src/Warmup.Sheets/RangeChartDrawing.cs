using System.Globalization;

namespace Warmup.Sheets;

/// <summary>Puts a chart on the paper. Lengths are units of the drawing; the sheet is 1188 wide and 840 high, the shape of A3.</summary>
internal sealed class RangeChartDrawing
{
    public const int Width = 1188;
    public const int Height = 840;

    // Colours that differ in lightness too, so that a black-and-white print and most colour-blind eyes tell them apart.
    private const string Ink = "#22303c";
    private const string Soft = "#5d6b78";
    private const string Rule = "#c9ced3";
    private const string Stripe = "#f1f3f5";
    private const string Range = "#dcebf2";
    private const string RangeEnd = "#b3d2e2";
    private const string RangeEdge = "#4f87a3";
    private const string Sung = "#12496b";
    private const string Outside = "#d1495b";
    private const string Tonic = "#b7791f";

    private const double Top = 128;
    private const double Bottom = 640;
    private const double Keys = 74;
    private const double KeysWidth = 40;
    private const double TimesWidth = 150;
    private const double People = 400;
    private const double Right = 1120;

    private readonly SvgCanvas _canvas;
    private readonly RangeChartContent _content;
    private readonly double _row;
    private readonly double _mostSeconds;

    public RangeChartDrawing(SvgCanvas canvas, RangeChartContent content)
    {
        _canvas = canvas;
        _content = content;
        _row = (Bottom - Top) / (content.Highest - content.Lowest + 1);
        _mostSeconds = content.Notes.Values.Max(n => n.Seconds.ToDouble());
    }

    public void Draw(string title, Score score)
    {
        var section = score.Sections[0];
        _canvas.Describe(title, string.Join("; ", _content.Columns.Select(c => $"{c.Singer}: {Verdict(c)}")));
        _canvas.Rectangle(0, 0, Width, Height, "#ffffff");
        _canvas.Text(Keys, 56, Cut(title, 70), 25, Ink, bold: true);
        _canvas.Text(Keys, 82, string.Create(CultureInfo.InvariantCulture, $"S = {section.TonicName} (kattai {section.Tonic.KattaiNumber}), {section.Tempo.ToDouble():0.##} aksharas a minute, {section.Speed}, {score.Seconds.ToDouble():0.#} s; the top of the drill is {_content.Notes.Last().Value.Name}, the bottom {_content.Notes.First().Value.Name}"), 13, Soft);
        _canvas.Text(Keys, Top - 12, "the drill's notes and how long each is sung", 12, Soft);
        var others = _content.NotShown == 0 ? string.Empty : string.Create(CultureInfo.InvariantCulture, $"; {_content.NotShown} more are not drawn");
        _canvas.Text(People, Top - 12, $"the singers: comfortable range, and the drill in the octave that suits them{others}", 12, Soft);
        Grid();
        Keyboard();
        Times();
        TonicLines(section.Tonic.Midi);
        var width = Math.Min(104, (Right - People) / _content.Columns.Count);
        for (var i = 0; i < _content.Columns.Count; i++)
        {
            Column(_content.Columns[i], People + (width * (i + 0.5)), width);
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
                _canvas.Rectangle(Keys + KeysWidth, Floor(midi + 1), Right - Keys - KeysWidth, _row, Stripe);
            }
        }

        for (var midi = _content.Lowest; midi <= _content.Highest; midi++)
        {
            if (midi % 12 == 0)
            {
                _canvas.Line(Keys + KeysWidth, Floor(midi), Right, Floor(midi), Rule);
                var name = NoteName.FromMidi(midi).ToString();
                _canvas.Text(Keys - 8, Floor(midi) - (_row / 2) + 4.5, name, 13, Ink, "end", bold: true);
                _canvas.Text(Right + 8, Floor(midi) - (_row / 2) + 4.5, name, 13, Ink, bold: true);
            }
        }
    }

    private void Keyboard()
    {
        _canvas.Rectangle(Keys, Top, KeysWidth, Bottom - Top, "#ffffff", Ink);
        for (var midi = _content.Lowest; midi <= _content.Highest; midi++)
        {
            if (IsBlack(midi))
            {
                _canvas.Line(Keys, Floor(midi + 0.5), Keys + KeysWidth, Floor(midi + 0.5), Rule);
                _canvas.Rectangle(Keys, Floor(midi + 1), KeysWidth * 0.62, _row, Ink);
            }
            else if (midi > _content.Lowest && !IsBlack(midi - 1))
            {
                _canvas.Line(Keys, Floor(midi), Keys + KeysWidth, Floor(midi), Rule);
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
            _canvas.Rectangle(left, Floor(midi + 1) + (_row * 0.12), length, _row * 0.76, Sung, radius: 1.5);
            _canvas.Text(
                left + length + 6,
                Floor(midi) - (_row / 2) + (size * 0.36),
                string.Create(CultureInfo.InvariantCulture, $"{note.Tone}  {note.Seconds.ToDouble():0.#} s"),
                size,
                Ink);
        }
    }

    private void TonicLines(int tonic)
    {
        foreach (var octaves in _content.Columns.Select(c => c.Octaves).Append(0).Distinct())
        {
            var y = Floor(tonic + (12 * octaves) + 0.5);
            _canvas.Line(People - 26, y, Right, y, Tonic, 1.1, "5 4");
            _canvas.Text(People - 30, y + 4, $"S {NoteName.FromMidi(tonic + (12 * octaves))}", 12, Tonic, "end", bold: true);
        }
    }

    private void Column(ChartColumn column, double x, double width)
    {
        var singer = column.Singer;
        var bar = Math.Min(46, width * 0.62);
        var (low, high) = (Floor(singer.Low.Midi), Floor(singer.High.Midi + 1));
        var fifth = (low - high) / 5;
        if (singer.FullLow is not null || singer.FullHigh is not null)
        {
            var (least, most) = (Floor(singer.FullLow?.Midi ?? singer.Low.Midi), Floor((singer.FullHigh?.Midi ?? singer.High.Midi) + 1));
            _canvas.Line(x, least, x, most, RangeEdge, 1.4);
            _canvas.Line(x - (bar / 5), least, x + (bar / 5), least, RangeEdge, 1.4);
            _canvas.Line(x - (bar / 5), most, x + (bar / 5), most, RangeEdge, 1.4);
        }

        _canvas.Rectangle(x - (bar / 2), high, bar, low - high, Range);
        _canvas.Rectangle(x - (bar / 2), high, bar, fifth, RangeEnd);
        _canvas.Rectangle(x - (bar / 2), low - fifth, bar, fifth, RangeEnd);
        _canvas.Rectangle(x - (bar / 2), high, bar, low - high, "none", RangeEdge, 3, singer.IsRangeAssumed ? "4 3" : null);
        foreach (var (midi, note) in _content.Notes)
        {
            var at = midi + (12 * column.Octaves);
            var length = Math.Max(4, bar * 0.84 * note.Seconds.ToDouble() / _mostSeconds);
            var isOut = (at > singer.High.Midi && column.Fit.SemitonesAbove.Sign > 0) || (at < singer.Low.Midi && column.Fit.SemitonesBelow.Sign > 0);
            _canvas.Rectangle(x - (length / 2), Floor(at + 1) + (_row * 0.2), length, _row * 0.6, isOut ? Outside : Sung, radius: 1.5);
        }

        Names(column, x, width);
    }

    private void Names(ChartColumn column, double x, double width)
    {
        var colour = column.Fit.IsOut ? Outside : Sung;
        var range = $"{column.Singer.Low} to {column.Singer.High}";
        if (width >= 76)
        {
            _canvas.Text(x, Bottom + 24, Cut(column.Singer.Alias, (int)(width / 8)), 13.5, Ink, "middle", bold: true);
            _canvas.Text(x, Bottom + 41, range, 11, Soft, "middle");
            var y = Bottom + 57;
            foreach (var line in Fits(column).Append(Octave(column.Octaves)).Where(l => l.Length > 0))
            {
                _canvas.Text(x, y, line, 11, colour, "middle", bold: column.Fit.IsOut);
                y += 14;
            }

            return;
        }

        // Narrow columns: one slanting line each.
        var size = Math.Clamp(width * 0.55, 8, 12);
        _canvas.Text(x + (size * 0.36), Bottom + 10, Cut(column.Singer.Alias, (int)(82 / (size * 0.6))), size, colour, "end", bold: true, turn: -60);
    }

    private static string Verdict(ChartColumn column) => string.Join(' ', Fits(column).Append(Octave(column.Octaves))).Trim();

    private static string[] Fits(ChartColumn column)
    {
        var (above, below) = (column.Fit.SemitonesAbove.ToDouble(), column.Fit.SemitonesBelow.ToDouble());
        return (above > 0, below > 0) switch
        {
            (true, true) => ["too wide"],
            (true, false) => [Semitones(above), "too high"],
            (false, true) => [Semitones(below), "too low"],
            _ => ["fits"],
        };
    }

    private static string Semitones(double count) => string.Create(CultureInfo.InvariantCulture, $"{count:0.#} {(count.Equals(1) ? "semitone" : "semitones")}");

    private static string Octave(int octaves) => octaves switch
    {
        0 => string.Empty,
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
            _canvas.Rectangle(x, y - 11, 20, 13, fill, edge, 2, dash);
            _canvas.Text(x + 26, y, text, 11.5, Ink);
            x += 26 + (text.Length * 6.1) + 20;
        }

        Entry(Range, RangeEdge, "comfortable range");
        Entry(RangeEnd, RangeEdge, "its top and bottom fifth");
        Entry(Sung, null, "a note, wider when sung longer");
        Entry(Outside, null, "outside the range");
        if (_content.Columns.Exists(c => c.Singer.IsRangeAssumed))
        {
            Entry("none", RangeEdge, "assumed, not measured", "4 3");
        }

        if (_content.Columns.Exists(c => c.Singer.FullLow is not null || c.Singer.FullHigh is not null))
        {
            _canvas.Line(x + 11, y - 12, x + 11, y + 3, RangeEdge, 1.4);
            _canvas.Line(x + 5, y - 12, x + 17, y - 12, RangeEdge, 1.4);
            _canvas.Line(x + 5, y + 3, x + 17, y + 3, RangeEdge, 1.4);
            _canvas.Text(x + 24, y, "full range", 11.5, Ink);
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
            _canvas.Text(Keys, 784 + (i * 17), lines[i], 10.5, Soft);
        }
    }

    private static string Cut(string text, int most) => text.Length <= most ? text : text[..Math.Max(1, most - 1)].TrimEnd() + "…";
}
