namespace Warmup.Reading;

/// <summary>What the numbers of a place in a file count.</summary>
public enum PlaceKind
{
    /// <summary>The file as a whole.</summary>
    File,

    /// <summary>Measures, and quarter notes within one.</summary>
    Measure,

    /// <summary>Lines of text, and columns within one.</summary>
    TextLine,

    /// <summary>Bytes from the file's beginning, counted from 0.</summary>
    Byte,
}
