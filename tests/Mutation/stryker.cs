// Lets Stryker.NET plant its mistakes in a library, or in some of its folders or files, and lists those that no test notices.
//
//     dotnet run tests/Mutation/stryker.cs -- Warmup.Midi
//     dotnet run tests/Mutation/stryker.cs -- Warmup.Voices Checks Breathing
//     dotnet run tests/Mutation/stryker.cs -- Warmup.Core Pitch/Degree.cs --tests Pitch Values --without A_slow_test Another
//     dotnet run tests/Mutation/stryker.cs -- Warmup.Core Pitch Rhythm --sample 150 --seed 1
//
// --sample draws that many places of each folder or file, each as likely as any other, tries all mistakes at them, and tells between which shares the
// whole folder's lies (Wilson, 95 in a hundred, as many tries as places). Stryker runs twice then: first it lists all mistakes and tries none. The same
// --seed (1) over the same sources draws the same.
// After --tests only the tests in these folders (or files) of the test project run, and those beside its project file; after --without stand tests
// that are too slow to be run for every mistake. The share is then a lower bound. It needs the tool: dotnet tool install --global dotnet-stryker.
// It works in a copy of the sources, which stays for the next run: WARMUP_MUTATION_COPY, or warmup-stryker in the folder for temporary files.
// WARMUP_MUTATION_WORKERS (2) says how many mistakes are tried at a time, WARMUP_MUTATION_CASES (12) how many cases a test makes up,
// WARMUP_MUTATION_PATIENCE (10) how many seconds longer than without a mistake the tests may take before they count as endless. Exit code 0 where at least 85 in a hundred are noticed.
using System.Diagnostics;
using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

const double LeastPercent = 85;

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
Update(root, copy, (file, text) => Changed(file, text, library, parts, onlyTests, without, mostCases));
var tests = Path.Combine(copy, "tests", $"{library}.Tests");
List<Mistake>? drawn = null;
Dictionary<string, int> all = [];
if (sample < int.MaxValue)
{
    // No mistake lies in the first character of a file, so that this only lists them.
    if (Run(["**/*.cs{0..1}"], isList: true) is not { } listed)
    {
        return 2;
    }

    // Ignored ones are those that only the line above leaves out; others cannot be compiled, or are of a kind that is not wanted.
    var random = new Random(seed);
    drawn = [];
    foreach (var part in listed.Where(m => m.IsLeftOut).GroupBy(m => m.Part).OrderBy(g => g.Key, StringComparer.Ordinal))
    {
        var places = part.GroupBy(m => m.Place()).ToArray();
        random.Shuffle(places);
        drawn.AddRange(places.Take(sample).SelectMany(p => p));
        if (places.Length > sample)
        {
            all[part.Key] = part.Count();
        }
    }

    // A mistake comes with those inside it; they are left out unless that would leave out one that is drawn.
    var inner = listed.Where(m => drawn.Exists(d => d.Holds(m)) && !drawn.Exists(d => m.Holds(d)));
    if (drawn.Count == 0 || Run([.. drawn.Select(d => d.Place()).Distinct(), .. inner.Select(m => $"!{m.Place()}").Distinct()]) is not { } tried)
    {
        return 2;
    }

    var wanted = drawn.Select(d => d.Key).ToHashSet();
    drawn = [.. tried.Where(m => wanted.Contains(m.Key))];
}
else
{
    drawn = Run(["**/*"]);
    if (drawn is null)
    {
        return 2;
    }
}

var tested = drawn.Where(m => m.IsNoticed || m.IsMissed).ToList();
foreach (var file in tested.GroupBy(m => m.File).OrderBy(f => f.Key, StringComparer.Ordinal))
{
    Console.WriteLine($"{Percent(file)} {file.Key}");
    foreach (var mistake in file.Where(m => m.IsMissed).OrderBy(m => m.Start))
    {
        Console.WriteLine($"    {mistake.Line}: {Flat(mistake.Original)}  ->  {Flat(mistake.Replacement)}{(mistake.Status == "NoCoverage" ? "  (no test comes here)" : string.Empty)}");
    }
}

var isEnough = true;
foreach (var part in tested.GroupBy(m => m.Part).OrderBy(p => p.Key, StringComparer.Ordinal))
{
    // An endless loop is one that runs out of time; where the machine has much other work, a test that never got its turn is another.
    isEnough &= 100.0 * part.Count(m => m.IsNoticed) >= LeastPercent * part.Count();
    var isSample = all.TryGetValue(part.Key, out var count);
    Console.WriteLine($"{Percent(part)}{(isSample ? $" drawn from {count}: {Interval(part)}" : string.Empty)} in {part.Key}; {part.Count(m => m.Status == "Timeout")} of the noticed ones because the tests ran out of time");
}

return isEnough ? 0 : 1;

// Lets Stryker try the mistakes that lie in what the patterns name; null where it fails.
List<Mistake>? Run(IEnumerable<string> patterns, bool isList = false)
{
    var configuration = new JsonObject
    {
        ["stryker-config"] = new JsonObject
        {
            ["test-runner"] = "mtp", ["project"] = $"{library}.csproj", ["concurrency"] = Number("WARMUP_MUTATION_WORKERS", 2), ["coverage-analysis"] = isList ? "off" : "perTest",
            ["reporters"] = new JsonArray("json"), ["additional-timeout"] = 1000 * Number("WARMUP_MUTATION_PATIENCE", 10), ["ignore-mutations"] = new JsonArray("string"),

            // Every null argument of every library is tried in tests/Warmup.Packages.Tests.
            ["ignore-methods"] = new JsonArray("*ThrowIfNull"),
            ["mutate"] = new JsonArray([.. patterns.Select(p => (JsonNode)p)]),
        },
    };
    File.WriteAllText(Path.Combine(tests, "stryker-config.json"), configuration.ToJsonString());
    using var stryker = Process.Start(new ProcessStartInfo("dotnet-stryker", ["--skip-version-check", "-O", "out"]) { WorkingDirectory = tests })!;
    stryker.WaitForExit();
    if (stryker.ExitCode != 0)
    {
        return null;
    }

    var report = JsonNode.Parse(File.ReadAllText(Path.Combine(tests, "out", "reports", "mutation-report.json")))!;
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
            int At(string end) => lines[(int)mutant!["location"]![end]!["line"]! - 1] + (int)mutant["location"]![end]!["column"]! - 1;
            mistakes.Add(new Mistake(
                part, name, (int)mutant!["location"]!["start"]!["line"]!, At("start"), At("end"), source[At("start")..At("end")], (string)mutant["replacement"]!, (string)mutant["status"]!, (string?)mutant["statusReason"]));
        }
    }

    return mistakes;
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
    double n = some.DistinctBy(m => m.Place()).Count(), share = (double)some.Count(m => m.IsNoticed) / some.Count();
    var (middle, half) = (share + (Z * Z / (2 * n)), Z * Math.Sqrt((share * (1 - share) / n) + (Z * Z / (4 * n * n))));
    return string.Create(CultureInfo.InvariantCulture, $"{100 * (middle - half) / (1 + (Z * Z / n)):0.0} to {100 * (middle + half) / (1 + (Z * Z / n)):0.0} %");
}

static string Flat(string text) => Regex.Replace(text, @"\s+", " ") is var flat && flat.Length > 160 ? flat[..160] + "…" : flat;

// Writes what differs, so that a second run builds only that; removes what is gone.
static void Update(string root, string copy, Func<string, byte[], string?> change)
{
    var files = Listed(root);
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
        }
    }

    var gone = Directory.EnumerateFiles(copy, "*.cs", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(copy, f).Replace('\\', '/'))
        .Where(f => !f.Contains("/obj/", StringComparison.Ordinal) && !f.Contains("/bin/", StringComparison.Ordinal)).Except(files).ToList();
    gone.ForEach(f => File.Delete(Path.Combine(copy, f)));
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

// A planted mistake: the folder or file it was asked for with, where it lies, and what became of it.
internal sealed record Mistake(string Part, string File, int Line, int Start, int End, string Original, string Replacement, string Status, string? Reason)
{
    public bool IsNoticed => Status is "Killed" or "Timeout";

    public bool IsMissed => Status is "Survived" or "NoCoverage";

    public bool IsLeftOut => Status == "Ignored" && Reason?.Contains("mutate filter", StringComparison.OrdinalIgnoreCase) == true;

    public (string File, int Start, int End, string Replacement) Key => (File, Start, End, Replacement);

    public bool Holds(Mistake other) => File == other.File && Start <= other.Start && other.End <= End;

    public string Place() => $"**/{File}{{{Start}..{End}}}";
}
