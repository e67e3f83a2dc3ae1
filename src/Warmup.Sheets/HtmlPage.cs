using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Unicode;

namespace Warmup.Sheets;

/// <summary>Writes a practice page from its first line to its last.</summary>
internal sealed class HtmlPage(StreamWriter writer, Score score, HtmlOptions options)
{
    private static readonly string[] LineCounts = [string.Empty, string.Empty, "one line", "two lines", "three lines"];
    private static readonly string[] SpeedNames = [string.Empty, "first", "second", "third", "fourth"];

    // Letters of all scripts stay as they are; whatever could be markup is encoded.
    private readonly HtmlEncoder _encoder = HtmlEncoder.Create(UnicodeRanges.All);
    private readonly List<int> _cells = [];

    public void Write(CancellationToken cancellation)
    {
        var key = Sheet.Of(score, options.Letters, cancellation);
        var sheet = options.HasHiddenNotes ? key.WithHiddenNotes(cancellation) : key;
        var (script, style) = (HtmlResource.Script(), HtmlResource.Style());
        Head(script, style);
        new HtmlControls(writer, score, options).Write();
        writer.WriteLine("<main>");
        var lines = new HtmlLines(writer, _encoder, _cells);
        foreach (var section in sheet.Sections)
        {
            cancellation.ThrowIfCancellationRequested();
            writer.WriteLine("<section>");
            if (score.Sections.Count > 1)
            {
                writer.WriteLine($"<h2>{Text(section.Section.Title)}</h2>");
            }

            Facts(section);
            lines.Write(section, score.Sections.Count > 1, cancellation);
            writer.WriteLine("</section>");
        }

        if (options.HasHiddenNotes)
        {
            Key(key);
        }

        writer.WriteLine("</main>");
        Foot(sheet);
        writer.Write("<script type=\"application/json\" id=\"score\">");
        writer.Write(Encoding.UTF8.GetString(HtmlScore.Json(score, sheet.Sections[0].Words, options, _cells, cancellation)));
        writer.WriteLine("</script>");
        writer.WriteLine($"<script>{script.Text}</script>");
        writer.WriteLine("</body>");
        writer.WriteLine("</html>");
    }

    private string Text(string text) => _encoder.Encode(text);

    private void Head(HtmlResource script, HtmlResource style)
    {
        writer.WriteLine("<!DOCTYPE html>");
        writer.WriteLine("<html lang=\"en\">");
        writer.WriteLine("<head>");
        writer.WriteLine("<meta charset=\"utf-8\">");
        writer.WriteLine($"<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; script-src {script.Hash}; style-src {style.Hash}; media-src blob:; base-uri 'none'; form-action 'none'\">");
        writer.WriteLine("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">");
        writer.WriteLine("<meta name=\"color-scheme\" content=\"light dark\">");
        writer.WriteLine($"<title>{Text(score.Title)}</title>");
        writer.WriteLine($"<style>{style.Text}</style>");
        writer.WriteLine("</head>");
        writer.WriteLine("<body>");
        writer.WriteLine($"<header><h1>{Text(score.Title)}</h1></header>");
    }

    private void Facts(SheetSection section)
    {
        writer.WriteLine("<dl>");
        ValueList<(string Label, string Text)> rows =
        [
            ("Scale", section.Section.Scale.Name),
            (Capital(section.Words.Ascent), SheetTone.Row(section.Ascent)),
            (Capital(section.Words.Descent), SheetTone.Row(section.Descent)),
            .. section.Header,
        ];
        foreach (var (label, text) in rows)
        {
            writer.WriteLine($"<div><dt>{label}</dt><dd>{Text(text)}</dd></div>");
        }

        writer.WriteLine("</dl>");
    }

    /// <summary>Writes the lines with their notes, closed until the reader opens them.</summary>
    private void Key(Sheet key)
    {
        writer.WriteLine("<details class=\"key\"><summary>Key: what you heard. Open it before printing to have it on a page of its own.</summary>");
        foreach (var section in key.Sections)
        {
            if (key.Sections.Count > 1)
            {
                writer.WriteLine($"<h2>{Text(section.Section.Title)}</h2>");
            }

            foreach (var block in section.Blocks)
            {
                writer.WriteLine("<ol>");
                foreach (var line in block.Lines)
                {
                    var signs = line.Signs.Where(s => s.Kind is SheetSignKind.Note or SheetSignKind.Hold).Select(s => s.Tone?.Dotted ?? s.Text);
                    writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"<li value=\"{line.Number}\">{Text(string.Join(' ', signs))}</li>"));
                }

                writer.WriteLine("</ol>");
            }
        }

        writer.WriteLine("</details>");
    }

    private static string Capital(string word) => char.ToUpperInvariant(word[0]) + word[1..];

    /// <summary>What the signs mean that stand on the page, and no others.</summary>
    private string Legend(Sheet sheet)
    {
        var (signs, words) = (sheet.Signs, sheet.Sections[0].Words);
        string?[] all =
        [
            signs.HasHolds ? $"<b>{SheetSign.Hold}</b> hold one more unit" : null,
            signs.HasBreaths ? $"<b>{SheetSign.Breath}</b> breathe" : null,
            signs.HasSilences ? $"<b>{SheetSign.Silence}</b> silence" : null,
            signs.HasGroups ? $"a thin bar ends {MeterWords.An(words.Group)}" : null,
            signs.HasBars ? $"a double bar ends the {words.Bar}" : null,
            signs.HasUpperOctave ? $"{sheet.OctaveSign} over a letter is the upper octave" : null,
            signs.HasLowerOctave ? $"{(sheet.HasCarets ? "v" : "a dot")} under it the lower" : null,
            $"the numbers over the letters count the {words.Beat}s, the others the lines",
            signs.Speeds.IsEmpty ? null : "over the letters " + string.Join(", ", signs.Speeds.ConvertAll(k => $"{LineCounts[k]} for the {SpeedNames[k]} speed")),
            signs.HasAnswers ? $"shaded {words.Beat}s are left silent for your answer" : null,
            sheet.VariantLegend.Length > 0 ? Text(sheet.VariantLegend) : null,
        ];
        return "Signs: " + string.Join("; ", all.Where(part => part is not null)) + ".";
    }

    private void Foot(Sheet sheet)
    {
        writer.WriteLine("<footer>");
        writer.WriteLine($"<p class=\"legend\">{Legend(sheet)}</p>");
        foreach (var finding in score.Findings)
        {
            writer.WriteLine($"<p class=\"finding\">Note: {Text(finding.Describe())}.</p>");
        }

        if (!sheet.IsSolfege)
        {
            writer.WriteLine($"<p class=\"raga\">{Text(TextSheetFormat.NotTheRaga)}</p>");
        }

        writer.WriteLine("<h2 id=\"cautions\">Take care of the voice</h2>");
        writer.WriteLine("<ul aria-labelledby=\"cautions\">");
        foreach (var caution in score.Cautions)
        {
            writer.WriteLine($"<li>{Text(caution.Text)} <cite>{Text(caution.Source)}</cite></li>");
        }

        writer.WriteLine("</ul>");
        writer.WriteLine("</footer>");
    }
}
