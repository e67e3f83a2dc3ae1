namespace Warmup.MusicXml;

/// <summary>Which hidden time signatures bars of free rhythm have.</summary>
public enum MusicXmlFreeBars
{
    /// <summary>
    /// Each bar has its own, so that every bar is exactly full for every reader. Where a bar of another length begins a system, MuseScore 3
    /// prints the new signature at the end of the system before it, although the signature is hidden.
    /// </summary>
    OwnSignatures,

    /// <summary>
    /// The section has one, that of its longest bar; shorter bars are left unfilled. Pages are clean in MuseScore 3, which plays each bar as
    /// long as it is; LilyPond fills the shorter bars with silence.
    /// </summary>
    OneSignature,
}
