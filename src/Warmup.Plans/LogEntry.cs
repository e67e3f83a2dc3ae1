using System.Globalization;

namespace Warmup.Plans;

/// <summary>A drill that was sung.</summary>
/// <param name="Date">The day.</param>
/// <param name="Scale">The scale's name.</param>
/// <param name="Exercise">The exercise's name: <c>sarali-3</c>.</param>
/// <param name="Tempo">The tempo reached, in aksharas a minute, 10 to 400.</param>
/// <param name="IsTicked">Whether the teacher ticked it off. Nothing else moves a singer on.</param>
public sealed record LogEntry(DateOnly Date, string Scale, string Exercise, int Tempo, bool IsTicked)
{
    /// <summary>The day, the drill and the tempo in one line.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Date:yyyy-MM-dd} {Scale}, {Exercise} at {Tempo}{(IsTicked ? ", ticked off" : "")}");
}
