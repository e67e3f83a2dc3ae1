using BenchmarkDotNet.Attributes;
using Warmup.Research;

namespace Warmup.Benchmarks;

/// <summary>
/// The enumeration of patterns: an index becomes a pattern, the pattern lines in four scales and a text, and the text leads back to the index.
/// The indexes are spread evenly over all patterns up to a size; each figure is of one.
/// </summary>
[MemoryDiagnoser]
public class EnumerationBenchmarks
{
    private const int Indexes = 4_000;

    private readonly Scale[] _scales = [.. new[] { "Mayamalavagowla", "Mohanam", "Bilahari", "Kedaram" }.Select(s => Catalogue.Default.Read(s))];
    private PatternEnumeration _patterns = null!;

    /// <summary>The largest size.</summary>
    [Params(5, 8)]
    public int Size { get; set; }

    [GlobalSetup]
    public void SetUp() => _patterns = new PatternEnumeration(PatternVocabulary.Usual, Size);

    [Benchmark(OperationsPerInvoke = Indexes)]
    public long ThereAndBack()
    {
        var notes = 0L;
        for (var i = 0; i < Indexes; i++)
        {
            var index = _patterns.Count * i / Indexes;
            var pattern = _patterns[index];
            foreach (var scale in _scales)
            {
                notes += pattern.TryExpand(scale, out var lines, out _) ? lines.NoteCount : 0;
            }

            notes += _patterns.IndexOf(Pattern.Parse(pattern.ToString())) == index ? 1 : throw new InvalidOperationException($"the text of {index} leads elsewhere");
        }

        return notes;
    }
}
