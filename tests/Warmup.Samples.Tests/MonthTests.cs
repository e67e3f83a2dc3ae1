using System.Text.RegularExpressions;
using Warmup.Midi;
using Warmup.Month;
using Warmup.Plans;
using Warmup.Sheets;

namespace Warmup.Samples.Tests;

/// <summary>The month's worker: whole files only, resumable, never over a file unasked. The class is invented.</summary>
public sealed partial class MonthTests : IDisposable
{
    private static readonly ValueList<IScoreFormat> Formats = [new TextSheetFormat(), new MidiFormat()];

    // November 2026 has 30 days and five Sundays, the 1st, 8th, 15th, 22nd and 29th: 25 days of singing, two files each.
    private const int Files = 50;

    private static readonly WarmupPlan Plan = Make(seed: 7);

    private readonly string _folder = Directory.CreateTempSubdirectory("warmup-month-").FullName;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_month_has_files_for_each_day_of_singing_and_the_plan()
    {
        var report = Run("all");
        Assert.Equal(new MonthReport(Files, 0, 0), report);
        Assert.Equal(Files + 1, Content("all").Count);
        Assert.DoesNotContain("2026-11-08.mid", Content("all").Keys);
        Assert.Equal(Plan, PlanFile.Read(File.ReadAllBytes(Path.Combine(_folder, "all", "plan.json"))));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(17)]
    [InlineData(Files - 1)]
    public void Stopped_anywhere_it_leaves_whole_files_and_goes_on_to_the_same_month(int after)
    {
        Run("all");
        using var stop = new CancellationTokenSource();
        var written = 0;
        if (after == 0)
        {
            stop.Cancel();
        }

        var first = Work("part").Run(Plan, false, _ => StopAfter(++written), stop.Token);
        Assert.Equal(new MonthReport(after, 0, Files - after), first);
        var (all, part) = (Content("all"), Content("part"));
        Assert.Equal(after + 1, part.Count);
        Assert.All(part, file => Assert.Equal(all[file.Key], file.Value));

        Assert.Equal(new MonthReport(Files - after, after, 0), Run("part"));
        Assert.Equal(all, Content("part"));

        void StopAfter(int files)
        {
            if (files == after)
            {
                stop.Cancel();
            }
        }
    }

    [Fact]
    public void A_file_that_was_changed_is_named_and_not_touched_unless_asked()
    {
        Run("all");
        Assert.Equal(new MonthReport(0, Files, 0), Run("all"));
        var note = Path.Combine(_folder, "all", "2026-11-02.txt");
        File.AppendAllText(note, "the teacher's own note");
        var before = Content("all");
        Assert.StartsWith(note, Assert.Throws<Warmup.Samples.OtherContentException>(() => Run("all")).Message, StringComparison.Ordinal);
        Assert.Equal(before, Content("all"));
        Assert.Equal(new MonthReport(Files, 0, 0), Work("all").Run(Plan, true, _ => { }, Stop));
        Assert.DoesNotContain("the teacher's own note", File.ReadAllText(note), StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_of_another_plan_is_left_alone()
    {
        Run("all");
        var before = Content("all");
        var other = Make(seed: 8);
        Assert.NotEqual(Plan, other);
        var refused = Assert.Throws<Warmup.Samples.OtherContentException>(() => Work("all").Run(other, false, _ => { }, Stop));
        Assert.Contains("plan.json holds another plan", refused.Message, StringComparison.Ordinal);
        Assert.Equal(before, Content("all"));
    }

    [Fact]
    public void Half_a_file_of_a_crash_is_replaced_by_the_whole_one()
    {
        Directory.CreateDirectory(Path.Combine(_folder, "all"));
        var partial = Path.Combine(_folder, "all", ".2026-11-02.mid.partial");
        File.WriteAllText(partial, "half");
        Assert.True(Run("all").IsDone);
        Assert.False(File.Exists(partial));
    }

    [Fact]
    public void The_file_that_another_run_is_writing_is_not_taken_from_it()
    {
        Directory.CreateDirectory(Path.Combine(_folder, "all"));
        var partial = Path.Combine(_folder, "all", ".2026-11-02.mid.partial");
        using var other = new FileStream(partial, FileMode.CreateNew, FileAccess.Write, FileShare.None);
        Assert.True(Run("all").IsDone);
        Assert.True(File.Exists(partial));
    }

    [Theory]
    [InlineData("--month is missing")]
    [InlineData("'2026-13'", "--month", "2026-13")]
    [InlineData("'--loud' is not an option", "--loud")]
    [InlineData("between 5 and 20, not 90", "--month", "2026-11", "--minutes", "90")]
    public void Wrong_input_ends_with_2_and_says_what_would_be_right(string message, params string[] args)
    {
        var singers = Path.Combine(_folder, "class.json");
        using (var file = File.Create(singers))
        {
            SingersFile.Write(Class, file);
        }

        using var error = new StringWriter();
        string[] rest = args is ["--loud"] or [] ? [] : ["--scales", "mohanam", "--singers", singers, "--out", Path.Combine(_folder, "out")];
        Assert.Equal(2, Month.Program.Run([.. args, .. rest], TextWriter.Null, error, Stop));
        Assert.Contains(message, error.ToString(), StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(_folder, "out")));
    }

    [Fact]
    public void The_command_of_its_page_writes_a_month()
    {
        var command = File.ReadLines(SourceTree.At("docs/embed.md")).Single(l => l.Contains(" -- --month", StringComparison.Ordinal)).Split(" -- ")[1];
        var words = Word().Matches(command).Select(w => w.Value.Trim('"') switch
        {
            "class.json" => Path.Combine(_folder, "class.json"),
            "december" => Path.Combine(_folder, "december"),
            var word => word,
        }).ToArray();
        using (var file = File.Create(Path.Combine(_folder, "class.json")))
        {
            SingersFile.Write(Class, file);
        }

        Assert.Equal(0, Month.Program.Run(words, TextWriter.Null, TextWriter.Null, Stop));
        Assert.Equal((27 * 3) + 1, Content("december").Count); // December 2026 has 31 days and four Sundays
    }

    [Fact]
    public void The_program_writes_the_month_and_the_cautions()
    {
        var singers = Path.Combine(_folder, "class.json");
        using (var file = File.Create(singers))
        {
            SingersFile.Write(Class, file);
        }

        using var output = new StringWriter();
        var code = Month.Program.Run(["--month", "2026-11", "--singers", singers, "--scales", "mohanam, hamsadhwani", "--out", Path.Combine(_folder, "out")], output, TextWriter.Null, Stop);
        Assert.Equal(0, code);
        Assert.Equal((25 * 3) + 1, Content("out").Count);
        Assert.Contains(Cautions.All[0].Text, output.ToString(), StringComparison.Ordinal);
    }

    [GeneratedRegex("\"[^\"]*\"|\\S+")]
    private static partial Regex Word();

    private static ValueList<Singer> Class =>
    [
        new("Wren", Note("G3"), Note("E5"), 18),
        new("Heron", Note("F3"), Note("D5"), 22),
    ];

    private static NoteName Note(string text) => NoteName.Parse(text);

    private static WarmupPlan Make(ulong seed) => WarmupPlan.Make(new PlanRequest
    {
        Scales = [Catalogue.Default.Read("mohanam"), Catalogue.Default.Read("hamsadhwani")],
        Singers = Class,
        Start = new DateOnly(2026, 11, 1),
        Days = 30,
        Seed = seed,
    }).Plan;

    private MonthWork Work(string folder) => new(Path.Combine(_folder, folder), Formats);

    private MonthReport Run(string folder) => Work(folder).Run(Plan, false, _ => { }, Stop);

    private SortedDictionary<string, string> Content(string folder)
    {
        var content = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var file in Directory.EnumerateFiles(Path.Combine(_folder, folder)))
        {
            content.Add(Path.GetFileName(file), Convert.ToHexString(File.ReadAllBytes(file)));
        }

        return content;
    }
}
