namespace Warmup.Testing;

/// <summary>Laws that rules often claim.</summary>
/// <remarks>Lines are compared by what you hear: tones, lengths, silences and sung words.</remarks>
public static class PatternLaws
{
    private const int LongestOther = 40;

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

    /// <summary>Applied twice, the rule changes nothing.</summary>
    public static PatternLaw UndoesItself { get; } = new("undoes itself", "f(f(p)) = p", "Applied twice, the rule gives back the lines it started from.", (f, p, _, s) =>
        Same(f.Lines(p, s, 2), f.Lines(p, s, 0), f.Lines(p, s)));

    /// <summary>Applied twice, the rule does no more than applied once.</summary>
    public static PatternLaw IsIdempotent { get; } = new("is idempotent", "f(f(p)) = f(p)", "Applied twice, the rule does no more than applied once.", (f, p, _, s) =>
        Same(f.Lines(p, s, 2), f.Lines(p, s)));

    /// <summary>The number of lines stays the same.</summary>
    public static PatternLaw KeepsLineCount { get; } = new("keeps the number of lines", "|f(p)| = |p|", "There are as many lines as before.", (f, p, _, s) =>
        Equal(f.Lines(p, s), f.Lines(p, s, 0), l => l.Count));

    /// <summary>The number of notes stays the same.</summary>
    public static PatternLaw KeepsNoteCount { get; } = new("keeps the number of notes", "notes(f(p)) = notes(p)", "There are as many notes as before.", (f, p, _, s) =>
        Equal(f.Lines(p, s), f.Lines(p, s, 0), l => l.Sum(line => line.Notes.Count)));

    /// <summary>The tones stay the same, in any order.</summary>
    public static PatternLaw KeepsNotes { get; } = new("keeps the notes", "bag(f(p)) = bag(p)", "Every tone is sung as often as before, in any order.", (f, p, _, s) =>
        Equal(f.Lines(p, s), f.Lines(p, s, 0), l => string.Join(' ', l.SelectMany(line => line.Notes).Select(n => n.Tone).Order())));

    /// <summary>The rule works on each part of a sum by itself.</summary>
    public static PatternLaw WorksPartByPart { get; } = new("works part by part", "f(p + q) = f(p) + f(q)", "Two patterns in a row give what each of them gives, in a row.", (f, p, q, s) =>
    {
        try
        {
            return Same(f.Lines(p + q, s), Joined(f.Lines(p, s), f.Lines(q, s)));
        }
        catch (ArgumentException large) when (PatternRule.IsTooLarge(large))
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

    /// <summary>The empty pattern stays empty.</summary>
    public static PatternLaw KeepsEmpty { get; } = new("keeps the empty pattern", "f(empty) = empty", "No lines give no lines.", (f, _, _, s) =>
        f.Lines(Pattern.Empty, s) is { } lines ? lines.IsEmpty ? LawVerdict.Holds : LawVerdict.Broken : LawVerdict.SaysNothing);

    /// <summary>Every tone is one of the scale's.</summary>
    public static PatternLaw StaysInTheScale { get; } = new("stays in the scale", "tones(f(p)) lie in s", "Every tone is in the ascent or the descent, in some octave.", (f, p, _, s) =>
        f.Lines(p, s) is { } lines
            ? lines.All(l => l.Notes.All(n => s.Contains(n.Tone.Degree))) ? LawVerdict.Holds : LawVerdict.Broken
            : LawVerdict.SaysNothing);

    /// <summary>Before or after another combinator the rule gives the same lines. It says nothing of a rule from lines to lines.</summary>
    /// <param name="name">The other combinator's name, for reports: 1 to 40 characters without control characters.</param>
    /// <param name="other">The other combinator.</param>
    /// <exception cref="ArgumentException">The name is empty or too long, or holds a control character.</exception>
    public static PatternLaw ChangesPlacesWith(string name, Func<Pattern, Pattern> other)
    {
        ArgumentNullException.ThrowIfNull(other);
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        Require.PlainText(name, LongestOther, "the name of a combinator");
        return new($"changes places with {name}", $"f({name}(p)) = {name}(f(p))", $"Before or after {name}, the rule gives the same lines.", (f, p, _, s) =>
        {
            try
            {
                return f.PatternOf(p) is { } made ? Same(f.Lines(other(p), s), Expand(other(made), s)) : LawVerdict.SaysNothing;
            }
            catch (ArgumentException large) when (PatternRule.IsTooLarge(large))
            {
                return LawVerdict.SaysNothing;
            }
        });
    }

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
