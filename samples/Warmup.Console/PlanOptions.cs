using System.CommandLine;
using System.Globalization;
using Warmup.Plans;

namespace Warmup.Cli;

/// <summary>The options of <c>warmup plan</c>.</summary>
internal sealed class PlanOptions
{
    private readonly SingerOptions _singers = new(required: false);

    private readonly Option<string?> _scales = new("--scales")
    {
        Description = "The scales, between commas: names, a kind such as audava (also: all five-note scales), parent:15 for a parent and what is derived from it, parents:1-12 for parents by number.",
    };

    private readonly Option<string?> _start = new("--start") { Description = "The first day: 2026-12-01." };
    private readonly Option<int?> _days = new("--days") { Description = $"The number of days, 1 to {PlanRequest.MostDays}; 28 if left out." };
    private readonly Option<int?> _minutes = new("--minutes") { Description = $"The most minutes of a warm-up, {PlanRequest.FewestMinutes} to {PlanRequest.MostMinutes}; 8 if left out." };
    private readonly Option<ulong?> _seed = new("--seed") { Description = "The seed of the choices; 1 if left out. The same seed gives the same plan." };
    private readonly Option<int?> _noRepeat = new("--no-repeat") { Description = "On so many days of singing after a drill it does not come back; 3 if left out." };
    private readonly Option<int?> _least = new("--least") { Description = "How much of the minutes a scale's warm-ups must be able to fill on average, in per cent; 50 if left out. A scale that cannot is left out." };
    private readonly Option<string?> _rest = new("--rest") { Description = "The weekdays of rest, such as \"sunday wednesday\", or none; sunday if left out." };
    private readonly Option<string?> _level = new("--level") { Description = "beginner, intermediate or advanced; that of the least experienced singer if left out." };
    private readonly Option<string?> _tonic = new("--tonic") { Description = "Tonic: a note (G3), a kattai (5.5) or a frequency (220Hz); the best one if left out." };
    private readonly Option<string> _tuning = TuningOption.Create();
    private readonly Option<string?> _time = new("--time") { Description = "The time of day in the calendar; 18:00 if left out." };
    private readonly Option<string?> _log = new("--log") { Description = "The log of what was sung: a new plan goes on from it, and --sung adds to it." };
    private readonly Option<string?> _formats = new("--formats") { Description = "The endings of the days' files, such as \"txt mid musicxml wav\", or none." };
    private readonly Option<string?> _out = new("--out") { Description = "The folder to write to; it is made if it does not exist.", Required = true };

    public Option<string?> Plan { get; } = new("--plan") { Description = "A plan.json to make a day of again." };

    public Option<string?> Day { get; } = new("--day") { Description = "With --plan, the day to make." };

    public Option<bool> Sung { get; } = new("--sung") { Description = "With --plan and --day, write into --log that the day was sung." };

    public Option<bool> Tick { get; } = new("--tick") { Description = "With --sung, the teacher's tick: the next plan may go on from these tempi." };

    public Option<bool> Force { get; } = new("--force") { Description = "Replace files that exist." };

    public void AddTo(Command command)
    {
        _singers.AddTo(command);
        foreach (var option in (Option[])[_scales, _start, _days, _minutes, _seed, _noRepeat, _least, _rest, _level, _tonic, _tuning, _time, _log, _formats, _out, Plan, Day, Sung, Tick, Force])
        {
            command.Add(option);
        }
    }

    /// <summary>Refuses the options of a new plan beside those of an old one.</summary>
    public void RefuseWith(string other, ParseResult parsed)
    {
        foreach (var option in (Option[])[_scales, _start, _days, _minutes, _seed, _noRepeat, _least, _rest, _level, _tonic, _time])
        {
            if (parsed.GetResult(option) is { Implicit: false })
            {
                throw new InputException($"{option.Name} belongs to a new plan and cannot stand beside {other}; leave one of them out");
            }
        }

        if (!_singers.Read(parsed).IsEmpty)
        {
            throw new InputException($"--singers belongs to a new plan and cannot stand beside {other}; leave one of them out");
        }
    }

    public PlanRequest ReadRequest(ParseResult parsed, Terminal terminal)
    {
        var singers = _singers.Read(parsed);
        if (singers.IsEmpty)
        {
            throw new InputException("a new plan needs the class; add --singers FILE (or --plan FILE for an old one)");
        }

        if (parsed.GetValue(Day) is not null || parsed.GetValue(Sung))
        {
            throw new InputException("--day and --sung belong to an old plan; add --plan FILE");
        }

        var tuning = TuningOption.Read(parsed.GetValue(_tuning)!);
        if (!Tuning.TryParse(tuning.ToString(), out var again, out _) || again != tuning)
        {
            throw new InputException("--tuning: a plan's file names its tuning, so take one by name, not from a file");
        }

        var level = Level.All.FirstOrDefault(l => l.Name == parsed.GetValue(_level));
        if (level is null && parsed.GetValue(_level) is { } unknown)
        {
            throw new InputException($"--level must be beginner, intermediate or advanced, not '{Terminal.Short(unknown)}'");
        }

        Tonic? tonic = null;
        if (parsed.GetValue(_tonic) is { } text && !Tonic.TryParse(text, out tonic, out var error))
        {
            throw new InputException($"--tonic, {error}");
        }

        return Checked(() => new PlanRequest
        {
            Singers = singers,
            Scales = ReadScales(parsed.GetValue(_scales) ?? throw new InputException("a new plan needs scales; add --scales \"mohanam, bilahari\"")),
            Start = ReadDate(parsed, _start) ?? throw new InputException("a new plan needs its first day; add --start 2026-12-01"),
            Days = parsed.GetValue(_days) ?? 28,
            Minutes = parsed.GetValue(_minutes) ?? 8,
            Seed = parsed.GetValue(_seed) ?? 1,
            NoRepeatDays = parsed.GetValue(_noRepeat) ?? 3,
            LeastPercent = parsed.GetValue(_least) ?? 50,
            RestDays = ReadRest(parsed.GetValue(_rest)),
            Level = level,
            Tonic = tonic,
            Tuning = tuning,
            Log = ReadLog(parsed, terminal),
        });
    }

    public string ReadFolder(ParseResult parsed) =>
        parsed.GetValue(_out) is { } folder && !File.Exists(folder) ? folder : throw new InputException($"--out: {parsed.GetValue(_out)} is a file; name a folder");

    public string? ReadLogPath(ParseResult parsed) => parsed.GetValue(_log);

    public static DateOnly? ReadDate(ParseResult parsed, Option<string?> option) => parsed.GetValue(option) is not { } text
        ? null
        : DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)
            ? date
            : throw new InputException($"{option.Name} must be a date such as 2026-12-01, not '{Terminal.Short(text)}'");

    public TimeOnly ReadTime(ParseResult parsed) =>
        TimeOnly.TryParseExact(parsed.GetValue(_time) ?? "18:00", "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out var time)
            ? time
            : throw new InputException($"--time must be a time such as 18:00, not '{Terminal.Short(parsed.GetValue(_time)!)}'");

    /// <summary>The endings of the days' files.</summary>
    public IReadOnlyList<string> ReadFormats(ParseResult parsed, string usual)
    {
        var words = (parsed.GetValue(_formats) ?? usual).Split([' ', ','], StringSplitOptions.RemoveEmptyEntries);
        var endings = words is ["none"] ? [] : words.Select(w => w.StartsWith('.') ? w : "." + w).Distinct().ToList();
        foreach (var ending in endings)
        {
            _ = Formats.Of("day" + ending);
        }

        return endings;
    }

    private static ValueList<Scale> ReadScales(string text)
    {
        var scales = new List<Scale>();
        foreach (var word in text.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (word.StartsWith("parents:", StringComparison.Ordinal))
            {
                var ends = word["parents:".Length..].Split('-');
                var (first, last) = (Number(word, ends[0]), Number(word, ends[^1]));
                if (ends.Length > 2 || last < first)
                {
                    throw new InputException($"--scales: the numbers of parents must rise, such as parents:1-12, not '{Terminal.Short(word)}'");
                }

                scales.AddRange(Enumerable.Range(first, last - first + 1).Select(n => Catalogue.Default.Parent(n).Scale));
            }
            else if (word.StartsWith("parent:", StringComparison.Ordinal))
            {
                scales.AddRange(Found(new ScaleQuery { Parent = Number(word, word["parent:".Length..]) }));
            }
            else if (ScaleKind.TryParse(KindOf(word), out var kind, out _))
            {
                scales.AddRange(Found(new ScaleQuery { Kind = kind }));
            }
            else
            {
                scales.Add(Catalogue.Default.TryRead(word, out var scale, out var error) ? scale! : throw new InputException($"--scales, {error}"));
            }
        }

        return scales.Count > 0 ? scales.ToValueList() : throw new InputException($"--scales: '{Terminal.Short(text)}' names no scale");
    }

    /// <summary>The trade's word for "all five-note scales" and its like; other words stay as they are.</summary>
    private static string KindOf(string word) => word.ToLowerInvariant() switch
    {
        "all five-note scales" or "five-note scales" => "audava",
        "all six-note scales" or "six-note scales" => "shadava",
        "all seven-note scales" or "seven-note scales" => "sampurna",
        _ => word,
    };

    private static IEnumerable<Scale> Found(ScaleQuery query) => Catalogue.Default.Search(query).Select(e => e.Scale);

    private static int Number(string word, string text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number is >= 1 and <= 72
            ? number
            : throw new InputException($"--scales: the number of a parent scale must be between 1 and 72, not '{Terminal.Short(word)}'");

    private static ValueList<DayOfWeek> ReadRest(string? text)
    {
        if (text is null or "none")
        {
            return text is null ? [DayOfWeek.Sunday] : [];
        }

        return text.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries)
            .Select(w => Enum.GetValues<DayOfWeek>().Select(d => (DayOfWeek?)d).FirstOrDefault(d => d!.Value.ToString().Equals(w, StringComparison.OrdinalIgnoreCase))
                ?? throw new InputException($"--rest: '{Terminal.Short(w)}' is no weekday such as sunday"))
            .Distinct()
            .ToValueList();
    }

    private ValueList<LogEntry> ReadLog(ParseResult parsed, Terminal terminal)
    {
        if (parsed.GetValue(_log) is not { } path)
        {
            return [];
        }

        if (!File.Exists(path))
        {
            throw new InputException($"--log: {path} does not exist; leave --log out for a first plan");
        }

        var log = PlanLog.Read(File.ReadAllBytes(path));
        foreach (var wrong in log.Errors)
        {
            terminal.Error($"{path}, line {wrong.Line}: {wrong.Message}");
        }

        return log.Entries;
    }

    private static PlanRequest Checked(Func<PlanRequest> make)
    {
        try
        {
            return make();
        }
        catch (ArgumentOutOfRangeException refused)
        {
            throw new InputException(refused.Message.Split(" (Parameter", 2)[0]);
        }
    }
}
