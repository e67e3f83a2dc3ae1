namespace Warmup.MusicXml;

/// <summary>How the beginning of a line is marked.</summary>
public enum MusicXmlLineMarks
{
    /// <summary>A rehearsal mark with the line's number in its section, as findings name it.</summary>
    Numbers,

    /// <summary>Not at all.</summary>
    None,
}
