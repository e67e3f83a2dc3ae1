namespace Warmup;

/// <summary>Keeps what a value prints to one line.</summary>
internal static class OneLine
{
    /// <summary>The longest line, in characters.</summary>
    public const int Longest = 200;

    private const string Cut = "...";

    /// <summary>The text, cut off after 200 characters, with spaces for line ends.</summary>
    public static string Of(string text)
    {
        var line = text.ReplaceLineEndings(" ");
        return line.Length <= Longest ? line : line[..(Longest - Cut.Length)] + Cut;
    }
}
