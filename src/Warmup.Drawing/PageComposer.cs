using System.Globalization;
using System.Text;
using Warmup.Sheets;

namespace Warmup.Drawing;

/// <summary>Fills pages from top to bottom, in one column or several: it breaks texts into lines, and begins a new column or page for what does not fit.</summary>
internal sealed class PageComposer
{
    public const double Margin = 42;

    // Greys that a photocopy keeps apart; only the first two are for text.
    public const string Ink = "#111111";
    public const string Soft = "#4d4d4d";
    public const string Hair = "#b0b0b0";

    // A variant's size, and the space before it, in parts of the letter's.
    private const double VariantSize = 0.62;
    private const double VariantSpace = 0.04;

    private const double Foot = 52;
    private const double Gap = 16;

    private readonly TextShaper _shaper;
    private readonly (double Width, double Height) _size;
    private int _columns = 1;
    private int _column;
    private double _top;
    private double _reserved;

    public PageComposer(TextShaper shaper, bool landscape = false)
    {
        _shaper = shaper;
        _size = landscape ? (Page.LongSide, Page.ShortSide) : (Page.ShortSide, Page.LongSide);
        NewPage();
    }

    public List<Page> Pages { get; } = [];

    /// <summary>Whether octaves are carets instead of dots.</summary>
    public bool HasCarets { get; init; }

    /// <summary>The first free height of the page.</summary>
    public double Y { get; set; }

    public double Left => Margin + (_column * (ColumnWidth + Gap));

    public double Right => Left + ColumnWidth;

    public double Bottom => _size.Height - Foot - _reserved;

    public TextShaper Shaper => _shaper;

    private double ColumnWidth => (_size.Width - (2 * Margin) - (Gap * (_columns - 1))) / _columns;

    /// <summary>From here on, the page and all further ones have columns.</summary>
    public void Divide(int columns) => (_columns, _column, _top) = (columns, 0, Y);

    /// <summary>A text in rows over the whole width of a page, whatever its columns.</summary>
    public List<string> BrokenWide(string text, double size) => Broken(text, size, _size.Width - (2 * Margin), int.MaxValue);

    /// <summary>Keeps room for rows at the foot of all pages.</summary>
    public void Reserve(int rows, double size) => _reserved = (rows * size * 1.35) + 6;

    /// <summary>Writes rows over the whole width into the room that was kept on each page.</summary>
    public void PutReserved(List<(string Kind, string Text)> rows, double size)
    {
        foreach (var page in Pages)
        {
            for (var r = 0; r < rows.Count; r++)
            {
                page.Shapes.Add(new TextShape(rows[r].Kind, Margin, Bottom + ((r + 1) * size * 1.35), size, _shaper.Of(rows[r].Text), rows[r].Kind == "legend" ? Soft : Ink));
            }
        }
    }

    /// <summary>Begins a new column, or a new page, unless this one has enough height left.</summary>
    /// <returns>Whether one was begun.</returns>
    public bool Need(double height)
    {
        // An empty page has as much room as the next one.
        if (Y + height <= Bottom || Y <= _top)
        {
            return false;
        }

        if (_column + 1 < _columns)
        {
            _column++;
            Y = _top;
        }
        else
        {
            NewPage();
        }

        return true;
    }

    public void Add(Shape shape) => Pages[^1].Shapes.Add(shape);

    /// <summary>Writes one line of text at a place.</summary>
    /// <returns>Its width.</returns>
    public double Put(string kind, double x, double y, string text, double size, string colour = Ink, double anchor = 0)
    {
        if (text.Length == 0)
        {
            return 0;
        }

        var shaped = _shaper.Of(text);
        Add(new TextShape(kind, x - (anchor * shaped.Width * size), y, size, shaped, colour));
        return shaped.Width * size;
    }

    /// <summary>Writes a paragraph between an indent and the right margin. It has a greatest number of lines; an ellipsis shows that it is longer.</summary>
    public void Paragraph(string kind, string text, double size, string colour = Ink, double indent = 0, int most = 12)
    {
        foreach (var line in Broken(text, size, Right - Left - indent, most))
        {
            Need(size * 1.35);
            Y += size * 1.35;
            Put(kind, Left + indent, Y - (size * 0.3), line, size, colour);
        }
    }

    /// <summary>Writes one line of text with the middle of its ink at a place.</summary>
    public void PutMiddle(string kind, double middle, double y, string text, double size, string colour = Ink) =>
        Put(kind, middle - (_shaper.Of(text).InkMiddle * size), y, text, size, colour);

    /// <summary>The width of a tone's variant, the space before it included, in parts of the letter's size.</summary>
    public static double VariantWidth(TextShaper shaper, SheetTone tone) => VariantSpace + (shaper.Of(tone.Variant).Width * VariantSize);

    /// <summary>Writes a tone with its variant and the signs of its octave.</summary>
    /// <param name="kind">What it stands for.</param>
    /// <param name="x">Its beginning, or the middle of its letter's ink.</param>
    /// <param name="y">Its baseline.</param>
    /// <param name="tone">The tone.</param>
    /// <param name="size">The letter's size.</param>
    /// <param name="middle">Whether the place is that of the middle.</param>
    /// <returns>The width of the letter and the variant.</returns>
    public double Tone(string kind, double x, double y, SheetTone tone, double size, bool middle = false)
    {
        var shaped = _shaper.Of(tone.Letter);
        x -= middle ? shaped.InkMiddle * size : 0;
        Add(new TextShape(kind, x, y, size, shaped, Ink));
        Octave(tone, x + (shaped.InkMiddle * size), tone.Octave > 0 ? y - (shaped.Top * size) : y + (shaped.Bottom * size), size);
        if (tone.Variant.Length > 0)
        {
            Put("variant", x + ((Math.Max(shaped.Width, shaped.InkRight) + VariantSpace) * size), y + (size * 0.18), tone.Variant, size * VariantSize);
        }

        return (shaped.Width * size) + (tone.Variant.Length > 0 ? VariantWidth(_shaper, tone) * size : 0);
    }

    /// <summary>Draws a dot for each octave, or a caret where a dot would be read as a vowel sign: up above the letter, down below it.</summary>
    private void Octave(SheetTone tone, double middle, double edge, double size)
    {
        var (count, isUpper) = (Math.Abs(tone.Octave), tone.Octave > 0);
        var kind = isUpper ? "octave above" : "octave below";
        var radius = size * 0.085;
        var up = isUpper ? -1 : 1;
        for (var d = 0; d < count; d++)
        {
            var offset = d - ((count - 1) / 2.0);
            if (HasCarets)
            {
                var (x, half) = (middle + (offset * radius * 5), radius * 2);
                var (foot, tip) = (edge + (up * radius * 1.2), edge + (up * radius * 3.2));
                Add(new StrokeShape(kind, x - half, foot, x, tip, 0.8, Ink));
                Add(new StrokeShape(kind, x, tip, x + half, foot, 0.8, Ink));
            }
            else
            {
                Add(new DotShape(kind, middle + (offset * radius * 3), edge + (up * radius * 2.6), radius, Ink));
            }
        }
    }

    /// <summary>Writes the foot of every page: what the drawing is, the page number, the most urgent caution, and what these notes are not.</summary>
    public void Feet(string title, string note)
    {
        for (var p = 0; p < Pages.Count; p++)
        {
            var y = _size.Height - Foot + 16;
            void Say(string text, double x, double at, string colour, double anchor = 0)
            {
                var shaped = _shaper.Of(text);
                Pages[p].Shapes.Add(new TextShape("foot", x - (anchor * shaped.Width * 8), at, 8, shaped, colour));
            }

            var (left, right) = (Margin, _size.Width - Margin);
            Pages[p].Shapes.Add(new StrokeShape("rule", left, y - 10, right, y - 10, 0.5, Hair));
            if (note.Length > 0)
            {
                Say(note, left, y, Ink);
            }

            Say(Cautions.All[0].Text, left, y + 11, Ink);
            var number = string.Create(CultureInfo.InvariantCulture, $"{p + 1} / {Pages.Count}");
            Say(number, right, y + 22, Soft, 1);
            Say(Broken(title, 8, right - left - 60, 1)[0], left, y + 22, Soft);
        }
    }

    /// <summary>Breaks a text into lines of at most a width: between words, and inside a word that is wider itself.</summary>
    public List<string> Broken(string text, double size, double width, int most)
    {
        var lines = new List<string>();
        var line = new StringBuilder();
        double used = 0;
        foreach (var part in Parts(text, size, width))
        {
            var wide = _shaper.Width(part.TrimEnd(), size);
            if (line.Length > 0 && used + wide > width)
            {
                if (lines.Count == most - 1)
                {
                    return [.. lines, Shortened(line.ToString(), size, width)];
                }

                lines.Add(line.ToString().TrimEnd());
                line.Clear();
                used = 0;
            }

            line.Append(part);
            used += _shaper.Width(part, size);
        }

        lines.Add(line.ToString().TrimEnd());
        return lines;
    }

    /// <summary>The words of a text with the spaces after them; a word that is wider than a line, letter by letter.</summary>
    private IEnumerable<string> Parts(string text, double size, double width)
    {
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (_shaper.Width(word, size) <= width)
            {
                yield return word + " ";
                continue;
            }

            var letters = StringInfo.GetTextElementEnumerator(word);
            while (letters.MoveNext())
            {
                yield return letters.GetTextElement();
            }

            yield return " ";
        }
    }

    private string Shortened(string line, double size, double width)
    {
        var letters = new StringInfo(line.TrimEnd());
        var count = letters.LengthInTextElements;
        while (count > 0 && _shaper.Width(letters.SubstringByTextElements(0, count) + "\u2026", size) > width)
        {
            count--;
        }

        return (count > 0 ? letters.SubstringByTextElements(0, count) : string.Empty) + "\u2026";
    }

    private void NewPage()
    {
        Pages.Add(new Page(_size.Width, _size.Height));
        (_column, _top, Y) = (0, Margin, Margin);
    }
}
