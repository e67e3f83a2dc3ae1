#!/usr/bin/env dotnet
#:project ../../src/Warmup.Voices
#:package MathNet.Numerics
#:property PublishAot=false
#:property RestorePackagesWithLockFile=false

// A notebook in one file: three questions about patterns, answered with tables and pictures. docs/research.md records the answers.
//
// Run it with: dotnet run samples/research/questions.cs [-- LARGEST-SIZE [FOLDER]]
// LARGEST-SIZE is 1 to 5, 3 by default; 5 takes a minute. The pictures (SVG) are written into FOLDER, which must exist; without it there are none.
using System.Globalization;
using System.Text;
using MathNet.Numerics.Random;
using MathNet.Numerics.Statistics;
using Warmup;
using Warmup.Research;
using Warmup.Voices;

var largest = args.Length > 0 && int.TryParse(args[0], NumberStyles.None, CultureInfo.InvariantCulture, out var typed) && typed is >= 1 and <= 5 ? typed : 3;
var folder = args.Length > 1 ? args[1] : null;
var space = new PatternEnumeration(PatternVocabulary.Usual, largest);
var workers = new OrderedParallel { Workers = Environment.ProcessorCount };

// Colours that people with any colour vision tell apart (Okabe and Ito 2008, "Color Universal Design").
string[] colours = ["#0072B2", "#D55E00", "#009E73"];

// 1. How many different drills are there in five, six and seven notes? Two are the same where every note sounds the same.
(string Notes, Scale Scale)[] sizes = [("five", Catalogue.Default.Read("mohanam")), ("six", Catalogue.Default.Read("sriranjani")), ("seven", Catalogue.Default.Read("mayamalavagowla"))];
Console.WriteLine($"## Different drills; words: {PatternVocabulary.Usual}\n");
Console.WriteLine($"| size up to | patterns | {string.Join(" | ", sizes.Select(s => $"{s.Notes} notes ({s.Scale.Name})"))} |");
Console.WriteLine("|---|---|---|---|---|");
var heard = sizes.Select(_ => new HashSet<string>()).ToArray();
var growth = sizes.Select(_ => new List<(double, double)>()).ToArray();
Int128 patterns = 0;
for (var size = 1; size <= largest; size++)
{
    foreach (var sounds in workers.Map(space.Range(patterns, space.CountOfSize(size)), (p, _) => sizes.Select(s => Sound(p, s.Scale)).ToArray()))
    {
        for (var s = 0; s < sizes.Length; s++)
        {
            _ = sounds[s] is { } sound && heard[s].Add(sound);
        }
    }

    patterns += space.CountOfSize(size);
    for (var s = 0; s < sizes.Length; s++)
    {
        growth[s].Add((size, heard[s].Count));
    }

    Console.WriteLine($"| {size} | {patterns} | {string.Join(" | ", heard.Select(h => h.Count))} |");
}

Save("research-drills.svg", Picture.Lines("Different drills by size", "parts of a pattern, at most", "different drills", sizes.Select((s, i) => ($"{s.Notes} notes", colours[i], growth[i])).ToList()));

// 2. Does difficulty order the traditional exercises as their published order does? Spearman's rank correlation of number and difficulty in each group;
// the chance is the share of 10,000 random orders that agree with the numbers at least as well.
Console.WriteLine($"\n## Difficulty and the published order; scale: {Repertoire.UsualScale.Name}\n");
Console.WriteLine("| group | exercises | rank correlation | chance |");
Console.WriteLine("|---|---|---|---|");
var panels = new List<(string Title, List<(double, double)> Dots)>();
foreach (var group in Repertoire.Traditional.GroupBy(e => e.Group))
{
    var dots = group.Where(e => Facts(e.Pattern) is not null).Select(e => ((double)e.Number, (double)Facts(e.Pattern)!.Difficulty.Score())).ToList();
    if (dots.Count < 4)
    {
        continue; // Fewer have hardly any order.
    }

    var (numbers, difficulties) = (dots.ConvertAll(d => d.Item1), dots.ConvertAll(d => d.Item2));
    var correlation = Correlation.Spearman(numbers, difficulties);
    var random = new MersenneTwister(23);
    var asGood = Enumerable.Range(0, 10_000).Count(_ => Correlation.Spearman(numbers, Shuffled(difficulties, random)) >= correlation - 1e-12);
    Console.WriteLine($"| {group.Key} | {dots.Count} | {correlation:0.00} | {asGood / 10_000.0:0.0000} |");
    panels.Add(($"{group.Key}: {correlation:0.00}", dots));
}

Save("research-order.svg", Picture.Panels("Number in its group, and difficulty", "number", "difficulty", panels, colours[0]));

// 3. Which laws separate the two shapes of scales: those that are the same both ways, and those that differ up and down?
var shapes = Catalogue.Default.Entries.Select(e => e.Scale).Where(s => s.HasUpperTonic).DistinctBy(s => s.ToNotesText()).ToLookup(s => s.IsSymmetric);
(string Name, Func<SymmetryLaws, bool?> Of)[] laws =
[
    ("each line reads the same both ways", l => l.IsPalindrome), ("last-first(p) = p", l => l.IsLastFirst), ("reversed(p) = p", l => l.IsReversed), ("mirrored(p) = p", l => l.IsMirrored),
    ("swapped(p) = p", l => l.IsSwapped), ("backwards(p) = p", l => l.IsBackwards), ("backwards(p) = reversed(p)", l => l.IsTurnedAlike), ("backwards(backwards(p)) = p", l => l.IsUndoneBackwards),
];
var few = Math.Min(largest, 2);
var small = new PatternEnumeration(PatternVocabulary.Usual, few).Range(0, int.MaxValue).ToList();
Console.WriteLine($"\n## Laws and shapes of scales; {small.Count} patterns of size up to {few}\n");
Console.WriteLine($"| law | same both ways ({shapes[true].Count()} scales) | differ up and down ({shapes[false].Count()} scales) | separates |");
Console.WriteLine("|---|---|---|---|");
var (same, differ) = (Holding(shapes[true]), Holding(shapes[false]));
var bars = new List<(string, double, double)>();
for (var l = 0; l < laws.Length; l++)
{
    // A law separates where it holds in every case of one shape, and not in every case of the other.
    var separates = (same[l].Held == same[l].Cases) != (differ[l].Held == differ[l].Cases);
    Console.WriteLine($"| {laws[l].Name} | {Share(same[l])} | {Share(differ[l])} | {(separates ? "yes" : "no")} |");
    bars.Add((laws[l].Name, (double)same[l].Held / same[l].Cases, (double)differ[l].Held / differ[l].Cases));
}

Save("research-laws.svg", Picture.Bars("How often a law holds", ["same both ways", "differ up and down"], colours, bars));
return;

static string? Sound(Pattern pattern, Scale scale) => pattern.TryExpand(scale, out var expansion, out _)
    ? string.Join('/', expansion.Lines.Select(l => string.Join(' ', l.Notes.Select(n => $"{n.Tone}{(n.Length == 1 ? "" : $":{n.Length}")}{(n.Rest == 0 ? "" : $"-{n.Rest}")}{n.Sung}{(int)n.Joining}{(int)n.Loudness}"))))
    : null;

static PatternFacts? Facts(Pattern pattern) => PatternFacts.TryMeasure(pattern, Repertoire.UsualScale, out var facts, out _) ? facts : null;

static List<double> Shuffled(List<double> values, Random random)
{
    var shuffled = values.ToArray();
    random.Shuffle(shuffled);
    return [.. shuffled];
}

static string Share((long Cases, long Held) count) => $"{100.0 * count.Held / count.Cases:0.0} % of {count.Cases}";

(long Cases, long Held)[] Holding(IEnumerable<Scale> scales)
{
    var counts = new (long Cases, long Held)[laws.Length];
    foreach (var found in workers.Map(scales, (s, stop) => small.ConvertAll(p => SymmetryLaws.Of(p, s, stop))))
    {
        foreach (var each in found)
        {
            for (var l = 0; l < laws.Length; l++)
            {
                // Cases that a scale refuses are not counted.
                counts[l] = laws[l].Of(each) is { } holds ? (counts[l].Cases + 1, counts[l].Held + (holds ? 1 : 0)) : counts[l];
            }
        }
    }

    return counts;
}

void Save(string name, string picture)
{
    if (folder is not null)
    {
        File.WriteAllText(Path.Combine(folder, name), picture);
    }
}

/// <summary>Pictures as SVG, with a title and a description that are read out.</summary>
internal static class Picture
{
    private const int Width = 640;

    // Where the reader's screen is dark, the colours are lighter ones of the same hue on a dark page.
    private const string Style = """
        <style>@media (prefers-color-scheme: dark) {
        [fill="#fff"] { fill: #171c22 } [fill="#222"] { fill: #eef2f5 } [stroke="#ddd"] { stroke: #39444f } [stroke="#aaa"] { stroke: #6b7885 }
        [fill="#0072B2"] { fill: #56b4e9 } [stroke="#0072B2"] { stroke: #56b4e9 } [fill="#D55E00"] { fill: #f28e3c } [stroke="#D55E00"] { stroke: #f28e3c } [fill="#009E73"] { fill: #3fcf9f } [stroke="#009E73"] { stroke: #3fcf9f }
        }</style>

        """;

    /// <summary>Curves over sizes, on a scale where each step is ten times the one before.</summary>
    public static string Lines(string title, string across, string up, List<(string Name, string Colour, List<(double X, double Y)> Points)> curves)
    {
        const int height = 360;
        var (most, columns) = (curves.Max(c => c.Points.Max(p => p.Y)), curves.Max(c => c.Points.Max(p => p.X)));
        var decades = (int)Math.Ceiling(Math.Log10(most));
        var told = string.Join("; ", curves.Select(c => $"{c.Name}: {string.Join(", ", c.Points.Select(p => $"{p.Y:0}"))}"));
        double X(double x) => 70 + ((x - 1) / Math.Max(1, columns - 1) * (Width - 200));
        double Y(double y) => height - 50 - (Math.Log10(y) / decades * (height - 100));
        var svg = Begin(title, $"Different drills for patterns of up to 1, 2 and more parts. {told}.", height);
        for (var d = 0; d <= decades; d++)
        {
            svg.Append($"<path d=\"M70 {Y(Math.Pow(10, d)):0.#}H{Width - 125}\" stroke=\"#ddd\"/>{Text(62, Y(Math.Pow(10, d)) + 4, $"{Math.Pow(10, d):0}", "end")}\n");
        }

        for (var x = 1; x <= columns; x++)
        {
            svg.Append(Text(X(x), height - 30, $"{x}", "middle") + "\n");
        }

        // Curves that lie on each other are all seen: the first is the widest. The names stand beside their ends, in the order of the curves.
        foreach (var (curve, i) in curves.OrderByDescending(c => c.Points[^1].Y).Select((c, i) => (c, i)))
        {
            svg.Append($"<polyline fill=\"none\" stroke=\"{curve.Colour}\" stroke-width=\"{Math.Max(2, 10 - (4 * i))}\" points=\"{string.Join(' ', curve.Points.Select(p => $"{X(p.X):0.#},{Y(p.Y):0.#}"))}\"/>\n");
            svg.Append(string.Concat(curve.Points.Select(p => $"<circle cx=\"{X(p.X):0.#}\" cy=\"{Y(p.Y):0.#}\" r=\"3\" fill=\"{curve.Colour}\"/>")) + "\n");
            svg.Append(Text(Width - 112, Y(curves.Max(c => c.Points[^1].Y)) + (i * 18), $"{curve.Name}: {curve.Points[^1].Y:0}", "start", curve.Colour) + "\n");
        }

        return End(svg, Text((Width - 50) / 2.0, height - 8, across, "middle") + Text(14, height / 2.0, up, "middle", turned: true));
    }

    /// <summary>A small field of dots for each group.</summary>
    public static string Panels(string title, string across, string up, List<(string Title, List<(double X, double Y)> Dots)> panels, string colour)
    {
        const int columns = 3;
        const int side = 200;
        var height = 50 + (side * ((panels.Count + columns - 1) / columns)) + 20;
        var svg = Begin(title, $"A field of dots for each group, with its rank correlation: {string.Join("; ", panels.Select(p => p.Title))}.", height);
        var (least, most) = (panels.Min(p => p.Dots.Min(d => d.Y)), panels.Max(p => p.Dots.Max(d => d.Y)));
        for (var i = 0; i < panels.Count; i++)
        {
            var (left, top) = (30 + (i % columns * side), 45 + (i / columns * side));
            var last = panels[i].Dots.Max(d => d.X);
            svg.Append($"<rect x=\"{left}\" y=\"{top + 18}\" width=\"{side - 25}\" height=\"{side - 50}\" fill=\"none\" stroke=\"#aaa\"/>{Text(left, top + 12, panels[i].Title, "start")}\n");
            svg.Append(string.Concat(panels[i].Dots.Select(d =>
                $"<circle cx=\"{left + 10 + ((d.X - 1) / Math.Max(1, last - 1) * (side - 45)):0.#}\" cy=\"{top + side - 40 - ((d.Y - least) / Math.Max(1, most - least) * (side - 68)):0.#}\" r=\"4\" fill=\"{colour}\"/>")) + "\n");
            svg.Append(Text(left + 10, top + side - 18, "1", "middle") + Text(left + side - 35, top + side - 18, $"{last:0}", "middle") + "\n");
        }

        return End(svg, Text(Width / 2.0, height - 6, $"{across}; upwards {up}, {least:0} to {most:0} in all fields", "middle"));
    }

    /// <summary>Two bars for each law.</summary>
    public static string Bars(string title, string[] names, string[] colours, List<(string Name, double One, double Other)> bars)
    {
        var height = 70 + (40 * bars.Count) + 20;
        var svg = Begin(title, $"Shares of the cases, {names[0]} and {names[1]}. {string.Join("; ", bars.Select(b => $"{b.Name}: {b.One * 100:0.0} and {b.Other * 100:0.0} %"))}.", height);
        for (var n = 0; n < names.Length; n++)
        {
            svg.Append($"<rect x=\"{250 + (n * 170)}\" y=\"36\" width=\"12\" height=\"12\" fill=\"{colours[n]}\"/>{Text(267 + (n * 170), 47, names[n], "start")}\n");
        }

        for (var i = 0; i < bars.Count; i++)
        {
            var top = 62 + (40 * i);
            svg.Append(Text(240, top + 19, bars[i].Name, "end") + "\n");
            foreach (var (share, n) in ((double, int)[])[(bars[i].One, 0), (bars[i].Other, 1)])
            {
                svg.Append($"<rect x=\"250\" y=\"{top + (n * 15)}\" width=\"{share * 320:0.#}\" height=\"13\" fill=\"{colours[n]}\"/>{Text(256 + (share * 320), top + (n * 15) + 11, $"{share * 100:0.0} %", "start")}\n");
            }
        }

        return End(svg, string.Empty);
    }

    private static StringBuilder Begin(string title, string description, int height) => new StringBuilder()
        .Append($"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {Width} {height}\" font-family=\"sans-serif\" font-size=\"12\" role=\"img\" aria-labelledby=\"t d\">\n<title id=\"t\">{title}</title>\n<desc id=\"d\">{description}</desc>\n")
        .Append(Style.ReplaceLineEndings("\n"))
        .Append($"<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n<text x=\"{Width / 2}\" y=\"22\" text-anchor=\"middle\" font-size=\"15\" fill=\"#222\">{title}</text>\n");

    private static string End(StringBuilder svg, string labels) => svg.Append(labels).Append("\n</svg>\n").ToString();

    private static string Text(double x, double y, string text, string anchor, string colour = "#222", bool turned = false) =>
        $"<text x=\"{x:0.#}\" y=\"{y:0.#}\" text-anchor=\"{anchor}\" fill=\"{colour}\"{(turned ? $" transform=\"rotate(-90 {x:0.#} {y:0.#})\"" : string.Empty)}>{text}</text>";
}
