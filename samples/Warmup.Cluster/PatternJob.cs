using System.Globalization;
using System.Reflection;

namespace Warmup.ManyMachines;

/// <summary>Which patterns to work through, in which scales, and how long a range is. It is small, since it travels with every range.</summary>
internal sealed record PatternJob
{
    public const int LongestRange = 1_000_000;

    // The coordinator keeps one bit for each range.
    public const int MostRanges = 10_000_000;

    public const int MostScales = 16;

    public const int LongestText = 1_000;

    /// <summary>The words of the patterns, as <see cref="PatternVocabulary.Parse"/> reads them.</summary>
    public string Words { get; init; } = PatternVocabulary.Usual.ToString();

    /// <summary>The largest size of a pattern, 1 to 12.</summary>
    public int Size { get; init; } = 5;

    /// <summary>The scales, as the catalogue reads them; 1 to 16, separated by <c>;</c>.</summary>
    public string Scales { get; init; } = "Mayamalavagowla; Mohanam; Bilahari; Kedaram";

    /// <summary>The first index, from 0.</summary>
    public long First { get; init; }

    /// <summary>The most indexes, from 1; all of them by default.</summary>
    public long Most { get; init; } = long.MaxValue;

    /// <summary>The number of indexes in a range, 1 to 1,000,000. When a worker is lost, a range is lost with it.</summary>
    public int RangeLength { get; init; } = 1_000;

    /// <summary>Whether each finished range becomes a part, a file with a row for each index.</summary>
    public bool HasParts { get; init; }

    /// <summary>The library's version and commit: another one may list other patterns under the same index.</summary>
    public string Version { get; init; } = OwnVersion;

    /// <summary>The version and commit of the library here.</summary>
    public static string OwnVersion { get; } = typeof(PatternEnumeration).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "unknown";

    /// <summary>What is wrong with the job, or <see langword="null"/>.</summary>
    public string? Problem()
    {
        if (CountingProblem() is { } problem)
        {
            return problem;
        }

        try
        {
            return Scales.Length > LongestText ? $"the scales must have at most {LongestText} characters"
                : ReadScales().Count is < 1 or > MostScales ? $"there must be 1 to {MostScales} scales"
                : RangeLength is < 1 or > LongestRange ? Text($"the length of a range must be between 1 and {LongestRange}, not {RangeLength}")
                : Version != OwnVersion ? $"the job is of version '{Shown(Version)}', this program of '{OwnVersion}'"
                : First < 0 || Most < 1 ? Text($"the first index must be at least 0 and the most indexes at least 1, not {First} and {Most}")
                : Count() is var count && count / RangeLength >= MostRanges ? Text($"{count} patterns in ranges of {RangeLength} are more than {MostRanges} ranges")
                : null;
        }
        catch (WarmupFormatException wrong)
        {
            return wrong.Error.ToString();
        }
    }

    /// <summary>What is wrong with the words and the size, or <see langword="null"/>.</summary>
    public string? CountingProblem() =>
        Words.Length > LongestText ? $"the words must have at most {LongestText} characters"
        : Size < 1 || Size > PatternEnumeration.LargestSize ? Text($"the size must be between 1 and {PatternEnumeration.LargestSize}, not {Size}")
        : PatternVocabulary.TryParse(Words, out _, out var error) ? null
        : error.ToString();

    public PatternEnumeration Enumeration() => new(PatternVocabulary.Parse(Words), Size);

    public ValueList<Scale> ReadScales() =>
        [.. Scales.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(Catalogue.Default.Read)];

    /// <summary>The number of patterns to work through.</summary>
    public Int128 Count() => Int128.Clamp(Enumeration().Count - First, 0, Most);

    private static string Shown(string version) => version.Length <= 100 ? version : version[..100];

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
