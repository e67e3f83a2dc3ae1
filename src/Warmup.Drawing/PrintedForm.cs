using System.Globalization;
using System.Text;

namespace Warmup.Drawing;

/// <summary>A form on pages of A4: a table to fill in by hand or filled in already, numbered steps, what was sung as a picture, and the cautions with their sources.</summary>
/// <remarks>Equal forms give equal bytes on the same system. Immutable, value equality.</remarks>
public sealed record PrintedForm
{
    /// <summary>The longest title, in characters.</summary>
    internal const int LongestTitle = 100;

    // The project's own bounds.
    private const int MostParts = 20;
    private const int MostColumns = 12;
    private const int MostRows = 20_000;
    private const int LongestHeading = 60;
    private const int LongestCell = 100;
    private const int MostSung = 20_000;

    private readonly ValueList<FormPart> _parts;
    private readonly ValueList<ValueList<string>> _rows;
    private readonly ValueList<SungNote> _sung;
    private readonly int _wideColumn;

    /// <summary>Makes a form.</summary>
    /// <param name="title">The title, at most 100 characters without control characters.</param>
    /// <param name="columns">
    /// The columns of the table, 1 to 12, by headings of at most 60 characters without control characters. The first is twice as wide as the others, unless <see cref="WideColumn"/> names another.
    /// </param>
    /// <exception cref="ArgumentException">A text is missing, too long or holds control characters, or there are no or too many columns.</exception>
    public PrintedForm(string title, ValueList<string> columns)
    {
        Title = Require.PlainText(title, LongestTitle);
        Require.InRange(columns.Count, 1, MostColumns, "the number of columns");
        Columns = Cells(columns, LongestHeading, nameof(columns));
    }

    /// <summary>The title.</summary>
    public string Title { get; }

    /// <summary>The headings of the table's columns.</summary>
    public ValueList<string> Columns { get; }

    /// <summary>The table's rows, at most 20,000, each by what stands in its first cells already; an empty one is blank. None by default.</summary>
    /// <exception cref="ArgumentException">
    /// There are too many rows, a row has more cells than there are columns, or a cell is missing, longer than 100 characters or holds control characters.
    /// </exception>
    public ValueList<ValueList<string>> Rows
    {
        get => _rows;
        init
        {
            Require.InRange(value.Count, 0, MostRows, "the number of rows");
            foreach (var row in value)
            {
                Require.InRange(row.Count, 0, Columns.Count, "the number of cells of a row");
                Cells(row, LongestCell, nameof(Rows));
            }

            _rows = value;
        }
    }

    /// <summary>The column that is twice as wide as the others, from 0; 0, the first, by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such column.</exception>
    public int WideColumn
    {
        get => _wideColumn;
        init => _wideColumn = Require.InRange(value, 0, Columns.Count - 1, nameof(WideColumn));
    }

    /// <summary>
    /// Notes that were to be sung, at most 20,000, with what was sung of them: a picture above the table, in all formats but plain text. None by default.
    /// </summary>
    /// <exception cref="ArgumentException">There are too many, or one is missing.</exception>
    public ValueList<SungNote> Sung
    {
        get => _sung;
        init => _sung = Whole(value, MostSung, "the number of sung notes", nameof(Sung));
    }

    /// <summary>The parts with the steps, at most 20, in their order; none by default.</summary>
    /// <exception cref="ArgumentException">There are too many, or one is missing.</exception>
    public ValueList<FormPart> Parts
    {
        get => _parts;
        init => _parts = Whole(value, MostParts, "the number of parts", nameof(Parts));
    }

    /// <summary>Writes the form as PDF, with the fonts it uses.</summary>
    /// <param name="destination">Where the bytes go; it is not closed.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ExportException">No font has a glyph for a character.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public void WritePdf(Stream destination, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(destination);
        PdfPages.Write(Draw(), DrawingFonts.Noto, destination, cancellationToken);
    }

    /// <summary>Writes the form as SVG, the pages one below the other.</summary>
    /// <param name="destination">Where the bytes go, in UTF-8; it is not closed.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ExportException">No font has a glyph for a character.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public void WriteSvg(Stream destination, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(destination);
        using var typefaces = new Typefaces(DrawingFonts.Noto);
        SvgPages.Write(Draw(), typefaces, destination, cancellationToken);
    }

    /// <summary>Writes the form as a PNG picture with 150 dots an inch, the pages one below the other.</summary>
    /// <param name="destination">Where the bytes go; it is not closed.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ExportException">No font has a glyph for a character, or there are more than <see cref="PngFormat.MostDots"/>.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public void WritePng(Stream destination, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(destination);
        PngPages.Write(Draw().Pages, DrawingFonts.Noto, new SheetOptions().DotsPerInch, destination, cancellationToken);
    }

    /// <summary>Writes the form as plain text: the table with lines to write on, the steps and the cautions.</summary>
    /// <param name="destination">Where the bytes go, in UTF-8; it is not closed.</param>
    public void WriteText(Stream destination)
    {
        ArgumentNullException.ThrowIfNull(destination);
        using var text = new StreamWriter(destination, new UTF8Encoding(false), leaveOpen: true) { NewLine = "\n" };
        text.WriteLine(Title);
        text.WriteLine();
        var widths = Columns.Select((c, i) => Math.Max(8, Math.Max(c.Length, Rows.Max(r => i < r.Count ? r[i].Length : 0)))).ToList();
        text.WriteLine(string.Join("  ", Columns.Select((c, i) => c.PadRight(widths[i]))).TrimEnd());
        foreach (var row in Rows)
        {
            text.WriteLine(string.Join("  ", widths.Select((w, i) => i < row.Count && row[i].Length > 0 ? row[i].PadRight(w) : new string('_', w))).TrimEnd());
        }

        foreach (var part in Parts)
        {
            text.WriteLine();
            text.WriteLine(part.Heading);
            for (var s = 0; s < part.Steps.Count; s++)
            {
                text.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{s + 1}. {part.Steps[s]}"));
            }
        }

        text.WriteLine();
        foreach (var caution in Cautions.All)
        {
            text.WriteLine($"- {caution.Text} ({caution.Source})");
        }
    }

    /// <summary>The title, and how much there is.</summary>
    public override string ToString() => OneLine.Of(string.Create(CultureInfo.InvariantCulture, $"{Title}: {Rows.Count} rows, {Parts.Count} parts"));

    private static ValueList<T> Whole<T>(ValueList<T> items, int most, string count, string name)
        where T : class
    {
        Require.InRange(items.Count, 0, most, count);
        foreach (var item in items)
        {
            Require.NotNull(item, name);
        }

        return items;
    }

    private static ValueList<string> Cells(ValueList<string> texts, int longest, string name)
    {
        foreach (var text in texts)
        {
            Require.PlainText(text, longest, name);
        }

        return texts;
    }

    private PageSet Draw()
    {
        using var shaper = new TextShaper(DrawingFonts.Noto);
        return new FormDrawing(this, shaper).Draw();
    }
}
