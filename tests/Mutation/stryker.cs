// Lets Stryker.NET plant its mistakes in a library, or in some of its folders or files, and lists those that no test notices.
//
//     dotnet run tests/Mutation/stryker.cs -- Warmup.Midi
//     dotnet run tests/Mutation/stryker.cs -- Warmup.Voices Checks Breathing
//     dotnet run tests/Mutation/stryker.cs -- Warmup.Core Pitch/Degree.cs --tests Pitch Values --without A_slow_test Another
//     dotnet run tests/Mutation/stryker.cs -- Warmup.Core Pitch Rhythm --sample 150 --seed 1
//
// Stryker only plants them: all at once in one library, each asleep until its number is asked for. Here each is tried in a process of its own, in which
// the tests run until the first fails. So a mistake in a value that is made once for a process is in force too, and an endless loop is told by
// processor time, which other work on the machine does not change.
// --sample draws that many places of each folder or file, each as likely as any other, tries all mistakes at them, and tells between which shares the
// whole folder's lies (Wilson, 95 in a hundred, as many tries as places). The same --seed (1) over the same sources draws the same.
// After --tests only the tests in these folders (or files) of the test project run, and those beside its project file; after --without stand tests
// that are too slow to be run for every mistake. The share is then a lower bound. It needs the tool: dotnet tool install --global dotnet-stryker.
// It works in a copy of the sources, which stays for the next run: WARMUP_MUTATION_COPY, or warmup-stryker in the folder for temporary files.
// WARMUP_MUTATION_WORKERS (2) says how many mistakes are tried at a time, WARMUP_MUTATION_CASES (12) how many cases a test makes up,
// WARMUP_MUTATION_PATIENCE (10) how many seconds of processor time longer than without a mistake the tests may take before they count as endless.
// Exit code 0 where at least 85 in a hundred are noticed.
using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

const double LeastPercent = 85;
const string Idle = "Idle.cs";

// A test is run once for every mistake in what it reaches, so that it tries fewer cases than usual.
var mostCases = int.Parse(Environment.GetEnvironmentVariable("WARMUP_MUTATION_CASES") ?? "12", CultureInfo.InvariantCulture);

var parts = args.Skip(1).TakeWhile(a => !IsOption(a)).ToList();
var (onlyTests, without) = (After("--tests"), After("--without"));
var (sample, seed) = (Number("--sample", int.MaxValue), Number("--seed", 1));
if (args.Length == 0 || IsOption(args[0]) || args.Any(a => IsOption(a) && After(a).Count == 0) || sample < 1 || seed < 0)
{
    Console.Error.WriteLine("usage: dotnet run tests/Mutation/stryker.cs -- LIBRARY [FOLDER or FILE]... [--tests FOLDER or FILE...] [--without TEST...] [--sample COUNT] [--seed NUMBER]");
    return 2;
}

var library = args[0];
var root = Root(Environment.CurrentDirectory);
if (!Directory.Exists(Path.Combine(root, "src", library)))
{
    Console.Error.WriteLine($"there is no library '{library}' in {Path.Combine(root, "src")}");
    return 2;
}

var copy = Environment.GetEnvironmentVariable("WARMUP_MUTATION_COPY") ?? Path.Combine(Path.GetTempPath(), "warmup-stryker");
var changed = Update(root, copy, (file, text) => Changed(file, text, library, parts, onlyTests, without, mostCases));
var tests = Path.Combine(copy, "tests", $"{library}.Tests");
var built = Path.Combine(tests, "bin", "Debug", "net10.0");
var mistaken = Path.Combine(copy, "mistaken.dll");
if (Planted() is not { } planted)
{
    return 2;
}

var random = new Random(seed);
List<Mistake> drawn = [];
Dictionary<string, int> all = [];
foreach (var part in planted.GroupBy(m => m.Part).OrderBy(g => g.Key, StringComparer.Ordinal))
{
    var places = part.GroupBy(m => (m.File, m.Start, m.End)).ToArray();
    random.Shuffle(places);
    drawn.AddRange(places.Take(sample).SelectMany(p => p));
    if (places.Length > sample)
    {
        all[part.Key] = part.Count();
    }
}

if (Tried(drawn) is not { } tested)
{
    return 2;
}

foreach (var file in tested.GroupBy(m => m.File).OrderBy(f => f.Key, StringComparer.Ordinal))
{
    Console.WriteLine($"{Percent(file)} {file.Key}");
    foreach (var mistake in file.Where(m => !m.IsNoticed).OrderBy(m => m.Start))
    {
        Console.WriteLine($"    {mistake.Line}: {Flat(mistake.Original)}  ->  {Flat(mistake.Replacement)}{(mistake.Outcome == Outcome.NotReached ? "  (no test comes here)" : string.Empty)}");
    }
}

var isEnough = true;
foreach (var part in tested.GroupBy(m => m.Part).OrderBy(p => p.Key, StringComparer.Ordinal))
{
    isEnough &= 100.0 * part.Count(m => m.IsNoticed) >= LeastPercent * part.Count();
    var isSample = all.TryGetValue(part.Key, out var count);
    Console.WriteLine($"{Percent(part)}{(isSample ? $" drawn from {count}: {Interval(part)}" : string.Empty)} in {part.Key}; {part.Count(m => m.Outcome == Outcome.Endless)} of the noticed ones because the tests do not end, {part.Count(m => m.Outcome == Outcome.NotReached)} of the others where no test comes");
}

return isEnough ? 0 : 1;

// Lets Stryker plant all mistakes; null where it fails.
List<Mistake>? Planted()
{
    // Stryker itself runs one test only, which reaches little: it would try all mistakes if the test reached nothing.
    File.WriteAllText(Path.Combine(tests, Idle), $$"""
        public class Idle
        {
            [Xunit.Fact]
            public void Does_little()
            {
                foreach (var type in System.Reflection.Assembly.Load("{{library}}").GetTypes())
                {
                    if (!type.ContainsGenericParameters)
                    {
                        System.Runtime.CompilerServices.RuntimeHelpers.RunClassConstructor(type.TypeHandle);
                    }
                }
            }
        }
        """);
    var configuration = new JsonObject
    {
        ["stryker-config"] = new JsonObject
        {
            ["test-runner"] = "mtp", ["project"] = $"{library}.csproj", ["concurrency"] = 1, ["coverage-analysis"] = "perTest", ["test-case-filter"] = "FullyQualifiedName~Does_little",
            ["reporters"] = new JsonArray("json"), ["ignore-mutations"] = new JsonArray("string"),

            // Every null argument of every library is tried in tests/Warmup.Packages.Tests.
            ["ignore-methods"] = new JsonArray("*ThrowIfNull"),
        },
    };
    var written = Path.Combine(tests, "out", "reports", "mutation-report.json");
    if (File.Exists(mistaken) && File.Exists(written) && File.GetLastWriteTimeUtc(written) > File.GetLastWriteTimeUtc(mistaken) && !changed.Exists(f => f.StartsWith("src/", StringComparison.Ordinal) || !f.Contains('/', StringComparison.Ordinal)))
    {
        // The library is as it was when mistakes were last planted in it: only the tests are built anew.
        using var build = Process.Start(new ProcessStartInfo("dotnet", ["build", "-v", "quiet", "-nologo"]) { WorkingDirectory = tests })!;
        build.WaitForExit();
        if (build.ExitCode != 0)
        {
            return null;
        }
    }
    else
    {
        File.WriteAllText(Path.Combine(tests, "stryker-config.json"), configuration.ToJsonString());
        File.Delete(mistaken);
        using var stryker = Process.Start(new ProcessStartInfo("dotnet-stryker", ["--skip-version-check", "-O", "out"]) { WorkingDirectory = tests })!;
        while (!stryker.WaitForExit(20))
        {
            KeepMistaken();
        }

        if (stryker.ExitCode != 0)
        {
            return null;
        }
    }

    var report = JsonNode.Parse(File.ReadAllText(written))!;
    var mistakes = new List<Mistake>();
    foreach (var (path, file) in report["files"]!.AsObject())
    {
        var name = Path.GetRelativePath(copy, Path.Combine((string?)report["projectRoot"] ?? tests, path)).Replace('\\', '/');
        var inLibrary = name.StartsWith($"src/{library}/", StringComparison.Ordinal) ? name[$"src/{library}/".Length..] : name;
        var part = parts.Find(p => inLibrary == p || inLibrary.StartsWith($"{p}/", StringComparison.Ordinal)) ?? library;
        var source = file!["source"]!.GetValue<string>();
        var lines = source.Split('\n').Aggregate(new List<int> { 0 }, (starts, line) => [.. starts, starts[^1] + line.Length + 1]);
        foreach (var mutant in file["mutants"]!.AsArray())
        {
            // Others cannot be compiled, or are of a kind that is not wanted.
            if ((string?)mutant!["status"] is "NoCoverage" or "Survived" or "Killed" or "Timeout")
            {
                int At(string end) => lines[(int)mutant["location"]![end]!["line"]! - 1] + (int)mutant["location"]![end]!["column"]! - 1;
                mistakes.Add(new Mistake(
                    (string)mutant["id"]!, part, name, (int)mutant["location"]!["start"]!["line"]!, At("start"), At("end"), source[At("start")..At("end")], (string)mutant["replacement"]!));
            }
        }
    }

    return mistakes;
}

// Keeps the library that has all mistakes in it: at its end Stryker puts the one without them back.
void KeepMistaken()
{
    var (with, without) = (new FileInfo(Path.Combine(built, $"{library}.dll")), new FileInfo(Path.Combine(built, $"{library}.dll.stryker-unchanged")));
    var kept = new FileInfo(mistaken);
    if (!with.Exists || !without.Exists || with.Length <= without.Length || (kept.Exists && kept.Length == with.Length))
    {
        return;
    }

    try
    {
        with.CopyTo(mistaken, overwrite: true);
    }
    catch (IOException)
    {
        kept.Delete(); // it is being written
    }
}

// Tries mistakes, each in a process of its own; null where that is impossible.
List<Mistake>? Tried(List<Mistake> mistakes)
{
    if (!File.Exists(mistaken))
    {
        Console.Error.WriteLine($"the library with the mistakes was not found while Stryker ran, as {built}/{library}.dll");
        return null;
    }

    // The tests as they were built, beside the others, with this library.
    var place = Path.Combine(tests, "bin", "Debug", "alone");
    foreach (var file in Directory.GetFiles(built, "*", SearchOption.AllDirectories))
    {
        var target = Path.Combine(place, Path.GetRelativePath(built, file));
        Directory.CreateDirectory(Path.GetDirectoryName(target)!);
        File.Copy(file == Path.Combine(built, $"{library}.dll") ? mistaken : file, target, overwrite: true);
    }

    // Which mistakes the tests reach, as the library writes it down at its end where it is asked to.
    var notes = Path.Combine(place, "notes");
    Array.ForEach(Directory.CreateDirectory(notes).GetFiles(), f => f.Delete());
    var times = Path.Combine(notes, "times.json");
    var (code, seconds, output) = Alone(place, null, double.MaxValue, ["-result-ctrf", times]);
    var reached = Directory.GetFiles(notes, "reached*").SelectMany(f => File.ReadAllText(f).Split([',', ';'], StringSplitOptions.RemoveEmptyEntries)).ToHashSet();
    if (code != 0 || reached.Count == 0)
    {
        Console.Error.WriteLine(code == 0 ? "the library with the mistakes does not say which of them the tests reach" : $"the tests fail without a mistake:\n{output}");
        return null;
    }

    // Tests that take more than a twentieth of all time come after the others have noticed nothing.
    var methods = JsonNode.Parse(File.ReadAllText(times))!["results"]!["tests"]!.AsArray()
        .GroupBy(t => ((string)t!["name"]!).Split('(')[0], t => (double)t!["duration"]!).Select(m => (Name: m.Key, Time: m.Sum())).ToList();
    var slow = methods.FindAll(m => m.Time * 20 > methods.Sum(other => other.Time)).ConvertAll(m => m.Name);
    Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{mistakes.Count} of {planted.Count} mistakes are tried; without a mistake the tests take {seconds:0.0} s of processor time"));
    var outcomes = new ConcurrentDictionary<string, Outcome>();
    Parallel.ForEach(mistakes.Where(m => reached.Contains(m.Id)), new ParallelOptions { MaxDegreeOfParallelism = Number("WARMUP_MUTATION_WORKERS", 2) }, mistake =>
    {
        var most = seconds + Number("WARMUP_MUTATION_PATIENCE", 10);
        var (ended, _, _) = Alone(place, mistake, most, [.. slow.SelectMany(m => (string[])["-method-", m])]);
        if (ended == 0 && slow.Count > 0)
        {
            (ended, _, _) = Alone(place, mistake, most, [.. slow.SelectMany(m => (string[])["-method", m])]);
        }

        outcomes[mistake.Id] = ended is null ? Outcome.Endless : ended == 0 ? Outcome.Missed : Outcome.Noticed;
    });
    return mistakes.ConvertAll(m => m with { Outcome = outcomes.GetValueOrDefault(m.Id, Outcome.NotReached) });
}

// Runs the tests one after the other in a process of their own until one fails, with a mistake or with none. There is no exit code where they took
// more than so many seconds of processor time, or stood still.
(int? Code, double Seconds, string Output) Alone(string place, Mistake? mistake, double mostSeconds, List<string> options)
{
    var program = Path.Combine(place, $"{library}.Tests.dll");
    var start = new ProcessStartInfo("dotnet", ["exec", program, "-noLogo", "-noColor", "-stopOnFail", "-parallelMode", "none", "-trait-", "Run=whole", .. options]) { WorkingDirectory = tests, RedirectStandardOutput = true };
    start.Environment["DOTNET_GCHeapHardLimit"] = "60000000"; // 1.5 GB, for loops that fill a list
    if (mistake is null)
    {
        start.Environment["TMPDIR"] = start.Environment["TMP"] = Path.Combine(place, "notes");
        start.Environment["STRYKER_COVERAGE_FILE"] = "reached.txt";
    }
    else
    {
        var number = Path.Combine(place, "notes", mistake.Id);
        File.WriteAllBytes(number, BitConverter.GetBytes(int.Parse(mistake.Id, CultureInfo.InvariantCulture)));
        start.Environment["STRYKER_MUTANT_FILE"] = number;
    }

    using var run = Process.Start(start)!;
    var output = run.StandardOutput.ReadToEndAsync();
    var (seconds, before, looks) = (0.0, 0.0, 0);
    while (!run.WaitForExit(100))
    {
        try
        {
            run.Refresh();
            seconds = run.TotalProcessorTime.TotalSeconds;
        }
        catch (InvalidOperationException)
        {
            continue; // it has just ended
        }

        // In a minute and a half, even beside other work, a process that has something to do gets a second of the processor.
        var isStill = ++looks % 900 == 0 && seconds < before + 1;
        before = looks % 900 == 0 ? seconds : before;
        if (seconds > mostSeconds || isStill)
        {
            run.Kill(entireProcessTree: true);
            run.WaitForExit();
            return (null, seconds, string.Empty);
        }
    }

    return (run.ExitCode, seconds, output.Result);
}

static bool IsOption(string argument) => argument is "--tests" or "--without" or "--sample" or "--seed";

List<string> After(string option) => [.. args.SkipWhile(a => a != option).Skip(1).TakeWhile(a => !IsOption(a))];

static string Root(string from) => File.Exists(Path.Combine(from, "Warmup.Core.sln"))
    ? from
    : Root(Path.GetDirectoryName(from) ?? throw new InvalidOperationException("run this inside the project's folder"));

int Number(string option, int otherwise) =>
    (IsOption(option) ? After(option).FirstOrDefault() : Environment.GetEnvironmentVariable(option)) is not { } text ? otherwise
    : int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number
    : -1;

static string Percent(IEnumerable<Mistake> some) =>
    string.Create(CultureInfo.InvariantCulture, $"{100.0 * some.Count(m => m.IsNoticed) / some.Count(),5:0.0} % of {some.Count(),4}");

// Wilson's interval for the share in all mistakes, of which these are a sample.
static string Interval(IEnumerable<Mistake> some)
{
    const double Z = 1.96;
    double n = some.DistinctBy(m => (m.File, m.Start, m.End)).Count(), share = (double)some.Count(m => m.IsNoticed) / some.Count();
    var (middle, half) = (share + (Z * Z / (2 * n)), Z * Math.Sqrt((share * (1 - share) / n) + (Z * Z / (4 * n * n))));
    return string.Create(CultureInfo.InvariantCulture, $"{100 * (middle - half) / (1 + (Z * Z / n)):0.0} to {100 * (middle + half) / (1 + (Z * Z / n)):0.0} %");
}

static string Flat(string text) => Regex.Replace(text, @"\s+", " ") is var flat && flat.Length > 160 ? flat[..160] + "…" : flat;

// Writes what differs, so that a second run builds only that; removes what is gone. Returns both.
static List<string> Update(string root, string copy, Func<string, byte[], string?> change)
{
    var files = Listed(root);
    var written = new List<string>();
    foreach (var file in files)
    {
        var text = File.ReadAllBytes(Path.Combine(root, file));
        var target = Path.Combine(copy, file);
        if (change(file, text) is { } changed)
        {
            text = System.Text.Encoding.UTF8.GetBytes(changed);
        }

        if (!File.Exists(target) || !text.AsSpan().SequenceEqual(File.ReadAllBytes(target)))
        {
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.WriteAllBytes(target, text);
            written.Add(file);
        }
    }

    var gone = Directory.EnumerateFiles(copy, "*.cs", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(copy, f).Replace('\\', '/'))
        .Where(f => !f.Contains("/obj/", StringComparison.Ordinal) && !f.Contains("/bin/", StringComparison.Ordinal)).Except(files).Where(f => Path.GetFileName(f) != Idle).ToList();
    gone.ForEach(f => File.Delete(Path.Combine(copy, f)));
    return [.. written, .. gone];
}

static HashSet<string> Listed(string root)
{
    using var git = Process.Start(new ProcessStartInfo("git", ["ls-files", "-co", "--exclude-standard"]) { WorkingDirectory = root, RedirectStandardOutput = true })!;
    var listed = git.StandardOutput.ReadToEnd();
    git.WaitForExit();
    return [.. listed.Split('\n', StringSplitOptions.RemoveEmptyEntries).Where(f => File.Exists(Path.Combine(root, f)))];
}

// What is different in the copy, if anything: one framework, no analyzers, no notes on covered lines; fewer made-up cases, and only the tests that
// are wanted. Stryker leaves generated files alone, so that files without wanted mistakes are called generated.
static string? Changed(string file, byte[] content, string library, List<string> parts, List<string> onlyTests, List<string> without, int mostCases)
{
    var text = System.Text.Encoding.UTF8.GetString(content);
    if (file == "Directory.Build.props")
    {
        return text
            .Replace("<TargetFrameworks>net8.0;net10.0</TargetFrameworks>", "<TargetFrameworks>net10.0</TargetFrameworks>", StringComparison.Ordinal)
            .Replace("<TreatWarningsAsErrors>true</TreatWarningsAsErrors>", "<TreatWarningsAsErrors>false</TreatWarningsAsErrors><RunAnalyzers>false</RunAnalyzers>", StringComparison.Ordinal)
            .Replace("<PackageReference Include=\"coverlet.MTP\" />", string.Empty, StringComparison.Ordinal);
    }

    if (file == $"tests/{library}.Tests/{library}.Tests.csproj" && onlyTests.Count > 0)
    {
        var wanted = string.Join(';', onlyTests.Select(t => t.EndsWith(".cs", StringComparison.Ordinal) ? t : $"{t}/**/*.cs").Prepend("*.cs"));
        return text.Replace("</Project>", $"<ItemGroup><Compile Remove=\"**/*.cs\" /><Compile Include=\"{wanted}\" /></ItemGroup></Project>", StringComparison.Ordinal);
    }

    if (!file.EndsWith(".cs", StringComparison.Ordinal))
    {
        return null;
    }

    if (file.StartsWith("tests/", StringComparison.Ordinal))
    {
        foreach (var slow in without)
        {
            text = Regex.Replace(text, $@"\[(Fact|Theory|Property)(\([^\n]*\))?\](?=(\s*\[[^\n]*\])*\s+public \w+ {slow}\()", string.Empty);
        }

        text = Regex.Replace(text, "MaxTest = ([0-9_]+)", m =>
            $"MaxTest = {Math.Min(mostCases, int.Parse(m.Groups[1].Value.Replace("_", string.Empty, StringComparison.Ordinal), CultureInfo.InvariantCulture))}");
        text = text.Replace("[Property]", $"[Property(MaxTest = {mostCases})]", StringComparison.Ordinal);
        return Regex.Replace(text, @"\[(Property|Properties)\((?![^\n]*MaxTest)(?=Arbitrary)", $"[$1(MaxTest = {mostCases}, ");
    }

    var isWanted = file.StartsWith($"src/{library}/", StringComparison.Ordinal)
        && (parts.Count == 0 || parts.Exists(p => file == $"src/{library}/{p}" || file.StartsWith($"src/{library}/{p}/", StringComparison.Ordinal)));
    return isWanted || !file.StartsWith("src/", StringComparison.Ordinal) ? null : $"// <auto-generated/>\n#nullable enable\n{text.TrimStart('\uFEFF')}";
}

/// <summary>What became of a mistake.</summary>
internal enum Outcome
{
    /// <summary>No test comes where it lies.</summary>
    NotReached,

    /// <summary>No test failed.</summary>
    Missed,

    /// <summary>A test failed.</summary>
    Noticed,

    /// <summary>A test did not end.</summary>
    Endless,
}

// A planted mistake: Stryker's number for it, the folder or file it was asked for with, where it lies, and what became of it.
internal sealed record Mistake(string Id, string Part, string File, int Line, int Start, int End, string Original, string Replacement)
{
    public Outcome Outcome { get; init; }

    public bool IsNoticed => Outcome is Outcome.Noticed or Outcome.Endless;
}
