// Many users at once on the page to make drills in: each changes one thing after the other, as the page's script does, with a class of six.
//
//     dotnet run tests/Load/page.cs -- http://127.0.0.1:5080 50 20 1000
//
// The numbers: users, changes of each, milliseconds of thought before each change (on average, the same in each run).
using System.Diagnostics;
using System.Globalization;

var address = new Uri(args.ElementAtOrDefault(0) ?? "http://127.0.0.1:5080");
var (users, changes, thought) = (Number(1, 50), Number(2, 20), Number(3, 1000));
const string Class = """
    Wren,G3,E5,18,beginner
    Finch,F3,D5,20,intermediate
    Heron,F3,C5,22,advanced
    Otter,C3,G4,24,intermediate
    Badger,G2,D4,22,beginner
    Robin,B3,D5,12,beginner
    """;
string[] exercises = ["sarali-1", "sarali-2", "janta-2", "datu-1", "alankara-1", "alankara-5", "alankara-7", "choir-1"];
string[] tonics = ["C3", "D3", "F3", "G3", "A3", "C4", "D4", "E4"];

using var client = new HttpClient(new SocketsHttpHandler { MaxConnectionsPerServer = users }) { BaseAddress = address };
for (var i = 0; i < 20; i++)
{
    await Ask(i % exercises.Length, i % tonics.Length, "1");
    await Ask(i % exercises.Length, i % tonics.Length, null);
}

foreach (var (name, quick) in ((string, string?)[])[("the drill and whom it fits", "1"), ("with the remedies and the tempi", null)])
{
    var watch = Stopwatch.StartNew();
    var all = await Task.WhenAll(Enumerable.Range(0, users).Select(async user =>
    {
        var pause = new Random(user);
        var times = new List<(double Milliseconds, bool IsFine)>();
        for (var change = 0; change < changes; change++)
        {
            await Task.Delay(pause.Next((2 * thought) + 1));
            var one = Stopwatch.StartNew();
            var isFine = await Ask((user + change) % exercises.Length, ((3 * user) + change) % tonics.Length, quick);
            times.Add((one.Elapsed.TotalMilliseconds, isFine));
        }

        return times;
    }));
    var times = all.SelectMany(t => t).OrderBy(t => t.Milliseconds).ToList();
    string At(double share) => times[(int)Math.Ceiling(share * times.Count) - 1].Milliseconds.ToString("0.0", CultureInfo.InvariantCulture);
    Console.WriteLine($"{name}: {users} users, {times.Count} answers in {watch.Elapsed.TotalSeconds.ToString("0.0", CultureInfo.InvariantCulture)} s, {times.Count(t => !t.IsFine)} errors; median {At(0.5)} ms, 95th percentile {At(0.95)} ms, slowest {At(1)} ms");
}

async Task<bool> Ask(int exercise, int tonic, string? quick)
{
    var values = new Dictionary<string, string> { ["exercise"] = exercises[exercise], ["tonic"] = tonics[tonic], ["class"] = Class, ["delivery"] = "line-by-line" };
    if (quick is not null)
    {
        values["quick"] = quick;
    }

    using var form = new FormUrlEncodedContent(values);
    using var answer = await client.PostAsync(new Uri("/", UriKind.Relative), form);
    var page = await answer.Content.ReadAsStringAsync();
    return answer.IsSuccessStatusCode && page.Contains("<strong>Robin</strong>", StringComparison.Ordinal);
}

int Number(int index, int usual) => args.Length > index ? int.Parse(args[index], CultureInfo.InvariantCulture) : usual;
