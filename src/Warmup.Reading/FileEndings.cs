namespace Warmup.Reading;

/// <summary>What the ending of a file's name tells.</summary>
internal static class FileEndings
{
    private const int LongestTitle = 100;

    public static ValueList<string> Read { get; } = [".musicxml", ".xml", ".mxl", ".mid", ".midi", ".txt"];

    private static readonly string[] Programs = [".mscz", ".mscx", ".sib", ".musx", ".mus", ".dorico", ".enc", ".gp", ".gp5", ".gpx", ".ly", ".mei", ".abc", ".krn", ".capx"];
    private static readonly string[] Pictures = [".pdf", ".png", ".jpg", ".jpeg", ".gif", ".svg", ".heic", ".tif", ".tiff"];
    private static readonly string[] Recordings = [".wav", ".mp3", ".ogg", ".opus", ".oga", ".m4a", ".aac", ".flac", ".webm"];
    private static readonly string[] Documents = [".doc", ".docx", ".odt", ".rtf", ".pages", ".html", ".htm", ".eml"];

    /// <summary>A title for what has none: the name without folders and ending; empty where nothing is left.</summary>
    public static string TitleOf(string name) => PlainText.Of(Path.GetFileNameWithoutExtension(Last(name)), LongestTitle);

    /// <summary>What to do with a file that another kind of program made; empty where its ending tells nothing.</summary>
    public static string AdviceFor(string name)
    {
        var ending = Path.GetExtension(Last(name)).ToLowerInvariant();
        return Programs.Contains(ending, StringComparer.Ordinal) ? "; in the program that made it, export it as MusicXML or MIDI"
            : Pictures.Contains(ending, StringComparer.Ordinal) ? "; pictures of notes are not read: take the file that they were printed from, as MusicXML or MIDI"
            : Recordings.Contains(ending, StringComparer.Ordinal) ? "; a recording is held against its drill instead of being read as one"
            : Documents.Contains(ending, StringComparer.Ordinal) ? "; copy its lines of notes into a plain text"
            : string.Empty;
    }

    // A browser may send folders with either stroke, whatever system this one is.
    private static string Last(string name) => name[(name.LastIndexOfAny(['/', '\\']) + 1)..];
}
