using BenchmarkDotNet.Attributes;
using Warmup.Web;

namespace Warmup.Benchmarks;

/// <summary>What the page to make drills in costs at the server: the drill with its lines and whom of six singers it fits, as the script asks for it first.</summary>
[MemoryDiagnoser]
[ShortRunJob]
public class PageBenchmarks
{
    private PageState _state = null!;

    /// <summary>Drills of at most 500 notes.</summary>
    [Params("exercise=sarali-1", "exercise=janta-3&speeds=1,2,3", "from=words&pattern=ladder.repeat(12)", "exercise=alankara-7&speeds=1,2")]
    public string Choices { get; set; } = string.Empty;

    [GlobalSetup]
    public void SetUp() => _state = PageState.Usual(PageForm.Drill).With([("class", ClassText.Invented), .. Choices.Split('&').Select(c => c.Split('=', 2)).Select(c => (c[0], c[1]))]);

    [Benchmark]
    public string Preview() => PageView.Write(PageModel.Of(_state, new Limits(), [], isQuick: true, CancellationToken.None), Texts.English).ToString();
}
