namespace Warmup.Cli;

/// <summary>The exercises that can be named.</summary>
internal static class Exercises
{
    /// <summary>The traditional ones, those of choirs, those for slides and swells, and an alankara for each tala.</summary>
    public static IReadOnlyList<Exercise> All { get; } = [.. Repertoire.Traditional, .. Repertoire.Choir, .. Repertoire.Voice, .. Repertoire.Alankaras];
}
