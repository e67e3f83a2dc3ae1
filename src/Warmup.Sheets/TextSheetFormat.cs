using System.Globalization;
using System.Text;

namespace Warmup.Sheets;

/// <summary>A sheet in plain text (UTF-8, lines end with a line feed): what is sung, on which notes, how fast, and the cautions.</summary>
public sealed class TextSheetFormat : IScoreFormat
{
    /// <summary>The sentence that stands on every sheet.</summary>
    public const string NotTheRaga = "These are the scale's notes, not the raga: its phrases and ornaments come from the teacher.";

    /// <inheritdoc/>
    public string Name => "text sheet";

    /// <inheritdoc/>
    public ValueList<string> Extensions => [".txt"];

    /// <inheritdoc/>
    public void Write(Score score, Stream destination, CancellationToken cancellationToken = default)
    {
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

            Head(writer, section);
            writer.WriteLine();
            Lines(writer, section, cancellationToken);
        }

        writer.WriteLine();
        writer.WriteLine($"{SvaraLine.Hold} hold one more unit   {SvaraLine.Breath} breathe   {SvaraLine.Silence} silence   {SvaraLine.AngaEnd} end of an anga   {SvaraLine.AvartanaEnd} end of an avartana   ' upper octave   _ lower octave");
        foreach (var finding in score.Findings)
        {
            writer.WriteLine($"Note: {finding}.");
        }

        writer.WriteLine();
        writer.WriteLine(NotTheRaga);
        foreach (var caution in Cautions.All)
        {
            writer.WriteLine($"- {caution.Text} ({caution.Source})");
        }
    }

    private static void Head(TextWriter writer, Section section)
    {
        var invariant = CultureInfo.InvariantCulture;
        writer.WriteLine($"Scale   {section.Scale.Name}");
        writer.WriteLine($"  up    {string.Join(' ', section.Scale.Ascent)}");
        writer.WriteLine($"  down  {string.Join(' ', section.Scale.Descent)}");
        var offset = section.Tonic.OffsetCents == 0 ? string.Empty : string.Create(invariant, $", {section.Tonic.OffsetCents:+0.0;-0.0} cents");
        writer.WriteLine(string.Create(invariant, $"Tonic   S = {section.TonicName} (kattai {section.Tonic.KattaiNumber}{offset}, {section.Tonic.Hz:0.00} Hz)"));
        writer.WriteLine($"Tuning  {section.Tuning.Name}");
        writer.WriteLine(string.Create(invariant, $"Time    {section.Meter}, {section.Tempo.ToDouble():0.###} aksharas a minute, {section.Speed}, {section.Delivery}"));
        writer.WriteLine(string.Create(invariant, $"Length  {section.Seconds.ToDouble():0.0} s, {section.Lines.Count} lines, {section.Notes.Count} notes"));
    }

    private static void Lines(TextWriter writer, Section section, CancellationToken cancellationToken)
    {
        var lines = new List<List<string>>(section.Lines.Count);
        var width = 1;
        for (var i = 0; i < section.Lines.Count; i++)
        {
            cancellationToken.ThrowIfCancellationRequested();
            var cells = SvaraLine.Cells(section, i);
            foreach (var cell in cells)
            {
                width = Math.Max(width, cell is SvaraLine.AngaEnd or SvaraLine.AvartanaEnd ? 1 : cell.Length);
            }

            lines.Add(cells);
        }

        var digits = section.Lines.Count.ToString(CultureInfo.InvariantCulture).Length;
        for (var i = 0; i < lines.Count; i++)
        {
            writer.WriteLine($"{(i + 1).ToString(CultureInfo.InvariantCulture).PadLeft(digits)}  {SvaraLine.Join(lines[i], width)}");
        }
    }
}
