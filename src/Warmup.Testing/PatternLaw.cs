namespace Warmup.Testing;

/// <summary>What a law says of one pattern in one scale.</summary>
public enum LawVerdict
{
    /// <summary>The law holds.</summary>
    Holds,

    /// <summary>The law does not hold.</summary>
    Broken,

    /// <summary>The scale has no such lines, or they would be too many: the law says nothing.</summary>
    SaysNothing,
}

/// <summary>A law that a rule can be held against.</summary>
/// <param name="Name">A short name.</param>
/// <param name="Algebra">The law in one line, <c>f</c> being the rule and <c>p</c>, <c>q</c> patterns.</param>
/// <param name="English">The law in one sentence.</param>
/// <param name="Check">Holds a rule against the law, for two patterns and a scale.</param>
public sealed record PatternLaw(string Name, string Algebra, string English, Func<PatternRule, Pattern, Pattern, Scale, LawVerdict> Check);

/// <summary>Laws that rules often claim.</summary>
/// <remarks>Lines are compared by what is heard: tones, lengths, silences and sung words.</remarks>
public static class PatternLaws
{
    /// <summary>The rule never throws anything but a refusal.</summary>
    public static PatternLaw IsTotal { get; } = new("is total", "f(p) is defined or refused", "The rule gives lines or a refusal for every pattern and scale.", (f, p, _, s) =>
    {
        try
        {
            return f.Lines(p, s) is null ? LawVerdict.SaysNothing : LawVerdict.Holds;
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            return LawVerdict.Broken;
        }
    });

    /// <summary>Twice is not at all.</summary>
    public static PatternLaw UndoesItself { get; } = new("undoes itself", "f(f(p)) = p", "Applied twice, the rule gives back the lines it started from.", (f, p, _, s) =>
        Same(f.Lines(p, s, 2), f.Lines(p, s, 0), f.Lines(p, s)));

    /// <summary>Twice is once.</summary>
    public static PatternLaw IsIdempotent { get; } = new("is idempotent", "f(f(p)) = f(p)", "Applied twice, the rule does no more than applied once.", (f, p, _, s) =>
        Same(f.Lines(p, s, 2), f.Lines(p, s)));

    /// <summary>The number of lines stays.</summary>
    public static PatternLaw KeepsLineCount { get; } = new("keeps the number of lines", "|f(p)| = |p|", "There are as many lines as before.", (f, p, _, s) =>
        Equal(f.Lines(p, s), f.Lines(p, s, 0), l => l.Count));

    /// <summary>The number of notes stays.</summary>
    public static PatternLaw KeepsNoteCount { get; } = new("keeps the number of notes", "notes(f(p)) = notes(p)", "There are as many notes as before.", (f, p, _, s) =>
        Equal(f.Lines(p, s), f.Lines(p, s, 0), l => l.Sum(line => line.Notes.Count)));

    /// <summary>The tones stay, in any order.</summary>
    public static PatternLaw KeepsNotes { get; } = new("keeps the notes", "bag(f(p)) = bag(p)", "Every tone is sung as often as before, in any order.", (f, p, _, s) =>
        Equal(f.Lines(p, s), f.Lines(p, s, 0), l => string.Join(' ', l.SelectMany(line => line.Notes).Select(n => n.Tone).Order())));

    /// <summary>The rule works on each part of a sum by itself.</summary>
    public static PatternLaw WorksPartByPart { get; } = new("works part by part", "f(p + q) = f(p) + f(q)", "Of two patterns in a row it makes what it makes of each.", (f, p, q, s) =>
    {
        try
        {
            return Same(f.Lines(p + q, s), Joined(f.Lines(p, s), f.Lines(q, s)));
        }
        catch (ArgumentException)
        {
            return LawVerdict.SaysNothing;
        }
    });

    /// <summary>Each line is changed by itself.</summary>
    public static PatternLaw WorksLineByLine { get; } = new("works line by line", "f(p.take(1)) = f(p).take(1)", "The first line of the result depends on the first line only, and there are as many lines as before.", (f, p, _, s) =>
    {
        var all = f.Lines(p, s);
        var plain = f.Lines(p, s, 0);
        return all is null || plain is null
            ? LawVerdict.SaysNothing
            : all.Value.Count != plain.Value.Count
                ? LawVerdict.Broken
                : Same(f.Lines(p.Take(1), s), all.Value.IsEmpty ? all : [all.Value[0]]);
    });

    /// <summary>Nothing comes of nothing.</summary>
    public static PatternLaw KeepsEmpty { get; } = new("keeps the empty pattern", "f(empty) = empty", "Of no lines it makes no lines.", (f, _, _, s) =>
        f.Lines(Pattern.Empty, s) is { } lines ? lines.IsEmpty ? LawVerdict.Holds : LawVerdict.Broken : LawVerdict.SaysNothing);

    /// <summary>Every tone is one of the scale's.</summary>
    public static PatternLaw StaysInTheScale { get; } = new("stays in the scale", "tones(f(p)) lie in s", "Every tone it gives is in the ascent or the descent, in some octave.", (f, p, _, s) =>
        f.Lines(p, s) is { } lines
            ? lines.All(l => l.Notes.All(n => s.Contains(n.Tone.Degree))) ? LawVerdict.Holds : LawVerdict.Broken
            : LawVerdict.SaysNothing);

    /// <summary>Before or after another combinator the rule gives the same lines. It says nothing of a rule from lines to lines.</summary>
    /// <param name="name">The other combinator's name, for reports.</param>
    /// <param name="other">The other combinator.</param>
    public static PatternLaw ChangesPlacesWith(string name, Func<Pattern, Pattern> other) => new(
        $"changes places with {name}", $"f({name}(p)) = {name}(f(p))", $"Before or after {name} it gives the same lines.", (f, p, _, s) =>
        {
            try
            {
                return f.PatternOf(p) is { } made ? Same(f.Lines(other(p), s), Expand(other(made), s)) : LawVerdict.SaysNothing;
            }
            catch (ArgumentException)
            {
                return LawVerdict.SaysNothing;
            }
        });

    /// <summary>The laws that need no argument.</summary>
    public static ValueList<PatternLaw> All { get; } =
    [
        IsTotal, UndoesItself, IsIdempotent, KeepsLineCount, KeepsNoteCount, KeepsNotes, WorksPartByPart, WorksLineByLine, KeepsEmpty, StaysInTheScale,
    ];

    /// <summary>Whether two results sound alike; a refused one says nothing.</summary>
    /// <param name="left">One result.</param>
    /// <param name="right">The other.</param>
    /// <param name="between">Results on the way, which must not be refused either.</param>
    public static LawVerdict Same(ValueList<Line>? left, ValueList<Line>? right, params ReadOnlySpan<ValueList<Line>?> between)
    {
        foreach (var step in between)
        {
            if (step is null)
            {
                return LawVerdict.SaysNothing;
            }
        }

        if (left is not { } one || right is not { } other)
        {
            return LawVerdict.SaysNothing;
        }

        return one.Count == other.Count && one.Zip(other).All(pair => pair.First.SoundsAs(pair.Second)) ? LawVerdict.Holds : LawVerdict.Broken;
    }

    private static LawVerdict Equal<T>(ValueList<Line>? left, ValueList<Line>? right, Func<ValueList<Line>, T> measure) =>
        left is { } one && right is { } other
            ? EqualityComparer<T>.Default.Equals(measure(one), measure(other)) ? LawVerdict.Holds : LawVerdict.Broken
            : LawVerdict.SaysNothing;

    private static ValueList<Line>? Joined(ValueList<Line>? first, ValueList<Line>? second) =>
        first is { } one && second is { } other ? [.. one, .. other] : null;

    private static ValueList<Line>? Expand(Pattern pattern, Scale scale) => pattern.TryExpand(scale, out var expansion, out _) ? expansion!.Lines : null;
}
