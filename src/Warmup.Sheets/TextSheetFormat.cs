using System.Globalization;
using System.Text;

namespace Warmup.Sheets;

/// <summary>A sheet in plain text (UTF-8, lines end with a line feed): what is sung, on which notes, how fast, and the cautions.</summary>
/// <param name="options">The options; the default ones where left out.</param>
public sealed class TextSheetFormat(TextSheetOptions? options = null) : IScoreFormat
{
    /// <summary>The sentence that stands on every sheet.</summary>
    public const string NotTheRaga = "These are the scale's notes, not the raga: its phrases and ornaments come from the teacher.";

    /// <summary>The options.</summary>
    public TextSheetOptions Options { get; } = options ?? TextSheetOptions.Default;

    /// <inheritdoc/>
    public string Name => "text sheet";

    /// <inheritdoc/>
    public ValueList<string> Extensions => [".txt"];

    /// <inheritdoc/>
    public void Write(Score score, Stream destination, CancellationToken cancellationToken = default)
    {
        var letters = new SungLetters(score, Options.Letters);
        using var writer = new StreamWriter(destination, new UTF8Encoding(false), leaveOpen: true) { NewLine = "\n" };
        writer.WriteLine(score.Title);
        foreach (var section in score.Sections)
        {
            cancellationToken.ThrowIfCancellationRequested();
            writer.WriteLine();
            if (score.Sections.Count > 1)
            {
                writer.WriteLine(section.Title);
            }

            Head(writer, section, letters);
            writer.WriteLine();
            Lines(writer, section, letters, cancellationToken);
        }

        writer.WriteLine();
        Legend(writer, score);
        foreach (var finding in score.Findings)
        {
            writer.WriteLine($"Note: {finding.Describe()}.");
        }

        writer.WriteLine();
        writer.WriteLine(NotTheRaga);
        foreach (var caution in Cautions.All)
        {
            writer.WriteLine($"- {caution.Text} ({caution.Source})");
        }
    }

    private static void Head(TextWriter writer, Section section, SungLetters letters)
    {
        writer.WriteLine($"Scale   {section.Scale.Name}");
        writer.WriteLine($"  up    {letters.Row(section.Scale.Ascent)}");
        writer.WriteLine($"  down  {letters.Row(section.Scale.Descent)}");
        foreach (var (label, text) in SheetHeader.Rows(section))
        {
            writer.WriteLine($"{label,-8}{text}");
        }
    }

    private static void Lines(TextWriter writer, Section section, SungLetters letters, CancellationToken cancellationToken)
    {
        var breaths = new Dictionary<int, Breath>(section.Breaths.Count);
        foreach (var breath in section.Breaths)
        {
            breaths[breath.AfterNote] = breath;
        }

        var digits = section.Lines.Count.ToString(CultureInfo.InvariantCulture).Length;
        var runs = SpeedRun.Of(section);
        foreach (var run in runs)
        {
            cancellationToken.ThrowIfCancellationRequested();
            var block = new SvaraBlock(section, run.First, run.End, breaths, letters);
            var indent = digits + 2;
            if (runs.Count > 1)
            {
                if (run.First > 0)
                {
                    writer.WriteLine();
                }

                writer.WriteLine(SheetHeader.Of(section, run));
            }

            if (!block.HasWholeRows)
            {
                indent += 4;
            }

            if (block.Header() is { Length: > 0 } header)
            {
                writer.WriteLine($"{new string(' ', indent)}{header}");
            }

            for (var l = run.First; l < run.End; l++)
            {
                WriteLine(writer, block, l, digits, indent);
            }
        }
    }

    private static void WriteLine(TextWriter writer, SvaraBlock block, int line, int digits, int indent)
    {
        var label = (line + 1).ToString(CultureInfo.InvariantCulture).PadLeft(digits);
        foreach (var (marks, letters, akshara) in block.Rows(line))
        {
            if (marks.Length > 0)
            {
                writer.WriteLine($"{new string(' ', indent)}{marks}");
            }

            var place = block.HasWholeRows ? string.Empty : string.Create(CultureInfo.InvariantCulture, $"  .{akshara + 1}");
            writer.WriteLine($"{(label + place).PadRight(indent)}{letters}".TrimEnd());
            label = new string(' ', digits);
        }
    }

    private static void Legend(TextWriter writer, Score score)
    {
        writer.WriteLine(
            $"{SvaraCells.Hold} hold one more unit   {SvaraCells.Breath} breathe   {SvaraCells.Silence} silence   {SvaraBlock.AngaEnd} end of an anga   "
            + $"{SvaraBlock.AvartanaEnd} end of an avartana   ' upper octave   _ lower octave");
        if (((IEnumerable<Section>)score.Sections).Any(s => ((IEnumerable<ScoreLine>)s.Lines).Any(l => l.Speed.Kalam > 1)))
        {
            writer.WriteLine("Over the letters of an akshara: --- one line, the second speed   === two lines, the third   \u2261\u2261\u2261 three lines, the fourth");
        }

        writer.WriteLine("A number over a column counts the aksharas; .5 before a row says that it begins with akshara 5.");
    }
}
