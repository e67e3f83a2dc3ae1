namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>
    /// An equal pattern in a plain order of words: what the laws that hold in every scale make of it. It gives the same lines everywhere.
    /// </summary>
    /// <remarks>
    /// Local laws only: words that cancel or merge (reversed twice, take after take), words that change places (the frame's words first,
    /// then those that change each line, then those that pick whole lines), empty parts, and neighbours in a sum that end alike. Two
    /// patterns that give the same lines in every scale can still have different normal forms.
    /// </remarks>
    public Pattern Normalize() => NormalForm.Of(this);
}

/// <summary>What a law makes of one combinator directly after another.</summary>
internal enum Rewrite
{
    /// <summary>Nothing; they stay.</summary>
    Stay,

    /// <summary>Both vanish.</summary>
    Cancel,

    /// <summary>One word stands for both.</summary>
    Merge,

    /// <summary>They change places.</summary>
    Swap,
}

/// <summary>Rewrites neighbours by the laws that hold in every scale. Which laws those are the combinators say themselves.</summary>
internal static class NormalForm
{
    public static Pattern Of(Pattern pattern) => pattern switch
    {
        UnaryPattern unary => Apply(unary, Of(unary.Inner)),
        BinaryPattern binary => Interleaved(binary.Connective, Of(binary.First), Of(binary.Second)),
        SumPattern sum => Sum([.. sum.Parts.ConvertAll(Of)]),
        _ => pattern,
    };

    /// <summary>What the laws make of <paramref name="outer"/> applied to <paramref name="inner"/> applied to anything.</summary>
    /// <param name="outer">The outer combinator.</param>
    /// <param name="inner">The inner one.</param>
    /// <param name="first">What stands inside afterwards, or for both.</param>
    /// <param name="second">What stands outside after a change of places.</param>
    public static Rewrite Step(UnaryPattern outer, UnaryPattern inner, out UnaryPattern first, out UnaryPattern second)
    {
        (first, second) = (outer, inner);
        if (outer.UndoesItself && outer.Operation == inner.Operation)
        {
            return Rewrite.Cancel;
        }

        if (outer.After(inner) is { } merged)
        {
            first = merged;
            return merged.IsIdentity ? Rewrite.Cancel : Rewrite.Merge;
        }

        // What is stuck on its own inner combinator lets through, whatever the rank, what passes both of them.
        if (!ChangePlaces(outer, inner) || !(inner.IsStuck ? ChangePlaces(outer, (UnaryPattern)inner.Inner) : outer.Rank < inner.Rank))
        {
            return Rewrite.Stay;
        }

        (first, second) = (outer.Past(inner), inner.Past(outer));
        return Rewrite.Swap;
    }

    private static bool ChangePlaces(UnaryPattern outer, UnaryPattern inner) =>
        outer.Class < inner.Class ? outer.GoesInside(inner) : inner.GoesInside(outer);

    /// <summary>A combinator applied to a pattern in normal form.</summary>
    private static Pattern Apply(UnaryPattern combinator, Pattern inner)
    {
        if (inner is EmptyPattern || combinator.IsIdentity)
        {
            return inner;
        }

        var outer = (UnaryPattern)combinator.Around(inner);
        if (inner is not UnaryPattern child)
        {
            return outer;
        }

        return Step(outer, child, out var first, out var second) switch
        {
            Rewrite.Cancel => child.Inner,
            Rewrite.Merge => Apply(first, child.Inner),
            Rewrite.Swap => Apply(second, Apply(first, child.Inner)),
            _ => outer,
        };
    }

    private static Pattern Sum(List<Pattern> parts)
    {
        var kept = new List<Pattern>(parts.Count);
        foreach (var part in SumPattern.Flat([.. parts]))
        {
            Append(kept, part);
        }

        return Pattern.Sum([.. kept]);
    }

    private static void Append(List<Pattern> kept, Pattern part)
    {
        if (part is EmptyPattern)
        {
            return;
        }

        // Two neighbours that end on the same word are one sum that ends on it; that one may end as its neighbour does in turn.
        if (kept.Count > 0 && kept[^1] is UnaryPattern left && part is UnaryPattern right && left.DistributesOverSums && left.Operation == right.Operation)
        {
            kept.RemoveAt(kept.Count - 1);
            Append(kept, Apply(left, Sum([left.Inner, right.Inner])));
            return;
        }

        kept.Add(part);
    }

    private static Pattern Interleaved(PatternWord connective, Pattern first, Pattern second)
    {
        if (first is EmptyPattern || second is EmptyPattern)
        {
            return first is EmptyPattern ? second : first;
        }

        return first is UnaryPattern left && second is UnaryPattern right && left.DistributesOver(connective) && left.Operation == right.Operation
            ? Apply(left, Interleaved(connective, left.Inner, right.Inner))
            : connective.Build(new WordParts(first, default, second));
    }
}
