namespace Warmup.MusicXml;

/// <summary>How the beginning of a line is marked.</summary>
public enum MusicXmlLineMarks
{
    /// <summary>
    /// The line's number in its section in a box, as findings name it, from the second line on: the first begins where the section does.
    /// Measures then have no numbers on the page.
    /// </summary>
    Numbers,

    /// <summary>Not at all.</summary>
    None,
}
