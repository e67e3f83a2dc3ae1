namespace Warmup.Reading;

/// <summary>How much of a file is read (the project's own bounds).</summary>
public static class ReadingLimits
{
    /// <summary>The largest file, and the largest content of a compressed one: 32 MiB.</summary>
    public static int Bytes => 32 << 20;

    /// <summary>The most notes of all parts together: 200,000.</summary>
    public static int Notes => 200_000;

    /// <summary>The most notes of the part that is read, with its repeats, or of a text: 100,000, as many as a drill has.</summary>
    public static int NotesOfPart => 100_000;

    /// <summary>The most parts: 256.</summary>
    public static int Parts => 256;

    /// <summary>The most entries of a compressed file: 64.</summary>
    public static int Entries => 64;

    /// <summary>How deep elements may lie in each other: 64.</summary>
    public static int Depth => 64;

    /// <summary>The longest text of an element, in characters: 10,000.</summary>
    internal static int Text => 10_000;

    /// <summary>The most measures of a part: 20,000.</summary>
    public static int Measures => 20_000;

    /// <summary>The most remarks: 500; one more says how many were left out.</summary>
    public static int Remarks => 500;
}
