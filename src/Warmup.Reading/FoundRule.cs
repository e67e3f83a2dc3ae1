using System.Globalization;

namespace Warmup.Reading;

/// <summary>A rule that gives lines of a section. Immutable, compared by value.</summary>
public sealed record FoundRule
{
    internal FoundRule(int firstLine, int lastLine, Pattern rule, string? exercise, bool isByTonesAlone) =>
        (FirstLine, LastLine, Rule, Exercise, IsByTonesAlone) = (firstLine, lastLine, rule, exercise, isByTonesAlone);

    /// <summary>The first of the lines, from 1.</summary>
    public int FirstLine { get; }

    /// <summary>The last of them.</summary>
    public int LastLine { get; }

    /// <summary>The smallest rule that was found; the exercise's own where it is one.</summary>
    public Pattern Rule { get; }

    /// <summary>The name of the known exercise that these lines are, such as <c>alankara-1</c>; <see langword="null"/> where they are none.</summary>
    public string? Exercise { get; }

    /// <summary>Whether the rule gives the tones only, because the lines end on held notes or with silences of their own.</summary>
    public bool IsByTonesAlone { get; }


    /// <summary>The lines, the rule and the exercise.</summary>
    public override string ToString() => OneLine.Of(string.Create(
        CultureInfo.InvariantCulture, $"{(FirstLine == LastLine ? "line" : "lines")} {(FirstLine == LastLine ? string.Empty : $"{FirstLine}-")}{LastLine}: {Rule}{(Exercise is null ? string.Empty : $" ({Exercise})")}"));
}
