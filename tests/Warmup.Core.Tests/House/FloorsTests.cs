namespace Warmup.Tests;

/// <summary>
/// Source: the order of the folders in docs/decisions. A folder uses itself and the floors below it; folders of one floor do not use each
/// other.
/// </summary>
[Trait("Run", "whole")]
public class FloorsTests
{
    private static readonly string[][] CoreFloors =
    [
        ["Values"],
        ["Findings"],
        ["Pitch", "Parallel"],
        ["Scales"],
        ["Rhythm", "Tunings"],
        ["Patterns"],
        ["Research", "Drones"],
        ["Drills"],
        ["Files"],
    ];

    private static readonly string[][] VoicesFloors = [["Shared"], ["Consonance", "Singers"], ["Difficulty", "Checks"], ["Breathing"], ["Fits"], ["Remedies"]];

    // The sources that every library compiles for itself count as the core's lowest floor; they use its fractions.
    private static readonly Lazy<FloorReader> Core = new(() => new FloorReader("Warmup.Core", CoreFloors, Sources("Warmup.Core", "Values/Shared/")));

    private static readonly Lazy<FloorReader> Voices = new(() => new FloorReader("Warmup.Voices", VoicesFloors, Sources("Warmup.Voices", "Shared/"), Core.Value));

    /// <summary>The build compiles the same sources; that this reader understands them too takes as long as all the rest.</summary>
    [Fact]
    [Trait("Run", "whole")]
    public void The_sources_are_understood() => Assert.Empty(Core.Value.Errors.Concat(Voices.Value.Errors));

    [Fact]
    public void No_folder_of_the_core_uses_one_that_is_not_below_it()
    {
        var core = Core.Value;
        Assert.Empty(core.Homeless);
        Says(core.Arrows());
        Assert.True(core.Followed > 20_000, $"only {core.Followed} uses were followed");
    }

    [Fact]
    public void No_folder_of_the_voices_uses_one_that_is_not_below_it()
    {
        var voices = Voices.Value;
        Assert.Empty(voices.Homeless);
        Says(voices.Arrows());
        Assert.True(voices.Followed > 2_000, $"only {voices.Followed} uses were followed");
    }

    /// <summary>A made-up tree: each way of using a symbol, downward where nothing is said, upward and sideways where it is named.</summary>
    [Fact]
    public void An_arrow_upward_or_sideways_is_named_with_both_files_and_the_symbol()
    {
        var reader = new FloorReader("made-up", [["Low"], ["Left", "Right"], ["High"]],
        [
            new("Low/Number.cs", """
                namespace N;
                public sealed record Number(int Value) { public static Number operator +(Number a, Number b) => new(a.Value + b.Value); }
                public static class Upward { public static int Of(Number n) => n.Doubled() + new Sum(n, n).Value; }
                """),
            new("Left/Sum.cs", "namespace N; public sealed record Sum(Number A, Number B) { public int Value => (A + B).Value; }"),
            new("Left/Deep/Sums.cs", "namespace N; public static class Sums { public static Sum Of(Number n) => new(n, n); }"),
            new("Right/Other.cs", """
                namespace N;
                /// <summary>A name in a comment is no use: <see cref="Tower"/>.</summary>
                public static class Other { public static int Of(Number n) { var made = Sums.Of(n); return made.Value; } }
                """),
            new("High/Tower.cs", """
                namespace N;
                public static class Doubling { public static int Doubled(this Number n) => Sums.Of(n).Value + Other.Of(n); }
                public readonly record struct Tower(int Height) { public static implicit operator Tower(Number n) => new(n.Value); }
                """),
            new("Right/Silent.cs", "namespace N; public static class Silent { public static string Of(Number n) => Show(n); private static string Show(in Tower t) => \"\"; }"),
        ]);
        Assert.Empty(reader.Homeless);
        Assert.Empty(reader.Errors);
        Assert.Equal(
            [
                "Low/Number.cs uses High/Tower.cs: Doubling.Doubled(Number)",
                "Low/Number.cs uses Left/Sum.cs: Sum",
                "Low/Number.cs uses Left/Sum.cs: Sum.Sum(Number, Number)",
                "Low/Number.cs uses Left/Sum.cs: Sum.Value",
                "Right/Other.cs uses Left/Deep/Sums.cs: Sums",
                "Right/Other.cs uses Left/Deep/Sums.cs: Sums.Of(Number)",
                "Right/Other.cs uses Left/Sum.cs: Sum",
                "Right/Other.cs uses Left/Sum.cs: Sum.Value",
                "Right/Silent.cs uses High/Tower.cs: Tower",
                "Right/Silent.cs uses High/Tower.cs: Tower.implicit operator Tower(Number)",
            ],
            reader.Arrows().Select(a => a.ToString()));
    }

    [Fact]
    public void A_folder_on_no_floor_is_named() =>
        Assert.Equal(["Attic"], new FloorReader("made-up", [["Low"]], [new("Attic/A.cs", "class A;"), new("Low/B.cs", "class B;")]).Homeless);

    private static void Says(IReadOnlyList<FloorArrow> arrows)
    {
        var found = arrows.Select(a => a.ToString()).ToList();
        Assert.True(found.Count == 0, string.Join(Environment.NewLine, found));
    }

    private static IEnumerable<SourceFile> Sources(string library, string shared) =>
        Under(SourceTree.At($"src/{library}"), string.Empty).Concat(Under(SourceTree.At("src/Shared"), shared, SearchOption.TopDirectoryOnly))
            .Concat(((string[])["Json", "Chance"]).SelectMany(f => Under(SourceTree.At($"src/Shared/{f}"), shared)));

    private static IEnumerable<SourceFile> Under(string folder, string prefix, SearchOption depth = SearchOption.AllDirectories) => Directory.EnumerateFiles(folder, "*.cs", depth)
        .Select(f => (File: f, Path: prefix + Path.GetRelativePath(folder, f).Replace('\\', '/')))
        .Where(f => !f.Path.StartsWith("bin/", StringComparison.Ordinal) && !f.Path.StartsWith("obj/", StringComparison.Ordinal))
        .Select(f => new SourceFile(f.Path, File.ReadAllText(f.File)));
}
