namespace Warmup.Reading;

/// <summary>What told where the lines of a section begin.</summary>
public enum LinesFoundBy
{
    /// <summary>Nothing did: the section is one line.</summary>
    Nothing,

    /// <summary>Line numbers in boxes or markers, as this project's own files have them.</summary>
    LineNumbers,

    /// <summary>Rehearsal marks, or markers of a MIDI file.</summary>
    RehearsalMarks,

    /// <summary>Where the file begins systems.</summary>
    Systems,

    /// <summary>The ends of lines in a MIDI file's lyrics.</summary>
    LyricLines,

    /// <summary>Repeat signs and endings.</summary>
    Repeats,

    /// <summary>Breath marks and fermatas.</summary>
    Breaths,

    /// <summary>Rests of a quarter note or more.</summary>
    Rests,

    /// <summary>Measures, or groups of measures, whose rhythm comes again.</summary>
    Repetition,

    /// <summary>The lines of a text.</summary>
    TextLines,
}
