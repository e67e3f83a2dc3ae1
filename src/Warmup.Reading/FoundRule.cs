using System.Globalization;

namespace Warmup.Reading;

/// <summary>A rule that gives lines of a section. Immutable, compared by value.</summary>
/// <param name="FirstLine">The first of the lines, from 1.</param>
/// <param name="LastLine">The last of them.</param>
/// <param name="Rule">The smallest rule that was found; the exercise's own where it is one.</param>
/// <param name="Exercise">The name of the known exercise that these lines are, such as <c>alankara-1</c>; <see langword="null"/> where they are none.</param>
/// <param name="IsByTonesAlone">Whether the rule gives the tones only, because the lines end on held notes or with silences of their own.</param>
public sealed record FoundRule(int FirstLine, int LastLine, Pattern Rule, string? Exercise, bool IsByTonesAlone)
{
    /// <summary>The lines, the rule and the exercise.</summary>
    public override string ToString() => OneLine.Of(string.Create(
        CultureInfo.InvariantCulture, $"{(FirstLine == LastLine ? "line" : "lines")} {(FirstLine == LastLine ? string.Empty : $"{FirstLine}-")}{LastLine}: {Rule}{(Exercise is null ? string.Empty : $" ({Exercise})")}"));
}
