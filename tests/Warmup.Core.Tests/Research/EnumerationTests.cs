using System.Globalization;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Warmup.Testing;

namespace Warmup.Tests;

/// <summary>
/// Enumeration against brute force: every tree over the words is built one by one and put in its normal form, without the table of counts.
/// </summary>
public class EnumerationTests
{
    private static readonly string[] Scales =
    [
        "S R2 G3 M1 P D2 N3 S'",
        "S R2 G3 P D2 S' / S' N3 D2 P M1 G3 R2 S",
        "vakra: S M1 G3 M1 P N3 S' / S' N3 P M1 G3 R2 S",
    ];

    [Theory]
    [InlineData("ladder figure(1 3) .reversed .mirrored .ends .take(2) +", 4)]
    [InlineData("run .up-down .below(1) .mirrored .ends .each-note(2) .grow", 5)]
    [InlineData("run ladder .returning(1) .swapped .mirrored .alternate .weave +", 4)]
    [InlineData("run .drop(1) .drop(2) .take(1) .take(2) .repeat(2) .last-first +", 4)]
    [InlineData("run .transposed(1) .transposed(-1) .above(1) .span(-1 0) .mirrored .up-down +", 4)]
    public void Every_normal_form_over_the_words_has_one_index_and_nothing_else_has(string words, int size)
    {
        var vocabulary = PatternVocabulary.Parse(words);
        var enumeration = new PatternEnumeration(vocabulary, size);
        var expected = Trees(words, size).Where(p => p.Normalize() == p).ToHashSet();
        var listed = enumeration.Range(0, enumeration.Count).ToList();
        Assert.Equal(listed.Count, listed.ToHashSet().Count);
        Assert.Empty(expected.Except(listed));
        Assert.Empty(listed.Except(expected));
        Assert.All(listed.Select((pattern, index) => (Index: (Int128)index, Item: pattern)), pair => Assert.Equal(pair.Index, enumeration.IndexOf(pair.Item)));
        Assert.Equal(listed.Select(p => p.Nodes).Order(), listed.Select(p => p.Nodes));
    }

    [Fact]
    public void Counts_of_a_small_choice_are_those_of_a_hand_count()
    {
        // Over ladder, .ends and .reversed: ends once, reversed once, reversed first. Sizes: L | L.ends, L.reversed | L.reversed.ends.
        var enumeration = new PatternEnumeration(PatternVocabulary.Parse("ladder .ends .reversed"), 4);
        Assert.Equal([1, 2, 1, 0], Enumerable.Range(1, 4).Select(n => (int)enumeration.CountOfSize(n)));
        Assert.Equal("ladder.reversed.ends", enumeration[3].ToString());
    }

    [Property(MaxTest = 300)]
    public Property Index_and_form_agree_for_large_indexes()
    {
        var enumeration = new PatternEnumeration(PatternVocabulary.Usual, PatternEnumeration.LargestSize);
        return Prop.ForAll(Gen.Choose(0, int.MaxValue - 1).Two().ToArbitrary(), pair =>
        {
            var index = (Int128)pair.Item1 * pair.Item2 % enumeration.Count;
            var pattern = enumeration[index];
            return enumeration.IndexOf(pattern) == index && pattern.Normalize() == pattern && pattern.Nodes <= enumeration.Size;
        });
    }

    [Fact]
    public void A_pattern_outside_the_choice_or_not_in_normal_form_has_no_index()
    {
        var enumeration = new PatternEnumeration(PatternVocabulary.Usual, 4);
        Assert.Null(enumeration.IndexOf(Pattern.Parse("ladder.grow")));
        Assert.Null(enumeration.IndexOf(Pattern.Parse("ladder.ends.ends")));
        Assert.Null(enumeration.IndexOf(Pattern.Parse("ladder.ends.reversed")));
        Assert.Null(enumeration.IndexOf(Pattern.Parse("ladder.ends + run.ends")));
        Assert.NotNull(enumeration.IndexOf(Pattern.Parse("(ladder + run).ends")));
    }

    [Fact]
    public void Ranges_put_together_are_the_whole_and_indexes_beyond_it_are_refused()
    {
        var enumeration = new PatternEnumeration(PatternVocabulary.Usual, 3);
        var half = enumeration.Count / 2;
        Assert.Equal(
            enumeration.Range(0, enumeration.Count),
            enumeration.Range(0, half).Concat(enumeration.Range(half, enumeration.Count)));
        Assert.Contains("between 0 and", Assert.Throws<ArgumentOutOfRangeException>(() => enumeration[enumeration.Count]).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => enumeration[-1]);
        Assert.Throws<ArgumentOutOfRangeException>(() => new PatternEnumeration(PatternVocabulary.Usual, 13));
    }

    [Fact]
    public void A_sample_has_one_index_of_each_equal_part_and_its_seed_gives_it_again()
    {
        var enumeration = new PatternEnumeration(PatternVocabulary.Usual, PatternEnumeration.LargestSize);
        var drawn = enumeration.Sample(1_000, 7).ToList();
        Assert.Equal(1_000, drawn.Count);
        Assert.Equal(drawn, enumeration.Sample(1_000, 7));
        Assert.NotEqual(drawn, enumeration.Sample(1_000, 8));

        // The k-th index lies in the k-th thousandth of all.
        Assert.All(drawn.Select((index, k) => (index, k)), d => Assert.Equal(d.k, (int)(d.index * 1_000 / enumeration.Count)));
        Assert.Contains("splitmix64/1", PatternEnumeration.SampleMethod, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => enumeration.Sample(0, 1));
    }

    [Fact]
    public void Within_its_part_every_index_is_drawn_about_as_often_and_a_sample_of_all_is_all()
    {
        // 44 patterns up to size 2 in 11 parts of 4: in 2,000 samples each index is expected 500 times, with a standard deviation of 19.
        var enumeration = new PatternEnumeration(PatternVocabulary.Usual, 2);
        Assert.Equal(44, (int)enumeration.Count);
        var counts = new int[44];
        for (var seed = 0UL; seed < 2_000; seed++)
        {
            foreach (var index in enumeration.Sample(11, seed))
            {
                counts[(int)index]++;
            }
        }

        Assert.All(counts, c => Assert.InRange(c, 410, 590));
        Assert.Equal(Enumerable.Range(0, 44).Select(i => (Int128)i), enumeration.Sample(1_000_000, 3));
    }

    [Fact]
    public void Going_through_a_range_keeps_no_pattern()
    {
        var enumeration = new PatternEnumeration(PatternVocabulary.Usual, PatternEnumeration.LargestSize);
        using var range = enumeration.Range(1_000_000, 5_000).GetEnumerator();
        var seen = Walk(range, 4_000);
        GC.Collect();
        GC.WaitForPendingFinalizers();
        GC.Collect();
        Assert.True(range.MoveNext());

        // The last one is still the enumerator's; of the others at most what the vocabulary itself holds is left.
        Assert.InRange(seen.Count(w => w.IsAlive), 0, 1);
    }

    [System.Runtime.CompilerServices.MethodImpl(System.Runtime.CompilerServices.MethodImplOptions.NoInlining)]
    private static List<WeakReference> Walk(IEnumerator<Pattern> range, int count)
    {
        var seen = new List<WeakReference>();
        for (var i = 0; i < count && range.MoveNext(); i++)
        {
            seen.Add(new WeakReference(range.Current));
        }

        return seen;
    }

    [Theory]
    [InlineData("", "needs a primitive")]
    [InlineData(".ends", "needs a primitive")]
    [InlineData("ladder.ends", "must be one word")]
    [InlineData("ladder .repeat(1)", "must be one word that changes something")]
    [InlineData("ladder .pairs(2)", "must be one word")]
    [InlineData("ladder empty", "must be one word")]
    [InlineData("ladder .nothing", "unknown word")]
    public void A_choice_that_cannot_be_read_says_why(string words, string expected) =>
        Assert.Contains(expected, Assert.Throws<WarmupFormatException>(() => PatternVocabulary.Parse(words)).Message, StringComparison.Ordinal);

    [Fact]
    public void A_choice_prints_as_it_is_read() =>
        Assert.Equal(PatternVocabulary.Usual, PatternVocabulary.Parse(PatternVocabulary.Usual.ToString()));

    /// <summary>The table of docs/patterns.md holds the counts of the usual choice; the different expansions are told apart in three scales.</summary>
    [Fact]
    public void The_documented_counts_are_current()
    {
        var enumeration = new PatternEnumeration(PatternVocabulary.Usual, 5);
        var scales = Array.ConvertAll(Scales, Scale.Parse);
        var seen = new HashSet<(int, int, int)>();
        var documented = Documented("docs.patterns.md", "| size | expressions | different expansions so far |");
        var rows = new List<string>();
        Int128 before = 0;
        for (var size = 1; size <= 5; size++)
        {
            var count = enumeration.CountOfSize(size);
            seen.UnionWith(enumeration.Range(before, count).AsParallel().Select(p => (Sound(p, scales[0]), Sound(p, scales[1]), Sound(p, scales[2]))));
            before += count;
            var row = string.Create(CultureInfo.InvariantCulture, $"| {size} | {count} | {seen.Count} |");
            TestContext.Current.TestOutputHelper?.WriteLine(row);
            rows.Add(row);
        }

        Assert.Equal(rows, documented.Skip(1).Take(5));
    }

    internal static string[] Documented(string resource, string header)
    {
        using var reader = new StreamReader(typeof(EnumerationTests).Assembly.GetManifestResourceStream(resource)!);
        return [.. reader.ReadToEnd().Split('\n').Select(l => l.TrimEnd()).SkipWhile(l => l != header).Skip(1)];
    }

    private static int Sound(Pattern pattern, Scale scale)
    {
        if (!pattern.TryExpand(scale, out var expansion, out _))
        {
            return 0;
        }

        var hash = default(HashCode);
        foreach (var line in expansion!.Lines)
        {
            hash.Add(-1);
            foreach (var note in line.Notes)
            {
                hash.Add((note.Tone, note.Length, note.Rest));
            }
        }

        return hash.ToHashCode();
    }

    // Every tree over the words, by size, without any law.
    private static List<Pattern> Trees(string words, int largest)
    {
        var list = SplitWords(words);
        var bySize = new List<Pattern>[largest + 1];
        for (var size = 1; size <= largest; size++)
        {
            var made = bySize[size] = [];
            if (size == 1)
            {
                made.AddRange(list.Where(w => w[0] is not ('.' or '+')).Select(Pattern.Parse));
                continue;
            }

            foreach (var word in list.Where(w => w[0] == '.' && w is not (".alternate" or ".weave")))
            {
                made.AddRange(bySize[size - 1].Select(p => Pattern.Parse($"({p}){word}")));
            }

            foreach (var rest in Enumerable.Range(1, Math.Max(0, size - 2)))
            {
                foreach (var one in bySize[rest])
                {
                    foreach (var other in bySize[size - 1 - rest])
                    {
                        if (list.Contains(".alternate"))
                        {
                            made.Add(one.Alternate(other));
                        }

                        if (list.Contains(".weave"))
                        {
                            made.Add(one.Weave(other));
                        }

                        // A sum of a sum has fewer parts than were put in: it is built from three or more parts of its own below.
                        if (list.Contains("+") && one.Word != "+" && other.Word != "+")
                        {
                            made.Add(one + other);
                        }
                    }
                }
            }

            if (list.Contains("+") && size >= 4)
            {
                made.AddRange(from a in bySize[1] from b in bySize[1] from c in bySize[1] where size == 4 select a + b + c);
            }
        }

        return [.. bySize.Skip(1).SelectMany(p => p)];
    }

    private static List<string> SplitWords(string words) =>
        [.. System.Text.RegularExpressions.Regex.Matches(words, @"[^\s(]+(\([^)]*\))?").Select(m => m.Value)];
}
