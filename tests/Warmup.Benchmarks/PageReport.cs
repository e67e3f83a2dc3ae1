using System.Globalization;
using Warmup.Web;

namespace Warmup.Benchmarks;

/// <summary>
/// What the page costs at the server over many kinds of drills: with the remedies and the tempi, for an invented class of six, in processor
/// time of the whole process.
/// </summary>
internal static class PageReport
{
    public const string Command = "page";

    private const int MostNotes = 500;
    private const int Times = 3;

    private static readonly string[] Tempi = ["60", "60 to 90 by 10", "60 to 120 by 5", "40 to 240 by 40", "100 to 103 by 1/4"];

    private static readonly string[] Deliveries =
    [
        "delivery=continuous", "delivery=line-by-line", "delivery=continuous&fill=anga", "delivery=line-by-line&fill=none",
        "delivery=line-by-line&fill=avartana&fill-by=hold", "delivery=line-by-line&fill=anga&fill-by=rest&breath=0.7",
    ];

    private static readonly string[] Speeds = ["", "1,2,3", "2,1", "3"];

    private static readonly string[] Others =
    [
        "", "repeat=3", "eduppu=1/2", "breaths=8/0.5", "count-in=1&tala=triputa", "drone=off", "tala=free", "tuning=just&gati=5", "scale=Mohanam&drone-string=M1",
    ];

    private static readonly string[] Tonics = ["G3", "D3", "C4"];

    /// <summary>Measures every so-manieth drill of all that differ in exercise, tempo, delivery, speeds, tonic and a further choice.</summary>
    /// <param name="stride">How many drills are passed over from one that is measured to the next.</param>
    public static void Print(int stride)
    {
        var drills = Drills().Where((_, i) => i % stride == 0).Select(d => (Text: d, State: State(d))).ToList();
        var kept = drills.ConvertAll(d => (d.Text, d.State, Notes: Quick(d.State))).FindAll(d => d.Notes is > 0 and <= MostNotes);
        var least = new double[kept.Count];
        Array.Fill(least, double.MaxValue);
        for (var round = 0; round <= Times; round++)
        {
            for (var d = 0; d < kept.Count; d++)
            {
                var before = Environment.CpuUsage.TotalTime;
                _ = PageView.Write(Model(kept[d].State, isQuick: false), Texts.English).ToString();
                var took = (Environment.CpuUsage.TotalTime - before).TotalMilliseconds;
                least[d] = round == 0 ? least[d] : Math.Min(least[d], took);
            }
        }

        var order = Enumerable.Range(0, kept.Count).OrderByDescending(d => least[d]).ToList();
        Console.WriteLine(Line($"{kept.Count} drills of at most {MostNotes} notes, the least of {Times} each, milliseconds of processor time: {least.Average():0} on average, {least[order[order.Count / 2]]:0} median, {least[order[order.Count / 20]]:0} 95th percentile, {least[order[0]]:0} most; {least.Count(l => l > 100)} over 100"));
        foreach (var d in order.Take(25))
        {
            Console.WriteLine(Line($"{least[d]:0.0} ms, {kept[d].Notes} notes: {kept[d].Text}"));
        }

        static string Line(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
    }

    private static IEnumerable<string> Drills()
    {
        foreach (var exercise in new[] { Repertoire.Traditional, Repertoire.Alankaras, Repertoire.Choir, Repertoire.Voice }.SelectMany(g => g).DistinctBy(e => e.Name).Select(e => $"exercise={e.Name}").Append("from=words&pattern=ladder.repeat(12)").Append("from=words&pattern=figure(1 3 2 4).up-down"))
        {
            foreach (var (tempo, delivery, speeds) in from t in Tempi from d in Deliveries from s in Speeds select (t, d, s))
            {
                foreach (var (tonic, other) in from t in Tonics from o in Others select (t, o))
                {
                    yield return $"{exercise}&tonic={tonic}&tempo={tempo}&{delivery}&speeds={speeds}&{other}";
                }
            }
        }
    }

    private static PageState State(string drill) => PageState.Usual(PageForm.Drill).With(
        [("class", ClassText.Invented), .. drill.Split('&').Select(c => c.Split('=', 2)).Where(c => c.Length == 2).Select(c => (c[0], c[1]))]);

    private static PageModel Model(PageState state, bool isQuick) => PageModel.Of(state, new Limits(), [], isQuick, CancellationToken.None);

    /// <summary>The notes; 0 where the drill is refused.</summary>
    private static int Quick(PageState state) => Model(state, isQuick: true).Made?.Score.NoteCount ?? 0;
}
