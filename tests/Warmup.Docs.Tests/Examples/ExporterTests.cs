#region exporter
using System.Globalization;
using System.Text;
using Warmup;

namespace Studio;

/// <summary>The sung notes as a table: comma-separated values (RFC 4180), a row a note, in seconds and hertz.</summary>
public sealed class NoteTableFormat : IScoreFormat
{
    /// <inheritdoc/>
    public string Name => "table of notes";

    /// <inheritdoc/>
    public ValueList<string> Extensions => [".csv"];

    /// <inheritdoc/>
    public void Write(Score score, Stream destination, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(score);
        ArgumentNullException.ThrowIfNull(destination);
        using var writer = new StreamWriter(destination, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), leaveOpen: true) { NewLine = "\r\n" };
        writer.WriteLine("line,begins,lasts,hertz,syllable");
        var begins = score.SectionStarts();
        for (var s = 0; s < begins.Count; s++)
        {
            var section = score.Sections[s];
            foreach (var note in section.Notes)
            {
                cancellationToken.ThrowIfCancellationRequested();
                var (from, to) = (section.SecondsAt(note.Onset), section.SecondsAt(note.End));
                writer.WriteLine(string.Create(
                    CultureInfo.InvariantCulture,
                    $"{note.LineIndex + 1},{(double)(begins[s] + from):0.######},{(double)(to - from):0.######},{section.PitchOf(note).Hz:0.###},{Cell(section.SyllableOf(note))}"));
            }
        }
    }

    // A spreadsheet would run a formula, so it is refused rather than changed.
    private static string Cell(string syllable) => syllable.Length > 0 && "=+-@\t\r".Contains(syllable[0], StringComparison.Ordinal)
        ? throw new ExportException($"a syllable in a table must not begin with = + - or @, and '{syllable}' does")
        : $"\"{syllable.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
#endregion

/// <summary>The page on adding an exporter.</summary>
public sealed class ExporterTests : Warmup.Docs.Tests.TemporaryFolder
{
    private static readonly Drill Drill = new()
    {
        Scale = Catalogue.Default.Read("Mohanam"),
        Pattern = Pattern.Ladder,
        Tonic = Tonic.Parse("A3"),
        Tempo = 60,
    };

    [Fact]
    public void It_is_used_like_the_librarys_own()
    {
        var score = Drill.ToScore();
        #region exporter used
        IScoreFormat format = new NoteTableFormat();
        format.Save(score, "mohanam" + format.Extensions[0]);
        #endregion

        // At 60 a note a second; S on A3 has 220 Hz, an equal R2 220 x 2^(2/12) = 246.942 Hz.
        var rows = File.ReadAllLines("mohanam.csv");
        Assert.Equal(21, rows.Length);
        Assert.Equal(["line,begins,lasts,hertz,syllable", "1,0,1,220,\"S\"", "1,1,1,246.942,\"R\"", "2,2,1,220,\"S\""], rows[..4]);
    }

    [Fact]
    public void Sections_follow_each_other_in_time()
    {
        var once = Drill.ToScore();
        var twice = Score.Join(once.Title, [once, once]);
        var rows = Lines(twice);
        var second = double.Parse(rows[21].Split(',')[1], System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal((double)once.Seconds, second, 6);
    }

    [Fact]
    public void It_keeps_the_contract()
    {
        #region exporter held to the contract
        var score = Drill.ToScore();
        IScoreFormat format = new NoteTableFormat();
        using var first = new MemoryStream();
        using var second = new MemoryStream();
        format.Write(score, first);
        format.Write(Drill.ToScore(), second);
        Assert.Equal(first.ToArray(), second.ToArray()); // equal scores, equal bytes
        Assert.True(first.CanWrite); // the stream stays open

        Assert.Throws<OperationCanceledException>(() => format.Save(score, "stopped.csv", cancellationToken: new CancellationToken(canceled: true)));
        Assert.False(File.Exists("stopped.csv")); // whole or not at all
        #endregion
        Assert.Empty(Files);
    }

    [Fact]
    public void What_the_format_cannot_hold_is_refused()
    {
        var score = (Drill with { Syllables = Syllables.Vowel("=1+1") }).ToScore();
        Assert.Throws<ExportException>(() => new NoteTableFormat().Save(score, "formula.csv"));
        Assert.Empty(Files);
    }

    private static string[] Lines(Score score)
    {
        using var bytes = new MemoryStream();
        new NoteTableFormat().Write(score, bytes);
        return System.Text.Encoding.UTF8.GetString(bytes.ToArray()).Split("\r\n");
    }
}
