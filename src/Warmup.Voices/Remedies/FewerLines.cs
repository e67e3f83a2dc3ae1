using System.Globalization;

namespace Warmup.Voices;

/// <summary>Only some of a drill's lines. Immutable, value equality.</summary>
public sealed record FewerLines : Remedy
{
    /// <summary>Names the lines that stay.</summary>
    /// <param name="lines">Their numbers, from 1, in rising order; at least one.</param>
    /// <exception cref="ArgumentException">There are none, or they do not rise from 1 or more.</exception>
    public FewerLines(ValueList<int> lines)
    {
        var before = 0;
        foreach (var line in lines)
        {
            if (line <= before)
            {
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"the lines must be numbers from 1 in rising order, not {line} after {before}"), nameof(lines));
            }

            before = line;
        }

        Lines = before > 0 ? lines : throw new ArgumentException("there must be at least 1 line that stays, not 0", nameof(lines));
    }

    /// <summary>The numbers of the lines that stay, from 1, in rising order.</summary>
    public ValueList<int> Lines { get; }

    internal override RemedyKind Kind => RemedyKind.Lines;

    /// <summary>The drill with these of its lines as its <see cref="Drill.Expansion"/>.</summary>
    /// <param name="drill">The drill.</param>
    /// <exception cref="ArgumentException">The drill has no line of such a number.</exception>
    /// <exception cref="PatternException">The drill's scale has no such lines.</exception>
    public override Drill Apply(Drill drill)
    {
        var all = Require.NotNull(drill).Expand();
        if (Lines[^1] > all.Lines.Count)
        {
            throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"there is no line {Lines[^1]}: {OneLine.Cut(drill.Title, 80)} has {all.Lines.Count} {(all.Lines.Count == 1 ? "line" : "lines")}"), nameof(drill));
        }

        return drill with { Expansion = new Expansion(Lines.ConvertAll(l => all.Lines[l - 1]), all.Findings) };
    }

    /// <inheritdoc/>
    public override string Describe(Drill drill)
    {
        ArgumentNullException.ThrowIfNull(drill);
        return ToString();
    }

    /// <summary>The lines.</summary>
    public override string ToString() => OneLine.Of($"only {(Lines.Count == 1 ? "line" : "lines")} {LineNumbers.ToText(Lines)}");

    // One for each twentieth of the lines begun that is left out.
    internal override int Size(Drill drill)
    {
        var all = drill.Expand().Lines.Count;
        return (int)new Rational(20L * (all - Lines.Count), all).Ceiling();
    }
}
