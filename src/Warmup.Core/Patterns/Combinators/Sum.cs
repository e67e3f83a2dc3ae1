namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>The lines of one pattern, then those of another.</summary>
    /// <param name="first">The pattern sung first.</param>
    /// <param name="second">The pattern sung second.</param>
    /// <exception cref="ArgumentException">The sum is too deep, or has too many parts or notes.</exception>
    public static Pattern operator +(Pattern first, Pattern second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        return Sum([first, second]);
    }

    /// <summary>The lines of several patterns, one pattern after the other.</summary>
    /// <param name="parts">The patterns; none gives <see cref="Empty"/>, one gives itself.</param>
    /// <remarks>A sum of sums is one sum of all their parts, so grouping makes no difference.</remarks>
    /// <exception cref="ArgumentException">The sum is too deep, or has too many parts or notes.</exception>
    public static Pattern Sum(params ReadOnlySpan<Pattern> parts)
    {
        foreach (var part in parts)
        {
            ArgumentNullException.ThrowIfNull(part, nameof(parts));
        }

        return parts.Length switch
        {
            0 => Empty,
            1 => parts[0],
            _ => new SumPattern(SumPattern.Flat(parts)),
        };
    }
}

internal sealed record SumPattern : Pattern
{
    public SumPattern(ValueList<Pattern> parts)
        : base(parts.Max(p => p.Depth) + 1, parts.Sum(p => p.Nodes) + 1, parts.Sum(p => p.UsualNotes), parts.Max(p => p.UsualLongest)) =>
        Parts = parts;

    /// <summary>Two parts or more, none of them a sum.</summary>
    public ValueList<Pattern> Parts { get; }

    internal override string Text => string.Join(" + ", Parts.ConvertAll(p => p.Text));

    internal override string OperandText => $"({Text})";

    /// <summary>The parts with those of sums in their place.</summary>
    public static ValueList<Pattern> Flat(ReadOnlySpan<Pattern> parts)
    {
        var flat = new List<Pattern>(parts.Length);
        foreach (var part in parts)
        {
            if (part is SumPattern sum)
            {
                flat.AddRange(sum.Parts);
            }
            else
            {
                flat.Add(part);
            }
        }

        return flat.ToValueList();
    }

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var parts = new Line[Parts.Count][];
        var (lines, notes) = (0, 0L);
        for (var p = 0; p < parts.Length; p++)
        {
            parts[p] = Parts[p].Lines(frame, expander);
            lines += parts[p].Length;
            notes += Line.CountNotes(parts[p]);
            expander.Bound(notes);
        }

        var all = new Line[lines];
        var at = 0;
        foreach (var part in parts)
        {
            part.CopyTo(all, at);
            at += part.Length;
        }

        return all;
    }
}
