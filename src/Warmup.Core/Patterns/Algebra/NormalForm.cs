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

/// <summary>What a law makes of one combinator directly behind another.</summary>
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

/// <summary>The laws that hold in every scale, as rewriting of neighbours.</summary>
internal static class NormalForm
{
    public static Pattern Of(Pattern pattern)
    {
        switch (pattern)
        {
            case UnaryPattern unary:
                return Apply(unary.Operation, Of(unary.Inner));
            case BinaryPattern binary:
                return Interleaved(binary.Connective, Of(binary.First), Of(binary.Second));
            case SumPattern sum:
                return Sum([.. sum.Parts.ConvertAll(Of)]);
            default:
                return pattern;
        }
    }

    /// <summary>Whether a word changes nothing.</summary>
    public static bool IsIdentity(Operation operation) => operation.Word.Name switch
    {
        "repeat" or "each-line" or "each-note" or "every-nth" or "rhythm" or "stretch" or "shrink" => operation.Numbers.AsSpan().IndexOfAnyExcept(1) < 0,
        "transposed" or "below" or "above" or "span" or "rotate" => operation.Numbers.AsSpan().IndexOfAnyExcept(0) < 0,
        "order" => operation.Numbers.SequenceEqual(Enumerable.Range(1, operation.Numbers.Count)),
        _ => false,
    };

    /// <summary>What the laws make of <paramref name="outer"/> applied to <paramref name="inner"/> applied to anything.</summary>
    /// <param name="outer">The outer combinator.</param>
    /// <param name="inner">The inner one.</param>
    /// <param name="first">What stands inside afterwards, or for both.</param>
    /// <param name="second">What stands outside after a change of places.</param>
    public static Rewrite Step(UnaryPattern outer, UnaryPattern inner, out UnaryPattern first, out UnaryPattern second)
    {
        first = outer;
        second = inner;
        if (outer.Operation == inner.Operation && outer is ReversedPattern or MirroredPattern or SwappedPattern or LastFirstPattern)
        {
            return Rewrite.Cancel;
        }

        if (Merged(outer, inner) is { } merged)
        {
            first = merged;
            return IsIdentity(merged.Operation) ? Rewrite.Cancel : Rewrite.Merge;
        }

        if (inner is SpanPattern { Inner: UpDownPattern } stuck)
        {
            // A reach cannot pass into an up-down; what passes through both of them goes in, whatever its rank.
            if (outer.Class is not (LawClass.Frame or LawClass.Turn or LawClass.EachLine))
            {
                return Rewrite.Stay;
            }

            second = outer is MirroredPattern ? new SpanPattern(Pattern.Run, -stuck.End, -stuck.Home) : inner;
            return Rewrite.Swap;
        }

        if (!Commute(outer, inner) || Rank(outer) >= Rank(inner))
        {
            return Rewrite.Stay;
        }

        if (outer is SpanPattern reach && inner is MirroredPattern)
        {
            // Inside the mirror forward is down, and the home note is the far end.
            first = new SpanPattern(Pattern.Run, -reach.End, -reach.Home);
        }

        return Rewrite.Swap;
    }

    /// <summary>Whether a combinator of each of two parts is the same as of their sum.</summary>
    public static bool Distributes(UnaryPattern combinator) =>
        combinator.Class is LawClass.Frame or LawClass.Turn or LawClass.EachLine or LawClass.Barrier
        || combinator is GrowPattern or WindowsPattern or SplitPattern or NotesPattern or EachLinePattern;

    /// <summary>Whether a combinator of both parts is the same as of their interleaving.</summary>
    public static bool PassesThrough(UnaryPattern combinator, PatternWord connective) =>
        combinator.Class == LawClass.Frame
        || (connective == AlternatePattern.WordEntry && (combinator.Class is LawClass.Turn or LawClass.EachLine or LawClass.Barrier));

    private static Pattern Apply(Operation operation, Pattern inner)
    {
        if (inner is EmptyPattern || IsIdentity(operation))
        {
            return inner;
        }

        var outer = (UnaryPattern)operation.Word.Build(new WordParts(inner, operation.Numbers, null, operation.Texts));
        if (inner is not UnaryPattern child)
        {
            return outer;
        }

        return Step(outer, child, out var first, out var second) switch
        {
            Rewrite.Cancel => child.Inner,
            Rewrite.Merge => Apply(first.Operation, child.Inner),
            Rewrite.Swap => Apply(second.Operation, Apply(first.Operation, child.Inner)),
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
        if (kept.Count > 0 && kept[^1] is UnaryPattern left && part is UnaryPattern right && left.Operation == right.Operation && Distributes(left))
        {
            kept.RemoveAt(kept.Count - 1);
            Append(kept, Apply(left.Operation, Sum([left.Inner, right.Inner])));
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

        return first is UnaryPattern left && second is UnaryPattern right && left.Operation == right.Operation && PassesThrough(left, connective)
            ? Apply(left.Operation, Interleaved(connective, left.Inner, right.Inner))
            : connective.Build(new WordParts(first, default, second));
    }

    private static UnaryPattern? Merged(UnaryPattern outer, UnaryPattern inner)
    {
        try
        {
            return (outer, inner) switch
            {
                (TakePattern a, TakePattern b) => new TakePattern(Pattern.Run, Math.Min(a.Count, b.Count)),
                (DropPattern a, DropPattern b) => new DropPattern(Pattern.Run, a.Count + b.Count),
                (RepeatedPattern a, RepeatedPattern b) => new RepeatedPattern(Pattern.Run, a.Times * b.Times),
                (EachLinePattern a, EachLinePattern b) => new EachLinePattern(Pattern.Run, a.Times * b.Times),
                (EachNotePattern a, EachNotePattern b) => new EachNotePattern(Pattern.Run, a.Times * b.Times),
                (EveryNthPattern a, EveryNthPattern b) => new EveryNthPattern(Pattern.Run, a.N * b.N),
                (RotatePattern a, RotatePattern b) => new RotatePattern(Pattern.Run, a.Count + b.Count),
                (HoldPattern a, HoldPattern b) => new HoldPattern(Pattern.Run, a.Count + b.Count),
                (RestPattern a, RestPattern b) => new RestPattern(Pattern.Run, a.Count + b.Count),
                (SpanPattern a, SpanPattern b) => new SpanPattern(Pattern.Run, a.Home + b.Home, a.End + b.End),
                (StretchPattern a, StretchPattern b) => Stretched(a.Factor * b.Factor),
                (EndsPattern, EndsPattern) => inner,
                (JoinPattern, JoinPattern) => inner,
                (FillPattern a, FillPattern b) when a.Count == b.Count => inner,
                (SungPattern a, SungPattern b) when a.ByLine == b.ByLine => outer,
                _ => null,
            };
        }
        catch (ArgumentException)
        {
            // One word cannot hold the number: the two stay.
            return null;
        }
    }

    private static StretchPattern? Stretched(Rational factor) => factor.Numerator <= Pattern.MostUnits && factor.Denominator <= Pattern.MostUnits
        ? new StretchPattern(Pattern.Run, (int)factor.Numerator, (int)factor.Denominator)
        : null;

    /// <summary>The place of a combinator in a normal form, innermost first, among those it can change places with.</summary>
    private static int Rank(UnaryPattern combinator) => combinator switch
    {
        SpanPattern => 0,
        MirroredPattern => 1,
        SwappedPattern => 2,
        _ => 10 * (int)combinator.Class,
    };

    private static bool Commute(UnaryPattern outer, UnaryPattern inner)
    {
        var (a, b) = outer.Class < inner.Class ? (outer, inner) : (inner, outer);
        return a.Class switch
        {
            LawClass.Frame => b.Class != LawClass.Barrier && !(a is SpanPattern && b.Class == LawClass.UpDown),
            LawClass.Turn => b is EndsPattern or EachNotePattern or StretchPattern or RestPattern || b.Class is LawClass.UpDown or LawClass.LineOrder,
            LawClass.EachLine => b.Class is LawClass.UpDown or LawClass.LineOrder,
            _ => false,
        };
    }
}
