using System.Text;
using Warmup.Takes;

namespace Warmup.Cli.Tests;

/// <summary>Reports of takes as files: whatever became of the notes, each format can be written.</summary>
public class TakeFilesTests
{
    private static readonly Score Score = new Drill { Scale = Catalogue.Default.Find("mohanam")!.Scale, Pattern = Pattern.Parse("[S R G P]"), Tonic = Tonic.Parse("C4") }.ToScore();

    private static readonly TakeReport Report = new()
    {
        IsDrill = true,
        Seconds = 5,
        Notes = [Note(0, NoteStatus.Sung, 12), Note(1, NoteStatus.OtherNote, 210), Note(2, NoteStatus.Unsure, -40), Note(3, NoteStatus.LeftOut, null)],
    };

    private static TakeNote Note(int index, NoteStatus status, int? cents) => new()
    {
        Index = index,
        Line = 1,
        Round = 1,
        Status = status,
        Tone = ScaleTone.Parse("S"),
        Onset = cents is null ? null : index + 1,
        End = cents is null ? null : index + 1.9,
        Cents = cents,
        Course = cents is null ? [] : [new TakePoint(index + 1.2, cents.Value), new TakePoint(index + 1.22, cents.Value)],

        // The longest that a report says.
        Why = status == NoteStatus.Unsure ? "the notes around it fit the drill in another way almost as well" : null,
    };

    [Theory]
    [InlineData(".txt", "unsure: the notes around it fit the drill in another way almost as well")]
    [InlineData(".csv", "unsure: the notes around it fit the drill in another way almost as well")]
    [InlineData(".html", "unsure: the notes around it fit the drill in another way almost as well")]
    [InlineData(".svg", "left out")]
    [InlineData(".json", "the notes around it fit the drill in another way almost as well")]
    [InlineData(".pdf", "%PDF")]
    public void Every_format_holds_notes_of_every_status(string ending, string expected)
    {
        using var stream = new MemoryStream();
        TakeFiles.Of("report" + ending, Score, Report).Write(stream);
        Assert.Contains(expected, Encoding.Latin1.GetString(stream.ToArray()), StringComparison.Ordinal);
    }

    [Fact]
    public void The_PDF_has_the_notes_as_a_picture()
    {
        long Length(TakeReport report)
        {
            using var stream = new MemoryStream();
            TakeFiles.Of("report.pdf", Score, report).Write(stream);
            return stream.Length;
        }

        // Courses of forty points take more room than those of two.
        var longer = Report with { Notes = Report.Notes.ConvertAll(n => n with { Course = n.Onset is null ? [] : [.. Enumerable.Range(0, 40).Select(i => new TakePoint(n.Onset.Value + (0.02 * i), i % 7))] }) };
        Assert.True(Length(longer) > Length(Report) + 300);
    }
}
