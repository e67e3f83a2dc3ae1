using System.Text;
using Warmup.Drawing;
using Warmup.Takes;

namespace Warmup.Cli;

/// <summary>The files in which a take's report can be written.</summary>
internal static class TakeFiles
{
    private const int MostWords = 40;

    public const string Endings = ".txt .csv .html .svg .pdf .json";

    /// <summary>The file and what writes it, by its ending.</summary>
    public static (string Path, Action<Stream> Write) Of(string path, Score score, TakeReport report) => (path, Path.GetExtension(path).ToUpperInvariant() switch
    {
        ".TXT" => Text(TakeTable.PlainText(score, report)),
        ".CSV" => Text(TakeTable.Csv(report)),
        ".HTML" => Text(TakeTable.Html(score, report)),
        ".SVG" => Text(TakePicture.Svg(score, report)),
        ".JSON" => Text(TakeJson.Write(report, score.Cautions)),
        ".PDF" => stream => Form(score, report).WritePdf(stream),
        _ => throw new InputException($"--out: '{path}' must end in one of {Endings}"),
    });

    private static PrintedForm Form(Score score, TakeReport report)
    {
        // A form says the usual cautions by itself.
        var own = score.Cautions.Where(c => !Cautions.All.Contains(c)).Select(c => c.Text).ToValueList();
        var heard = new FormPart("What was heard", Cut(TakeSummary.Words(score, report)));
        return new PrintedForm(OneLineOf(score.Title), TakeTable.Columns)
        {
            Parts = own.IsEmpty ? [heard] : [heard, new FormPart("What this drill asks for", own)],
            Rows = TakeTable.Rows(report),
            WideColumn = TakeTable.Columns.Count - 1,
            Sung = Sung(score, report),
        };
    }

    /// <summary>The notes for the picture; those that were left out stand where the note before them ends.</summary>
    private static ValueList<SungNote> Sung(Score score, TakeReport report)
    {
        var wanted = TakePicture.Semitones(score);
        var (notes, last) = (new List<SungNote>(), 0.0);
        foreach (var note in report.Notes)
        {
            var (onset, end, semitones) = (note.Onset ?? last, note.End ?? last, wanted[note.Index]);
            notes.Add(new SungNote(note.Tone.ToString(), onset, end - onset, semitones, Mark(note))
            {
                Course = note.Course.ConvertAll(c => new SungPoint(c.Seconds, semitones + (c.Cents / 100.0))),
            });
            last = end;
        }

        return notes.ToValueList();
    }

    private static SungMark Mark(TakeNote note) => note.Status switch
    {
        NoteStatus.LeftOut => SungMark.LeftOut,
        NoteStatus.Unsure => SungMark.Unsure,
        NoteStatus.OtherNote => SungMark.AnotherNote,
        _ when Math.Abs(note.Cents ?? 0) <= TakeMarks.InTune => SungMark.InTune,
        _ => note.Cents > 0 ? SungMark.High : SungMark.Low,
    };

    private static ValueList<string> Cut(ValueList<string> words) => words.Count <= MostWords ? words : [.. words.Take(MostWords - 2), "and more", words[^1]];

    private static string OneLineOf(string title) => title.Length <= 100 ? title : title[..97] + "...";

    private static Action<Stream> Text(string text) => stream => stream.Write(Encoding.UTF8.GetBytes(text));
}
