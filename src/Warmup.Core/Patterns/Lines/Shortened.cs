namespace Warmup;

/// <summary>Text for a debugger or a log: one line of at most 200 characters.</summary>
internal static class Shortened
{
    private const int Longest = 200;

    public static string Of(string text) => text.Length <= Longest ? text : string.Concat(text.AsSpan(0, Longest - 4), " ...");
}
