using Warmup.Drawing;

namespace Warmup.Cli;

/// <summary>The form on which a teacher writes down what was measured: the library's steps, and a row for each singer.</summary>
internal static class MeasuringForm
{
    private const int BlankRows = 6;

    /// <summary>Writes the form in the format of the file's ending.</summary>
    public static void Write(ValueList<Singer> singers, string path, bool force)
    {
        var form = Of(singers);
        Action<Stream> write = Path.GetExtension(path).ToUpperInvariant() switch
        {
            ".PDF" => stream => form.WritePdf(stream),
            ".SVG" => stream => form.WriteSvg(stream),
            ".PNG" => stream => form.WritePng(stream),
            ".TXT" => form.WriteText,
            _ => throw new InputException($"--form: '{path}' must end in .pdf, .svg, .png or .txt"),
        };
        Formats.RefuseUnwritable(path, force);
        AtomicFile.Write(path, write, force);
    }

    private static PrintedForm Of(ValueList<Singer> singers) => new("Measuring voices", ["singer", "date", "lowest comfortable", "highest comfortable", "tone 1 (s)", "tone 2 (s)", "tone 3 (s)", "remarks"])
    {
        Parts = MeasuringSteps.All.GroupBy(s => s.Part).Select(p => new FormPart(p.Key, p.Select(s => s.Text).ToValueList())).ToValueList(),
        Rows = singers.IsEmpty ? Enumerable.Repeat(default(ValueList<string>), BlankRows).ToValueList() : singers.ConvertAll(s => (ValueList<string>)[s.Alias]),
    };
}
