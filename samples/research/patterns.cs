#!/usr/bin/env dotnet
#:project ../../src/Warmup.Testing
#:property PublishAot=false
#:property RestorePackagesWithLockFile=false

// A notebook in one file: how many melodies a small space of patterns has, how often two laws hold, and a law stated and tried.
//
// Run it with: dotnet run samples/research/patterns.cs [-- LARGEST-SIZE]    (1 to 4, 3 by default; 4 takes some seconds)
using System.Globalization;
using Warmup;
using Warmup.Research;
using Warmup.Testing;

var largest = args is [var text] && int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var typed) && typed is >= 1 and <= 4 ? typed : 3;
var space = new PatternEnumeration(PatternVocabulary.Usual, largest);
var patterns = space.Range(0, space.Count).ToList();
var entries = (IEnumerable<CatalogueEntry>)Catalogue.Default.Entries;
var parents = entries.Where(e => e.Family == ScaleFamily.Parent).Select(e => e.Scale).ToList();
var derived = entries.Where(e => e.Family == ScaleFamily.Derived).Select(e => e.Scale).ToList();

// 1. Melodies: the lines as they are written, tone by tone.
Console.WriteLine($"Melodies over the {parents.Count} parent scales, words: {PatternVocabulary.Usual}");
Console.WriteLine();
Console.WriteLine("| size up to | patterns | melodies in one scale | melodies in all | refused |");
Console.WriteLine("|---|---|---|---|---|");
for (var size = 1; size <= largest; size++)
{
    var some = patterns.Where(p => p.Nodes <= size).ToList();
    var inOne = some.Select(p => Melody(p, parents[0])).Where(m => m is not null).Distinct().Count();
    var everywhere = new HashSet<string>();
    var refused = 0;
    foreach (var scale in parents)
    {
        foreach (var melody in some.Select(p => Melody(p, scale)))
        {
            refused += melody is null ? 1 : 0;
            _ = melody is not null && everywhere.Add(melody);
        }
    }

    Console.WriteLine(Row($"{size}", $"{some.Count}", $"{inOne}", $"{everywhere.Count}", $"{refused}"));
}

// 2. How often a law holds, counted case by case; a law that is silent where a scale refuses is not counted there.
Console.WriteLine();
Console.WriteLine("| law | parent scales | derived scales |");
Console.WriteLine("|---|---|---|");
Console.WriteLine(Row("backwards(p) = reversed(p)", Share(parents, p => p.Backwards(), p => p.Reversed()), Share(derived, p => p.Backwards(), p => p.Reversed())));
Console.WriteLine(Row("ends(reversed(p)) = reversed(ends(p))", Share(parents, p => p.Reversed().Ends(), p => p.Ends().Reversed()), Share(derived, p => p.Reversed().Ends(), p => p.Ends().Reversed())));

// 3. A law of one's own for a rule of one's own, over generated patterns and scales; the seed makes the run repeatable.
var homeward = PatternRule.Of("homeward", p => p.Returning().Ends());
var keepsShort = new PatternLaw(
    "leaves two notes a line",
    "each line of f(p) has at most 2 notes",
    "Whatever the pattern, a line that goes home and keeps its ends has no more than two notes.",
    (f, p, _, s) => f.Lines(p, s) is not { } lines ? LawVerdict.SaysNothing
        : ((IEnumerable<Line>)lines).All(l => l.Notes.Count <= 2) ? LawVerdict.Holds : LawVerdict.Broken);
var reports = LawSuite.Check(homeward, new LawOptions { Seed = "1,1" }, keepsShort, PatternLaws.KeepsLineCount, PatternLaws.StaysInTheScale);
Console.WriteLine();
Console.WriteLine(string.Join('\n', reports));
return reports.All(r => r.Holds) ? 0 : 1;

static string? Melody(Pattern pattern, Scale scale) => pattern.TryExpand(scale, out var expansion, out _) ? expansion!.ToTones() : null;

static string Row(params string[] cells) => $"| {string.Join(" | ", cells)} |";

string Share(List<Scale> scales, Func<Pattern, Pattern> left, Func<Pattern, Pattern> right)
{
    var (cases, held) = (0, 0);
    foreach (var scale in scales)
    {
        foreach (var pattern in patterns)
        {
            if (Melody(left(pattern), scale) is { } a && Melody(right(pattern), scale) is { } b)
            {
                cases++;
                held += a == b ? 1 : 0;
            }
        }
    }

    return string.Create(CultureInfo.InvariantCulture, $"{held} of {cases} ({100.0 * held / cases:0.0} %)");
}
