using System.Globalization;

namespace Warmup.Research;

/// <summary>
/// Which laws of symmetry hold for a pattern in a scale. They are no laws of all patterns (<c>docs/laws.md</c> has those): each holds for some patterns
/// in some scales.
/// </summary>
/// <remarks>
/// Lines are compared by what you hear: tones, lengths, silences and sung words. A law is <see langword="null"/> where the scale refuses one of its sides,
/// or it would be too large. Immutable, value equality.
/// </remarks>
public sealed record SymmetryLaws
{
    private SymmetryLaws()
    {
    }

    /// <summary>Each line reads the same in both directions.</summary>
    public bool? IsPalindrome { get; private init; }

    /// <summary><c>last-first(p) = p</c>: the lines in the opposite order are the same lines.</summary>
    public bool? IsLastFirst { get; private init; }

    /// <summary><c>reversed(p) = p</c>.</summary>
    public bool? IsReversed { get; private init; }

    /// <summary><c>mirrored(p) = p</c>: the rule grown from the upper tonic down gives the same lines.</summary>
    public bool? IsMirrored { get; private init; }

    /// <summary><c>swapped(p) = p</c>: the notes of the other list are the same notes.</summary>
    public bool? IsSwapped { get; private init; }

    /// <summary><c>backwards(p) = p</c>: each line sung back, refilled from the other list, is itself.</summary>
    public bool? IsBackwards { get; private init; }

    /// <summary><c>backwards(p) = reversed(p)</c>: the two ways to turn a line round agree.</summary>
    public bool? IsTurnedAlike { get; private init; }

    /// <summary><c>backwards(backwards(p)) = p</c>: what refilling takes away it gives back.</summary>
    public bool? IsUndoneBackwards { get; private init; }

    /// <summary>Tries the laws.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="scale">The scale.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static SymmetryLaws Of(Pattern pattern, Scale scale, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        ArgumentNullException.ThrowIfNull(scale);
        if (Lines(pattern, p => p) is not { } plain)
        {
            return new SymmetryLaws();
        }

        var reversed = Lines(pattern, p => p.Reversed());
        var backwards = Lines(pattern, p => p.Backwards());
        return new SymmetryLaws
        {
            IsPalindrome = plain.All(ReadsAlike),
            IsLastFirst = Alike(Lines(pattern, p => p.LastFirst()), plain),
            IsReversed = Alike(reversed, plain),
            IsMirrored = Alike(Lines(pattern, p => p.Mirrored()), plain),
            IsSwapped = Alike(Lines(pattern, p => p.Swapped()), plain),
            IsBackwards = Alike(backwards, plain),
            IsTurnedAlike = Alike(backwards, reversed),
            IsUndoneBackwards = backwards is null ? null : Alike(Lines(pattern, p => p.Backwards().Backwards()), plain),
        };

        ValueList<Line>? Lines(Pattern rule, Func<Pattern, Pattern> turn)
        {
            try
            {
                return turn(rule).TryExpand(scale, out var expansion, out _, cancellationToken) ? expansion.Lines : null;
            }
            catch (PatternTooLargeException)
            {
                return null;
            }
        }
    }

    /// <summary>The laws that hold, in one line.</summary>
    public override string ToString()
    {
        (string Name, bool? Holds)[] laws =
        [
            ("palindrome", IsPalindrome), ("last-first", IsLastFirst), ("reversed", IsReversed), ("mirrored", IsMirrored), ("swapped", IsSwapped), ("backwards", IsBackwards),
            ("turned alike", IsTurnedAlike), ("undone backwards", IsUndoneBackwards),
        ];
        var holding = string.Join(", ", laws.Where(l => l.Holds == true).Select(l => l.Name));
        return string.Create(CultureInfo.InvariantCulture, $"{(holding.Length == 0 ? "none" : holding)} ({laws.Count(l => l.Holds is null)} say nothing)");
    }

    private static bool? Alike(ValueList<Line>? one, ValueList<Line>? other) => one is { } left && other is { } right ? Sound.Alike(left.AsSpan(), right.AsSpan()) : null;

    private static bool ReadsAlike(Line line)
    {
        for (var i = 0; i < line.Notes.Count / 2; i++)
        {
            if (!line.Notes[i].SoundsAs(line.Notes[^(i + 1)]))
            {
                return false;
            }
        }

        return true;
    }
}
