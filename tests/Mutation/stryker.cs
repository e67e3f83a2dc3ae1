// Lets Stryker.NET plant its mistakes in a library, or in some of its folders or files, and lists those that no test notices.
//
//     dotnet run tests/Mutation/stryker.cs -- Warmup.Midi
//     dotnet run tests/Mutation/stryker.cs -- Warmup.Voices Checks Breathing
//     dotnet run tests/Mutation/stryker.cs -- Warmup.Core Pitch/Degree.cs --tests Pitch Values --without A_slow_test Another
//
// After --tests only the tests in these folders (or files) of the test project run, and those beside its project file; after --without stand tests
// that are too slow to be run for every mistake. The share is then a lower bound. It needs the tool: dotnet tool install --global dotnet-stryker.
// It works in a copy of the sources, which stays for the next run: WARMUP_MUTATION_COPY, or warmup-stryker in the folder for temporary files.
// WARMUP_MUTATION_WORKERS (2) says how many mistakes are tried at a time, WARMUP_MUTATION_CASES (12) how many cases a test makes up. Exit code 0 where at least 85 in a hundred are noticed.
using System.Diagnostics;
using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

const double LeastPercent = 85;

// A test is run once for every mistake in what it reaches, so that it tries fewer cases than usual.
var mostCases = int.Parse(Environment.GetEnvironmentVariable("WARMUP_MUTATION_CASES") ?? "12", CultureInfo.InvariantCulture);

var parts = args.Skip(1).TakeWhile(a => !IsOption(a)).ToList();
var (onlyTests, without) = (After("--tests"), After("--without"));
if (args.Length == 0 || IsOption(args[0]) || args.Any(a => IsOption(a) && After(a).Count == 0))
{
    Console.Error.WriteLine("usage: dotnet run tests/Mutation/stryker.cs -- LIBRARY [FOLDER or FILE]... [--tests FOLDER or FILE...] [--without TEST...]");
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
File.WriteAllText(Path.Combine(tests, "stryker-config.json"), $$"""
    { "stryker-config": { "test-runner": "mtp", "project": "{{library}}.csproj", "concurrency": {{Environment.GetEnvironmentVariable("WARMUP_MUTATION_WORKERS") ?? "2"}},
      "coverage-analysis": "perTest", "reporters": ["json"], "additional-timeout": 10000, "ignore-mutations": ["string"] } }
    """);

using (var stryker = Process.Start(new ProcessStartInfo("dotnet-stryker", ["--skip-version-check", "-O", "out"]) { WorkingDirectory = tests })!)
{
    stryker.WaitForExit();
    if (stryker.ExitCode != 0)
    {
        return 2;
    }
}

var report = JsonNode.Parse(File.ReadAllText(Path.Combine(tests, "out", "reports", "mutation-report.json")))!;
var (allNoticed, all, late) = (0, 0, 0);
foreach (var (path, file) in report["files"]!.AsObject().OrderBy(f => f.Key, StringComparer.Ordinal))
{
    var mutants = file!["mutants"]!.AsArray().Select(m => (Status: m!["status"]!.GetValue<string>(), Mutant: m)).ToList();
    var noticed = mutants.Count(m => m.Status is "Killed" or "Timeout");
    var missed = mutants.Where(m => m.Status is "Survived" or "NoCoverage").ToList();
    if (noticed + missed.Count == 0)
    {
        continue;
    }

    (allNoticed, all, late) = (allNoticed + noticed, all + noticed + missed.Count, late + mutants.Count(m => m.Status == "Timeout"));
    Console.WriteLine($"{Percent(noticed, noticed + missed.Count)} {Path.GetRelativePath(copy, Path.Combine((string?)report["projectRoot"] ?? tests, path))}");
    var lines = file["source"]!.GetValue<string>().Split('\n');
    foreach (var (status, mutant) in missed)
    {
        var (start, end) = (mutant!["location"]!["start"]!, mutant["location"]!["end"]!);
        Console.WriteLine($"    {(int)start["line"]!}: {Flat(Between(lines, start, end))}  ->  {Flat(mutant["replacement"]!.GetValue<string>())}{(status == "NoCoverage" ? "  (no test comes here)" : string.Empty)}");
    }
}

Console.WriteLine($"{Percent(allNoticed, all)} {string.Join(' ', args)}");

// An endless loop is one; where the machine has much other work, a test that never got its turn is another.
Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{late} of the noticed ones because the tests ran out of time"));
return 100.0 * allNoticed >= LeastPercent * all ? 0 : 1;

static bool IsOption(string argument) => argument is "--tests" or "--without";

List<string> After(string option) => [.. args.SkipWhile(a => a != option).Skip(1).TakeWhile(a => !IsOption(a))];

static string Root(string from) => File.Exists(Path.Combine(from, "Warmup.Core.sln"))
    ? from
    : Root(Path.GetDirectoryName(from) ?? throw new InvalidOperationException("run this inside the project's folder"));

static string Percent(int part, int whole) => string.Create(CultureInfo.InvariantCulture, $"{100.0 * part / Math.Max(1, whole),5:0.0} % of {whole,4}");

static string Between(string[] lines, JsonNode start, JsonNode end)
{
    var (first, last) = ((int)start["line"]! - 1, (int)end["line"]! - 1);
    var text = string.Join(' ', lines[first..(last + 1)].Select(l => l.TrimEnd()));
    var cut = text.Length - lines[last].TrimEnd().Length + (int)end["column"]! - 1;
    return text[((int)start["column"]! - 1)..Math.Clamp(cut, (int)start["column"]! - 1, text.Length)];
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
