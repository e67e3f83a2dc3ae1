using System.Globalization;
using System.Text;

namespace Warmup.Sheets;

/// <summary>A sheet in plain text (UTF-8, each line ends with a line feed): what is sung, on which notes, how fast, and the cautions.</summary>
/// <remarks>Immutable, safe to share between threads.</remarks>
public sealed class TextSheetFormat : IScoreFormat
{
    // The project's own settings, in letters; a word may reach over the end of a row.
    private const int CautionWidth = 112;
    private const int CautionRows = 5;
    private const int LongestWord = 14;

    private static readonly string[] OverLetters = [string.Empty, string.Empty, "--- one line, the second speed", "=== two lines, the third speed", "\u2261\u2261\u2261 three lines, the fourth speed"];

    /// <summary>The format with the default options.</summary>
    public TextSheetFormat()
        : this(TextSheetOptions.Default)
    {
    }

    /// <summary>The format with options.</summary>
    /// <param name="options">The options.</param>
    public TextSheetFormat(TextSheetOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        Options = options;
    }

    /// <summary>The sentence on every sheet that says what its notes are not.</summary>
    public static string NotTheRaga => "These are the scale's notes, not the raga: its phrases and ornaments come from the teacher.";

    /// <summary>The options.</summary>
    public TextSheetOptions Options { get; }

    /// <inheritdoc/>
    public string Name => "text sheet";

    /// <inheritdoc/>
    public ValueList<string> Extensions => [".txt"];

    /// <inheritdoc/>
    public void Write(Score score, Stream destination, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(score);
        ArgumentNullException.ThrowIfNull(destination);
        var key = Sheet.Of(score, Options.Letters, cancellationToken);
        var sheet = Options.HasHiddenNotes ? key.WithHiddenNotes(cancellationToken) : key;
        using var writer = new StreamWriter(destination, new UTF8Encoding(false), leaveOpen: true) { NewLine = "\n" };
        writer.WriteLine(score.Title);
        foreach (var section in sheet.Sections)
        {
            cancellationToken.ThrowIfCancellationRequested();
            writer.WriteLine();
            if (sheet.Sections.Count > 1)
            {
                writer.WriteLine(section.Section.Title);
            }

            WriteHeader(writer, section);
            writer.WriteLine();
            WriteBlocks(writer, section, cancellationToken);
        }

        writer.WriteLine();
        WriteLegend(writer, sheet);
        foreach (var finding in score.Findings)
        {
            writer.WriteLine($"Note: {finding.Describe()}.");
        }

        writer.WriteLine();
        if (!sheet.IsSolfege)
        {
            writer.WriteLine(NotTheRaga);
        }

        foreach (var line in Wrapped(sheet.CautionText))
        {
            writer.WriteLine(line);
        }

        if (Options.HasHiddenNotes)
        {
            WriteKey(writer, key, cancellationToken);
        }
    }

    /// <summary>The cautions in rows between words, at most five of them.</summary>
    private static IEnumerable<string> Wrapped(string text)
    {
        var widest = Math.Max(CautionWidth, (text.Length / CautionRows) + LongestWord);
        while (text.Length > widest)
        {
            var end = text.LastIndexOf(' ', widest);
            yield return text[..end];
            text = text[(end + 1)..];
        }

        yield return text;
    }

    /// <summary>Writes the lines with their notes, after a form feed, which begins a new page on paper.</summary>
    private static void WriteKey(TextWriter writer, Sheet key, CancellationToken cancellationToken)
    {
        writer.WriteLine($"\fKey to {key.Score.Title}");
        foreach (var section in key.Sections)
        {
            writer.WriteLine();
            if (key.Sections.Count > 1)
            {
                writer.WriteLine(section.Section.Title);
            }

            WriteBlocks(writer, section, cancellationToken);
        }
    }

    private static void WriteHeader(TextWriter writer, SheetSection section)
    {
        writer.WriteLine($"Scale   {section.Section.Scale.Name}");
        var (up, down) = section.ListNames;
        var width = Math.Max(up.Length, down.Length);
        writer.WriteLine($"  {up.PadRight(width)}  {SheetTone.Row(section.Ascent)}");
        writer.WriteLine($"  {down.PadRight(width)}  {SheetTone.Row(section.Descent)}");
        foreach (var (label, text) in section.Header)
        {
            writer.WriteLine($"{label,-8}{text}");
        }
    }

    private static void WriteBlocks(TextWriter writer, SheetSection section, CancellationToken cancellationToken)
    {
        var digits = section.Section.Lines.Count.ToString(CultureInfo.InvariantCulture).Length;
        for (var b = 0; b < section.PrintedBlocks.Count; b++)
        {
            cancellationToken.ThrowIfCancellationRequested();
            var block = section.PrintedBlocks[b];
            if (section.PrintedBlocks.Count > 1 || block.Times > 1)
            {
                if (b > 0)
                {
                    writer.WriteLine();
                }

                writer.WriteLine(block.Heading);
            }

            WriteRows(writer, new TextBlock(section.Section, block), digits);
        }
    }

    private static void WriteRows(TextWriter writer, TextBlock block, int digits)
    {
        var invariant = CultureInfo.InvariantCulture;
        var indent = new string(' ', block.HasWholeRows ? digits + 2 : digits + 11);
        if (block.Header() is { Length: > 0 } header)
        {
            writer.WriteLine($"{indent}{header}");
        }

        for (var r = 0; r < block.Count; r++)
        {
            var (speedLines, letters, numbers) = block.Row(r);
            var (line, akshara) = block.Label(r);
            var place = akshara == 1 ? string.Empty : string.Create(invariant, $"  from {akshara}");
            var label = (line?.ToString(invariant) ?? string.Empty).PadLeft(digits) + place;
            Write(speedLines, indent);
            writer.WriteLine($"{label.PadRight(indent.Length)}{letters}".TrimEnd());
            Write(numbers, indent);
        }

        void Write(string row, string before)
        {
            if (row.Length > 0)
            {
                writer.WriteLine($"{before}{row}");
            }
        }
    }

    private void WriteLegend(TextWriter writer, Sheet sheet)
    {
        var (beat, group, bar) = sheet.Sections[0].TimeNames;
        var signs = sheet.Signs;
        Write(
            [
                signs.HasHolds ? $"{SheetSign.Hold} hold one more unit" : null,
                signs.HasBreaths ? $"{SheetSign.Breath} breathe" : null,
                signs.HasSilences || signs.HasAnswers ? $"{SheetSign.Silence} silence" : null,
                signs.HasGroups ? $"{TextBlock.AngaEnd} end of {MeterWords.An(group)}" : null,
                signs.HasBars ? $"{TextBlock.AvartanaEnd} end of {MeterWords.An(bar)}" : null,
                signs.HasUpperOctave ? "' upper octave" : null,
                signs.HasLowerOctave ? "_ lower octave" : null,
            ]);
        Write([.. signs.Speeds.Select((kalam, i) => $"{(i == 0 ? $"Over the letters of {MeterWords.An(beat)}: " : string.Empty)}{OverLetters[kalam]}")]);
        Write([sheet.VariantLegend]);
        Write([Options.HasHiddenNotes ? $"{SheetTone.Blank.Letter} a note to hear and write down; the key is on the last page" : null]);
        var blocks = sheet.Sections.SelectMany(s => s.PrintedBlocks.Select(b => new TextBlock(s.Section, b))).ToList();
        Write(
            [
                blocks.Exists(b => b.Header().Length > 0) ? $"A number over a column counts the {beat}s" : null,
                blocks.Exists(b => Enumerable.Range(0, b.Count).Any(r => b.Row(r).Numbers.Length > 0)) ? "one under a letter is that of the line which begins there" : null,
                blocks.Exists(b => Enumerable.Range(0, b.Count).Any(r => b.Label(r).Akshara > 1)) ? $"\"from 5\" before a row: it begins with {beat} 5 of the {bar}" : null,
            ],
            "; ");

        void Write(ReadOnlySpan<string?> parts, string between = "   ")
        {
            var row = string.Join(between, parts.ToArray().Where(p => p is { Length: > 0 }));
            if (row.Length > 0)
            {
                writer.WriteLine(row);
            }
        }
    }
}
