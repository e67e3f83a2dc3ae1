namespace Warmup.MusicXml;

/// <summary>How the beginning of a line is marked.</summary>
public enum MusicXmlLineMarks
{
    /// <summary>A rehearsal mark with the line's number in its section, as findings name it.</summary>
    Numbers,

    /// <summary>Not at all.</summary>
    None,
}

/// <summary>How loud a section begins.</summary>
public enum MusicXmlDynamics
{
    /// <summary>Nothing is said.</summary>
    None,

    /// <summary>Very soft, pp.</summary>
    Pianissimo,

    /// <summary>Soft, p.</summary>
    Piano,

    /// <summary>Rather soft, mp.</summary>
    MezzoPiano,

    /// <summary>Rather loud, mf.</summary>
    MezzoForte,

    /// <summary>Loud, f.</summary>
    Forte,

    /// <summary>Very loud, ff.</summary>
    Fortissimo,
}

/// <summary>Which hidden time signatures bars of free rhythm have.</summary>
public enum MusicXmlFreeBars
{
    /// <summary>
    /// Each bar has its own, so that every bar is exactly full for every reader. Where a bar of another length begins a system, MuseScore 3
    /// prints the new signature at the end of the system before it although it is hidden.
    /// </summary>
    OwnSignatures,

    /// <summary>
    /// One for the section, of its longest bar; shorter bars are left unfilled. Pages are clean in MuseScore 3, which plays them as long as
    /// they are; LilyPond fills them with silence.
    /// </summary>
    OneSignature,
}
