using System.Globalization;
using System.Text;

namespace Warmup.Sheets;

/// <summary>A sheet in plain text (UTF-8, each line ends with a line feed): what is sung, on which notes, how fast, and the cautions.</summary>
/// <remarks>Immutable, safe to share between threads.</remarks>
public sealed class TextSheetFormat : IScoreFormat
{
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

        foreach (var caution in score.Cautions)
        {
            writer.WriteLine($"- {caution.Text} ({caution.Source})");
        }

        if (Options.HasHiddenNotes)
        {
            WriteKey(writer, key, cancellationToken);
        }
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

            var text = new TextBlock(section.Section.Meter, block);
            var indent = text.HasWholeRows ? digits + 2 : digits + 6;
            if (text.Header() is { Length: > 0 } header)
            {
                writer.WriteLine($"{new string(' ', indent)}{header}");
            }

            for (var l = 0; l < block.Lines.Count; l++)
            {
                WriteLine(writer, text, l, block.Lines[l].Number.ToString(CultureInfo.InvariantCulture).PadLeft(digits), indent);
            }
        }
    }

    private static void WriteLine(TextWriter writer, TextBlock block, int index, string label, int indent)
    {
        foreach (var (speedLines, letters, akshara) in block.Rows(index))
        {
            if (speedLines.Length > 0)
            {
                writer.WriteLine($"{new string(' ', indent)}{speedLines}");
            }

            var place = block.HasWholeRows ? string.Empty : string.Create(CultureInfo.InvariantCulture, $"  .{akshara + 1}");
            writer.WriteLine($"{(label + place).PadRight(indent)}{letters}".TrimEnd());
            label = new string(' ', label.Length);
        }
    }

    private void WriteLegend(TextWriter writer, Sheet sheet)
    {
        var (beat, group, bar) = sheet.Sections[0].TimeNames;
        writer.WriteLine(
            $"{SheetSign.Hold} hold one more unit   {SheetSign.Breath} breathe   {SheetSign.Silence} silence   {TextBlock.AngaEnd} end of {MeterWords.An(group)}   "
            + $"{TextBlock.AvartanaEnd} end of {MeterWords.An(bar)}   ' upper octave   _ lower octave");
        if (sheet.HasFasterSpeeds)
        {
            writer.WriteLine($"Over the letters of {MeterWords.An(beat)}: --- one line, the second speed   === two lines, the third   \u2261\u2261\u2261 three lines, the fourth");
        }

        if (sheet.VariantLegend is { Length: > 0 } variants)
        {
            writer.WriteLine(variants);
        }

        if (Options.HasHiddenNotes)
        {
            writer.WriteLine($"{SheetTone.Blank.Letter} a note to hear and write down; the key is on the last page");
        }

        writer.WriteLine($"A number over a column counts the {beat}s; .5 before a row says that it begins with {beat} 5.");
    }
}
