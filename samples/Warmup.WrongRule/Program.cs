// A rule that is wrong on purpose, caught by the law suite and shrunk to its smallest case.
//
// The rule tries to read each line backwards by turning its notes round. That is right in a scale that is the same both ways. If the descent
// differs, the rule sings notes that the descent does not have, which the library's own word does not do.
//
// Run it with: dotnet run --project samples/Warmup.WrongRule [--seed "..."]; it exits with 1, because a law is broken.
using Warmup;
using Warmup.Testing;

var plain = PatternRule.OfLines("turned round", lines => lines.ConvertAll(line => new Line(Enumerable.Reverse(line.Notes).ToValueList())));
var asBackwards = new PatternLaw(
    "agrees with backwards",
    "f(p) = backwards(p)",
    "Turning the notes round is reading the line backwards.",
    (f, p, q, s) => PatternLaws.Same(f.Lines(p, s), p.Backwards().TryExpand(s, out var back, out var refusal) ? back!.Lines : null));

var options = new LawOptions { Patterns = PatternGenerators.Primitive, Seed = args is ["--seed", var seed] ? seed : null };
var reports = LawSuite.Check(plain, options, PatternLaws.UndoesItself, PatternLaws.KeepsNotes, PatternLaws.WorksLineByLine, asBackwards);
foreach (var report in reports)
{
    Console.WriteLine(report.Describe());
    if (report.Failure is { } failure)
    {
        Console.WriteLine($"  p is   {failure.Pattern.Expand(failure.Scale)}");
        Console.WriteLine($"  f(p)   {string.Join(" / ", plain.Lines(failure.Pattern, failure.Scale)!.Value)}");
        Console.WriteLine($"  wanted {failure.Pattern.Backwards().Expand(failure.Scale)}");
    }
}

return reports.All(r => r.IsKept) ? 0 : 1;
