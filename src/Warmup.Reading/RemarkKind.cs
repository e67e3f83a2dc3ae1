namespace Warmup.Reading;

/// <summary>What could not be kept, or was mended, when a file was read.</summary>
public enum RemarkKind
{
    /// <summary>Several notes at once: the highest was kept.</summary>
    Chord,

    /// <summary>Grace and cue notes, which have no time of their own: left out.</summary>
    GraceNote,

    /// <summary>A further voice of the part: left out.</summary>
    FurtherVoice,

    /// <summary>Another part of the piece: left out.</summary>
    FurtherPart,

    /// <summary>Ornaments, arpeggios and the like: left out, the note itself was kept.</summary>
    Ornament,

    /// <summary>A key signature that changes within a section: the notes keep their pitches.</summary>
    KeyChange,

    /// <summary>A time signature that changes within a section, or one that no drill has: the section is read in free rhythm.</summary>
    MeterChange,

    /// <summary>A tempo that changes within a section, or lies outside what a drill may have.</summary>
    Tempo,

    /// <summary>Repeats and endings that were written out, or read once; jumps, which are not followed.</summary>
    Repeat,

    /// <summary>A note that the scale does not have: kept with its pitch.</summary>
    OutsideScale,

    /// <summary>A pitch between two keys: the nearest was kept.</summary>
    Microtone,

    /// <summary>A syllable that was too long, or held characters that may not be printed.</summary>
    Syllable,

    /// <summary>A silence, or a note's length, that no line of a drill can hold as it is.</summary>
    Time,

    /// <summary>Words that are no notes: left out.</summary>
    Words,

    /// <summary>Something broken that was mended; the message says how.</summary>
    Mended,
}
