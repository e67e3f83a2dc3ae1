// Flips chosen operators of the core and of Warmup.Voices, one at a time, and counts how many flips the two libraries' tests catch.
//
//     dotnet run tests/Mutation/run.cs            all rows of mutants.tsv
//     dotnet run tests/Mutation/run.cs -- 3 17    some of them
//
// All flips are built at once into a copy of the sources, each behind a switch that an environment variable sets, so that one build serves
// them all. Exit code 0 where at least nine in ten are caught.
using System.Diagnostics;
using System.Globalization;

const int LongestMinutes = 10;
var root = Root(Environment.CurrentDirectory);
var mutants = File.ReadLines(Path.Combine(root, "tests", "Mutation", "mutants.tsv")).Skip(1)
    .Select(row => row.Split('\t'))
    .Select(cells => new Mutant(int.Parse(cells[0], CultureInfo.InvariantCulture), cells[1], cells[2], cells[3]))
    .Where(m => args.Length == 0 || args.Contains(m.Number.ToString(CultureInfo.InvariantCulture)))
    .ToList();
var copy = Directory.CreateTempSubdirectory("warmup-mutation-").FullName;
try
{
    Copy(root, copy);
    Plant(copy, mutants);
    Console.WriteLine($"building {mutants.Count} flips");
    var tests = new List<string>();
    foreach (var name in (string[])["Warmup.Core.Tests", "Warmup.Voices.Tests"])
    {
        if (Run("dotnet", ["build", $"tests/{name}", "-v", "quiet", "-p:TreatWarningsAsErrors=false", "-p:RunAnalyzers=false"], copy, null, Console.Error) != 0)
        {
            Console.Error.WriteLine("the copy with the flips does not build");
            return 2;
        }

        tests.Add(Directory.EnumerateFiles(Path.Combine(copy, "tests", name, "bin"), name + ".dll", SearchOption.AllDirectories).First());
    }

    if (Test(tests, null) is not Outcome.Survived)
    {
        Console.Error.WriteLine("the tests fail without any flip");
        return 2;
    }

    var caught = 0;
    foreach (var mutant in mutants)
    {
        var outcome = Test(tests, mutant.Number);
        caught += outcome is Outcome.Survived ? 0 : 1;
        Console.WriteLine($"{mutant.Number,2}  {outcome.ToString().ToLowerInvariant(),-9}  {mutant.File}: {mutant.Expression}  ->  {mutant.Flipped}");
    }

    Console.WriteLine($"{caught} of {mutants.Count} flips caught");
    return caught * 10 >= mutants.Count * 9 ? 0 : 1;
}
finally
{
    Directory.Delete(copy, recursive: true);
}

static string Root(string from) => File.Exists(Path.Combine(from, "Warmup.Core.sln"))
    ? from
    : Root(Path.GetDirectoryName(from) ?? throw new InvalidOperationException("run this inside the project's folder"));

static void Copy(string root, string copy)
{
    var listed = new StringWriter();
    Run("git", ["ls-files", "-co", "--exclude-standard"], root, null, listed);
    foreach (var file in listed.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries).Where(f => File.Exists(Path.Combine(root, f))))
    {
        var target = Path.Combine(copy, file);
        Directory.CreateDirectory(Path.GetDirectoryName(target)!);
        File.Copy(Path.Combine(root, file), target);
    }
}

static void Plant(string copy, IReadOnlyList<Mutant> mutants)
{
    foreach (var mutant in mutants)
    {
        var path = Path.Combine(copy, mutant.File);
        var source = File.ReadAllText(path);
        var at = source.IndexOf(mutant.Expression, StringComparison.Ordinal);
        if (at < 0 || source.IndexOf(mutant.Expression, at + 1, StringComparison.Ordinal) >= 0)
        {
            throw new InvalidOperationException($"flip {mutant.Number}: '{mutant.Expression}' must stand exactly once in {mutant.File}");
        }

        // An argument list holds several expressions; only the flipped one is put behind the switch.
        var (one, other) = Differing(mutant.Expression, mutant.Flipped);
        var planted = mutant.Expression.Replace(one, $"(Flip.Is({mutant.Number}) ? {other} : {one})", StringComparison.Ordinal);
        File.WriteAllText(path, source.Replace(mutant.Expression, planted, StringComparison.Ordinal));
    }

    File.WriteAllText(Path.Combine(copy, "src", "Shared", "Flip.cs"), """
        namespace Warmup;

        internal static class Flip
        {
            private static readonly string? On = System.Environment.GetEnvironmentVariable("WARMUP_FLIP");

            public static bool Is(int number) => On == number.ToString(System.Globalization.CultureInfo.InvariantCulture);
        }
        """);
}

static (string One, string Other) Differing(string expression, string flipped)
{
    var (ones, others) = (expression.Split(", "), flipped.Split(", "));
    return ones.Length > 1 && ones.Length == others.Length && ones.All(IsWhole)
        ? ones.Zip(others).Single(pair => pair.First != pair.Second)
        : (expression, flipped);
}

// A comma inside brackets parts no expressions.
static bool IsWhole(string part) => "([{".Sum(c => part.Count(p => p == c)) == ")]}".Sum(c => part.Count(p => p == c));

static Outcome Test(IEnumerable<string> programs, int? flip)
{
    foreach (var tests in programs)
    {
        switch (Run("dotnet", [tests, "-stopOnFail", "-noColor"], Path.GetDirectoryName(tests)!, flip, TextWriter.Null))
        {
            case 0: continue;
            case null: return Outcome.Endless;
            default: return Outcome.Caught;
        }
    }

    return Outcome.Survived;
}

static int? Run(string program, IEnumerable<string> arguments, string folder, int? flip, TextWriter output)
{
    var start = new ProcessStartInfo(program, arguments) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true };
    if (flip is { } number)
    {
        start.Environment["WARMUP_FLIP"] = number.ToString(CultureInfo.InvariantCulture);
    }

    using var process = Process.Start(start)!;
    process.OutputDataReceived += (_, line) => Say(line.Data);
    process.ErrorDataReceived += (_, line) => Say(line.Data);
    process.BeginOutputReadLine();
    process.BeginErrorReadLine();
    if (!process.WaitForExit(TimeSpan.FromMinutes(LongestMinutes)))
    {
        process.Kill(entireProcessTree: true);
        return null;
    }

    process.WaitForExit();
    return process.ExitCode;

    void Say(string? line)
    {
        lock (output)
        {
            if (line is not null)
            {
                output.WriteLine(line);
            }
        }
    }
}

internal sealed record Mutant(int Number, string File, string Expression, string Flipped);

internal enum Outcome
{
    Caught,
    Endless,
    Survived,
}
