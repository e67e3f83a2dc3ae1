using Warmup.Research;

namespace Warmup.Reading;

/// <summary>Finds the rules of lines that were read: for all of them, otherwise for parts.</summary>
public static class RuleFinder
{
    // The project's own bounds: what is searched in one go, and how many parts are tried.
    private const int MostNotes = 2_000;
    private const int MostParts = 32;

    /// <summary>
    /// The rules of a section, in order: one where a rule gives all lines, otherwise one for each stretch of lines that has a rule. A known
    /// exercise is named in whatever scale it is sung. Lengths count; where no rule gives them, line ends are taken without their holds and silences.
    /// </summary>
    /// <param name="section">The section.</param>
    /// <param name="cancellationToken">Stops the search.</param>
    /// <returns>The rules; none where no two lines or no line has one.</returns>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static ValueList<FoundRule> Find(ReadSection section, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(section);
        var lines = Scaled(section.Lines, section.CommonLength);
        if (Whole(lines, section.Scale, 0, lines.Length, cancellationToken) is { } whole)
        {
            return [whole];
        }

        var found = new List<FoundRule>();
        var tries = 0;
        for (var start = 0; start < lines.Length && tries < MostParts;)
        {
            FoundRule? rule = null;
            for (var count = Math.Min(lines.Length - start, start == 0 ? lines.Length - 1 : int.MaxValue); count >= 2 && rule is null && tries < MostParts; count = count > 8 ? count / 2 : count - 1)
            {
                tries++;
                rule = Whole(lines, section.Scale, start, count, cancellationToken);
            }

            start = rule?.LastLine ?? start + 1;
            if (rule is not null)
            {
                found.Add(rule);
            }
        }

        return found.ToValueList();
    }

    /// <summary>A pattern that gives a section's lines in any scale: the rule of all of them, otherwise the lines written out in letters.</summary>
    /// <param name="section">The section.</param>
    /// <param name="cancellationToken">Stops the search.</param>
    /// <returns>The pattern; <see langword="null"/> where no rule was found and <see cref="ReadSection.ToPattern"/> gives none.</returns>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static Pattern? FindPattern(ReadSection section, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(section);
        return OfAll(section, cancellationToken) ?? section.ToPattern();
    }

    /// <summary>The rule that gives all lines of a section with their lengths, without a search for rules of parts.</summary>
    /// <param name="section">The section.</param>
    /// <param name="cancellationToken">Stops the search.</param>
    /// <returns>The rule, the same as the only one of <see cref="Find"/>; <see langword="null"/> where none gives all lines and all lengths.</returns>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static FoundRule? FindWhole(ReadSection section, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(section);
        var lines = Scaled(section.Lines, section.CommonLength);
        return Of(ValueList.Create<Line>(lines), section.Scale, 0, isBare: false, cancellationToken);
    }

    /// <summary>The rule that gives all lines with their lengths.</summary>
    internal static Pattern? OfAll(ReadSection section, CancellationToken cancellation) => FindWhole(section, cancellation)?.Rule;

    private static FoundRule? Whole(Line[] lines, Scale scale, int start, int count, CancellationToken cancellation)
    {
        var part = lines.AsSpan(start, count);
        var exact = ValueList.Create<Line>(part);
        var bare = ValueList.Create<Line>([.. part.ToArray().Select(Bare)]);
        foreach (var (goal, isBare) in ((ValueList<Line>, bool)[])[(exact, false), (bare, true)])
        {
            if (isBare && bare == exact)
            {
                break;
            }

            if (Of(goal, scale, start, isBare, cancellation) is { } rule)
            {
                return rule;
            }
        }

        return null;
    }

    /// <summary>The rule that gives just these lines.</summary>
    private static FoundRule? Of(ValueList<Line> lines, Scale scale, int start, bool isBare, CancellationToken cancellation)
    {
        if (Known(lines, scale, cancellation) is { } exercise)
        {
            return new FoundRule(start + 1, start + lines.Count, exercise.Pattern, exercise.Name, isBare);
        }

        return lines.Sum(l => l.Notes.Count) <= MostNotes && PatternSearch.Explain(lines, scale, cancellation) is { } rule
            ? new FoundRule(start + 1, start + lines.Count, rule, null, isBare)
            : null;
    }

    /// <summary>The exercise of the repertoire that has these lines in this scale.</summary>
    private static Exercise? Known(ValueList<Line> lines, Scale scale, CancellationToken cancellation)
    {
        foreach (var exercise in (Exercise[])[.. Repertoire.Traditional, .. Repertoire.Choir, .. Repertoire.Voice, .. Repertoire.Alankaras])
        {
            if (exercise.Pattern.TryExpand(scale, out var expansion, out _, cancellation) && SoundAlike(Scaled(expansion.Lines, ReadSection.CommonLengthOf(expansion.Lines)), lines))
            {
                return exercise;
            }
        }

        return null;
    }

    private static bool SoundAlike(Line[] one, ValueList<Line> other)
    {
        if (one.Length != other.Count)
        {
            return false;
        }

        for (var l = 0; l < one.Length; l++)
        {
            if (!one[l].SoundsAs(other[l]))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The lines in units of their commonest length, without what is sung on them.</summary>
    private static Line[] Scaled(ValueList<Line> lines, Rational unit) =>
        [.. lines.Select(l => new Line(InUnits(l, unit).Notes.ConvertAll(n => n with { Sung = null })))];

    /// <summary>A line whose unit is another length; notes that it does not fit stay as they are.</summary>
    internal static Line InUnits(Line line, Rational unit) =>
        new(line.Notes.ConvertAll(n => Fits(n, unit) ? n with { Length = n.Length / unit, Rest = n.Rest / unit } : n));

    private static bool Fits(LineNote note, Rational unit) => Fits(note.Length / unit) && Fits(note.Rest / unit);

    private static bool Fits(Rational units) => units.Denominator <= 4_096 && units <= 4_096;

    /// <summary>A line whose last note lasts one unit, without a silence.</summary>
    private static Line Bare(Line line)
    {
        var notes = line.Notes.AsSpan().ToArray();
        notes[^1] = notes[^1] with { Length = Rational.One, Rest = Rational.Zero };
        return new Line(ValueList.Create<LineNote>(notes));
    }
}
