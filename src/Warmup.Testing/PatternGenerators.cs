using FsCheck;
using FsCheck.Fluent;

namespace Warmup.Testing;

/// <summary>Generators of patterns of bounded size, with shrinking.</summary>
/// <remarks>
/// Numbers are small on purpose (the first lines, windows of a few notes): a broken law breaks on small numbers, and large ones only empty the
/// lines. Sizes count the parts of the tree, as <see cref="Pattern.Nodes"/> does.
/// </remarks>
public static class PatternGenerators
{
    /// <summary>The most notes of a generated pattern in a seven-note scale: 300.</summary>
    public static int MostNotes => 300;

    private static readonly Scale SevenNotes = new("seven notes", Catalogue.Default.Parent(29).Scale.Ascent);

    /// <summary>A pattern of 1 to 6 parts.</summary>
    public static Gen<Pattern> Patterns => OfSize(6);

    /// <summary>A pattern of 1 to 6 parts that follows any scale: nothing is written out in svara letters.</summary>
    public static Gen<Pattern> Rules => Gen.Choose(1, 6).SelectMany(size => Exactly(size, Primitive));

    /// <summary>A primitive pattern: a ladder, a run or a figure.</summary>
    public static Gen<Pattern> Primitive => Gen.Frequency((3, Gen.Constant(Pattern.Ladder)), (2, Gen.Constant(Pattern.Run)), (5, Figure));

    /// <summary>A figure of 1 to 6 steps within five places.</summary>
    public static Gen<Pattern> Figure => from steps in Gen.Choose(0, 4).ArrayOf(1, 6)
                                         from shift in Gen.Frequency((6, Gen.Constant(0)), (1, Gen.Choose(-2, 1)))
                                         select Pattern.Figure([.. steps.Select(s => s + shift)]);

    /// <summary>One to three lines written in places counted from 1.</summary>
    public static Gen<Pattern> WrittenSteps => Written(Gen.Choose(-3, 9).Select(n => n < 0 ? n : n + 1).Select(n => n.ToString(System.Globalization.CultureInfo.InvariantCulture)));

    /// <summary>One to three lines written in svara letters.</summary>
    public static Gen<Pattern> WrittenLetters => Written(
        from letter in Gen.Elements("S", "R", "G", "M", "P", "D", "N")
        from octave in Gen.Frequency((6, Gen.Constant(string.Empty)), (2, Gen.Constant("'")), (1, Gen.Constant("_")))
        select letter + octave);

    /// <summary>A pattern of at most a number of parts.</summary>
    /// <param name="most">The most parts, at least 1.</param>
    public static Gen<Pattern> OfSize(int most) => Gen.Choose(1, most).SelectMany(size => Exactly(
        size, Gen.Frequency((8, Primitive), (1, WrittenSteps), (1, WrittenLetters))));

    /// <summary>A pattern of a number of parts over a choice of primitives.</summary>
    /// <param name="size">The number of parts, at least 1; a pattern that would be too long comes out smaller.</param>
    /// <param name="primitive">The primitives.</param>
    public static Gen<Pattern> Exactly(int size, Gen<Pattern> primitive)
    {
        ArgumentNullException.ThrowIfNull(primitive);
        return size <= 1 ? primitive
            : size == 2 ? Combined(size, primitive)
            : Gen.Frequency((5, Combined(size, primitive)), (1, Pair(size, primitive)));
    }

    /// <summary>A combinator of one pattern, as a function.</summary>
    public static Gen<Func<Pattern, Pattern>> Combinator => Gen.Frequency(
        (4, Frames),
        (4, EachLine),
        (3, LineOrder),
        (3, Others));

    /// <summary>Smaller patterns than a given one: its operands, then the same word with smaller operands or smaller numbers.</summary>
    /// <param name="pattern">The pattern.</param>
    public static IEnumerable<Pattern> Shrink(Pattern pattern)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        return Smaller(pattern);
    }

    private static IEnumerable<Pattern> Smaller(Pattern pattern)
    {
        foreach (var operand in pattern.Operands)
        {
            yield return operand;
        }

        if (pattern.Operands.IsEmpty && pattern != Pattern.Run && pattern.Word is "[]" or "figure")
        {
            yield return Pattern.Run;
        }

        for (var i = 0; i < pattern.Operands.Count; i++)
        {
            if (pattern.Word == "+" && pattern.Operands.Count > 2)
            {
                yield return pattern.With([.. pattern.Operands.Where((_, at) => at != i)], default);
            }

            foreach (var smaller in Shrink(pattern.Operands[i]))
            {
                if (Rebuilt(pattern, [.. pattern.Operands.Select((o, at) => at == i ? smaller : o)], pattern.Numbers) is { } rebuilt)
                {
                    yield return rebuilt;
                }
            }
        }

        foreach (var numbers in SmallerNumbers(pattern.Numbers))
        {
            if (Rebuilt(pattern, pattern.Operands, numbers) is { } rebuilt && rebuilt != pattern)
            {
                yield return rebuilt;
            }
        }
    }

    private static Gen<Func<Pattern, Pattern>> Frames => Gen.OneOf(
        Word(p => p.Reversed()),
        Word(p => p.Mirrored()),
        Word(p => p.Swapped()),
        Number(-2, 3, (p, n) => p.Transposed(n)),
        Number(1, 3, (p, n) => p.Below(n)),
        Number(1, 3, (p, n) => p.Above(n)));

    private static Gen<Func<Pattern, Pattern>> EachLine => Gen.OneOf(
        Word(p => p.Backwards()),
        Word(p => p.ThereAndBack()),
        Word(p => p.Ends()),
        Number(2, 3, (p, n) => p.EachNote(n)),
        Number(2, 3, (p, n) => p.EveryNth(n)),
        Number(1, 3, (p, n) => p.Hold(n)),
        Number(2, 8, (p, n) => p.Fill(n)),
        Number(2, 3, (p, n) => p.Stretch(n)),
        Number(2, 3, (p, n) => p.Shrink(n)),
        Number(1, 2, (p, n) => p.Rest(n)),
        Gen.Choose(1, 3).ArrayOf(2, 4).Select(Function<int[]>((p, factors) => p.Rhythm(factors))));

    private static Gen<Func<Pattern, Pattern>> LineOrder => Gen.OneOf(
        Number(1, 5, (p, n) => p.Take(n)),
        Number(1, 3, (p, n) => p.Drop(n)),
        Number(1, 4, (p, n) => p.Rotate(n)),
        Number(2, 3, (p, n) => p.Repeat(n)),
        Number(2, 3, (p, n) => p.EachLine(n)),
        Word(p => p.LastFirst()),
        Gen.Shuffle([1, 2, 3]).Select(Function<int[]>((p, order) => p.Order(order))));

    private static Gen<Func<Pattern, Pattern>> Others => Gen.OneOf(
        Word(p => p.UpDown()),
        Word(p => p.Grow()),
        Word(p => p.Join()),
        Number(2, 4, (p, n) => p.Windows(n)),
        Number(2, 4, (p, n) => p.Split(n)),
        Number(0, 1, (p, n) => p.Returning(n)),
        from first in Gen.Choose(1, 3)
        from more in Gen.Choose(0, 3)
        select (Func<Pattern, Pattern>)(p => p.Notes(first, first + more)));

    private static Gen<Pattern> Combined(int size, Gen<Pattern> primitive) =>
        from inner in Exactly(size - 1, primitive)
        from combinator in Combinator
        select Small(() => combinator(inner)) ?? inner;

    private static Gen<Pattern> Pair(int size, Gen<Pattern> primitive) =>
        from first in Gen.Choose(1, size - 2)
        from one in Exactly(first, primitive)
        from other in Exactly(Math.Max(1, size - 1 - first), primitive)
        from how in Gen.Choose(0, 3)
        select Small(() => how switch { 0 => one.Alternate(other), 1 => one.Weave(other), _ => one + other }) ?? one;

    // A law has to have room to grow a pattern, join it and multiply it before the bounds are met.
    private static Pattern? Small(Func<Pattern> build)
    {
        try
        {
            var pattern = build();
            _ = pattern.Grow().Repeat(4);
            return pattern.TryExpand(SevenNotes, out var expansion, out _) && expansion!.NoteCount > MostNotes ? null : pattern;
        }
        catch (ArgumentException)
        {
            return null;
        }
    }

    private static Gen<Pattern> Written(Gen<string> note) =>
        from lines in (from notes in (from name in note
                                      from more in Gen.Elements(string.Empty, string.Empty, string.Empty, " ,", " -")
                                      select name + more).ArrayOf(1, 6)
                       select string.Join(' ', notes)).ArrayOf(1, 3)
        select Pattern.Written(string.Join(" / ", lines));

    private static Gen<Func<Pattern, Pattern>> Word(Func<Pattern, Pattern> combinator) => Gen.Constant(combinator);

    private static Gen<Func<Pattern, Pattern>> Number(int low, int high, Func<Pattern, int, Pattern> combinator) =>
        Gen.Choose(low, high).Select(Function(combinator));

    private static Func<T, Func<Pattern, Pattern>> Function<T>(Func<Pattern, T, Pattern> combinator) => value => pattern => combinator(pattern, value);

    private static IEnumerable<ValueList<int>> SmallerNumbers(ValueList<int> numbers)
    {
        for (var i = 0; i < numbers.Count; i++)
        {
            if (numbers.Count > 1)
            {
                yield return [.. numbers.Where((_, at) => at != i)];
            }

            if (numbers[i] != 0)
            {
                yield return [.. numbers.Select((n, at) => at == i ? n - Math.Sign(n) : n)];
            }
        }
    }

    private static Pattern? Rebuilt(Pattern pattern, ValueList<Pattern> operands, ValueList<int> numbers)
    {
        try
        {
            return pattern.With(operands, numbers);
        }
        catch (ArgumentException)
        {
            // Such as an order that is no longer a permutation: not a smaller pattern.
            return null;
        }
    }

    private static Gen<T[]> ArrayOf<T>(this Gen<T> gen, int fewest, int most) =>
        Gen.Choose(fewest, most).SelectMany(count => gen.ListOf(count)).Select(list => list.ToArray());
}
