// Adds up the coverage files (Cobertura) of several test runs and prints the share of each library's lines that at least one test reached.
//
//     dotnet test --coverlet --coverlet-include "[Warmup.*]*" --coverlet-output-format cobertura --results-directory FOLDER
//     dotnet run tests/Coverage/report.cs -- FOLDER [LEAST]
//
// Run it in the project's folder: what has its sources in src is a library. FOLDER is searched for *.cobertura*.xml; exit code 1 where a library has less than LEAST percent (90).
using System.Globalization;
using System.Xml.Linq;

if (args.Length is < 1 or > 2)
{
    Console.Error.WriteLine("usage: dotnet run tests/Coverage/report.cs -- FOLDER [LEAST]");
    return 2;
}

var least = args.Length > 1 ? double.Parse(args[1], CultureInfo.InvariantCulture) : 90;
var libraries = new SortedDictionary<string, Dictionary<(string File, int Line), bool>>(StringComparer.Ordinal);
foreach (var file in Directory.EnumerateFiles(args[0], "*.cobertura*.xml", SearchOption.AllDirectories))
{
    foreach (var package in XDocument.Load(file).Descendants("package"))
    {
        var name = package.Attribute("name")!.Value;
        if (!Directory.Exists(Path.Combine("src", name)))
        {
            continue;
        }

        foreach (var line in package.Descendants("class").SelectMany(c => c.Descendants("line").Select(l => (Class: c, Line: l))))
        {
            // Each library compiles the shared source for itself and uses a part of it: it counts once, by what any of them reaches.
            var place = (File: Name(line.Class.Attribute("filename")!.Value), Line: int.Parse(line.Line.Attribute("number")!.Value, CultureInfo.InvariantCulture));
            var owner = place.File.StartsWith(Shared, StringComparison.Ordinal) ? "src/Shared" : name;
            if (!libraries.TryGetValue(owner, out var lines))
            {
                libraries[owner] = lines = [];
            }

            lines[place] = lines.GetValueOrDefault(place) || line.Line.Attribute("hits")!.Value != "0";
        }
    }
}

if (libraries.Count == 0)
{
    Console.Error.WriteLine($"there are no coverage files in {args[0]}");
    return 2;
}

var low = 0;
foreach (var (name, lines) in libraries)
{
    low += Say(name, lines.Count, lines.Values.Count(reached => reached)) < least ? 1 : 0;
}

Say("all libraries", libraries.Values.Sum(l => l.Count), libraries.Values.Sum(l => l.Values.Count(reached => reached)));
if (low > 0)
{
    Console.Error.WriteLine($"{low} of {libraries.Count} libraries have less than {least} % of their lines reached");
}

return low == 0 ? 0 : 1;

static double Say(string name, int lines, int reached)
{
    var percent = lines == 0 ? 100 : 100.0 * reached / lines;
    Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name,-18} {percent,5:0.0} %  {reached} of {lines} lines"));
    return percent;
}

// Paths begin at the folder of a run's sources, which differs between runs; from the library's own folder on they agree.
static string Name(string path)
{
    var parts = path.Replace('\\', '/').Split('/');
    var from = Array.FindLastIndex(parts, p => p.StartsWith("Warmup.", StringComparison.Ordinal) || p + "/" == Shared);
    return string.Join('/', parts[Math.Max(from, 0)..]);
}

partial class Program
{
    private const string Shared = "Shared/";
}
