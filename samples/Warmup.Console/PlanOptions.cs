using System.CommandLine;
using System.Globalization;
using Warmup.Plans;

namespace Warmup.Cli;

/// <summary>The options of <c>warmup plan</c>.</summary>
internal sealed class PlanOptions
{
    public const string WithoutName = "--without";

    private readonly SingerOptions _singers = new(required: false);

    private readonly Option<string?> _scales = new("--scales")
    {
        Description = "The scales, with commas between them: names, a kind such as audava (or in words: all five-note scales), parent:15 for a parent and what is derived from it, parents:1-12 for parents by number.",
    };

    private readonly Option<string?> _start = new("--start") { Description = "The first day: 2026-12-01." };
    private readonly Option<string?> _days = new("--days") { Description = $"The number of days, 1 to {PlanRequest.MostDays}; 28 by default." };
    private readonly Option<string?> _minutes = new("--minutes") { Description = $"The most minutes of a warm-up, {PlanRequest.FewestMinutes} to {PlanRequest.MostMinutes}; 8 by default." };
    private readonly Option<string?> _seed = new("--seed") { Description = "The seed of the choices; 1 by default. The same seed gives the same plan." };
    private readonly Option<string?> _noRepeat = new("--no-repeat") { Description = $"For how many days of singing a drill does not come back, 0 to {PlanRequest.MostNoRepeatDays}; 3 by default." };
    private readonly Option<string?> _least = new("--least") { Description = "How much of the minutes a scale's warm-ups must be able to fill on average, in per cent; 50 by default. A scale that cannot is left out." };
    private readonly Option<string?> _rest = new("--rest") { Description = "The weekdays of rest, such as \"sunday wednesday\", or none; sunday by default." };
    private readonly Option<string?> _level = new("--level") { Description = $"{LevelNames}; that of the least experienced singer by default." };
    private readonly Option<string?> _tempo = new("--tempo")
    {
        Description = "The tempo of the middle drills: its start and its ceiling, in whole aksharas (or beats) a minute, rising by the step each week, such as \"60 to 72 by 2\", or one number; the level's by default.",
    };

    private readonly AddedDrills _added = new();

    private readonly Option<string[]> _without = new(WithoutName) { Description = "Leave this singer of the class out; it can be given several times." };

    private readonly Option<string?> _climb = new("--climb")
    {
        Description = $"Also draw on short figures that climb by semitones and back, up to so many: 1 to {PlanRequest.MostClimb}, or as far as everyone's range allows. Not with a typed tonic.",
    };

    private readonly Option<string?> _tonic = new(TonicOption.Name) { Description = $"Tonic: {TonicOption.Forms}; the best one for the class by default." };
    private readonly Option<string> _tuning = TuningOption.Create();
    private readonly Option<string?> _time = new("--time") { Description = "The time of day in the calendar; 18:00 by default." };
    private readonly Option<string?> _log = new("--log") { Description = "The log of what was sung: a new plan goes on from it, and --sung adds to it." };
    private readonly Option<bool> _noAgain = new("--no-again") { Description = "Do not give drills their turn again before others because the log says that lines stayed off." };
    private readonly Option<string?> _formats = new("--formats") { Description = "The endings of the files for each day, such as \"txt mid musicxml wav\", or none." };
    private readonly Option<string?> _out = new("--out") { Description = "The folder to write to; it is made if it does not exist.", Required = true };

    private static string LevelNames => string.Join(", ", Level.All.Select(l => l.Name));

    public Option<string?> Plan { get; } = new("--plan") { Description = "A plan.json of which to make a day's files again." };

    public Option<string?> Day { get; } = new("--day") { Description = "With --plan, the day to make." };

    public Option<string?> Week { get; } = new("--week") { Description = "Write the seven days from this one on as one PDF to print, a day a page." };

    public SungOptions Sung { get; } = new();

    public Option<bool> Force { get; } = new("--force") { Description = "Replace files that exist. Without it, files of a new plan that are there and equal are kept, and what is missing is written." };

    public Option<bool> Json { get; } = new("--json") { Description = "Print the days, what they ask of the singers, and the files as JSON." };

    public void AddTo(Command command)
    {
        _singers.AddTo(command);
        foreach (var option in (Option[])[_without, _scales, _start, _days, _minutes, _seed, _noRepeat, _least, _rest, _level, _tempo, _added.Add, _added.Tala, _climb, _tonic, _tuning, _time, _log, _noAgain, _formats, _out, Plan, Day, Week, Force, Json, CautionOption.Create()])
        {
            command.Add(option);
        }

        Sung.AddTo(command);
    }

    /// <summary>Whether the class is given, so that an old plan is held against it.</summary>
    public bool HasSingers(ParseResult parsed) => parsed.GetResult(_singers.File) is { Implicit: false };

    public ValueList<Singer> ReadSingers(ParseResult parsed) => _singers.Read(parsed);

    /// <summary>The first day that is looked at where an old plan is held against a class.</summary>
    public DateOnly? ReadStart(ParseResult parsed) => ReadDate(parsed, _start);

    /// <summary>Refuses the options of a new plan where a day of an old one is made.</summary>
    public void RefuseWithDay(ParseResult parsed) => Refuse(parsed, [_singers.File, _singers.Alias, _start, _time]);

    /// <summary>Refuses the options of a new plan where an old one is held against a class.</summary>
    public void RefuseWithClass(ParseResult parsed) => Refuse(parsed, [_singers.Alias, _log]);

    private void Refuse(ParseResult parsed, Option[] others)
    {
        foreach (var option in (Option[])[.. others, _without, _scales, _days, _minutes, _seed, _noRepeat, _least, _rest, _level, _tempo, _added.Add, _added.Tala, _climb, _tonic, _noAgain])
        {
            if (parsed.GetResult(option) is { Implicit: false })
            {
                throw new InputException($"{option.Name} belongs to a new plan and cannot be used with --plan; leave one of them out");
            }
        }
    }

    public PlanRequest ReadRequest(ParseResult parsed, Terminal terminal)
    {
        var singers = Remaining(_singers.Read(parsed), parsed.GetValue(_without) ?? []);
        if (singers.IsEmpty)
        {
            throw new InputException("a new plan needs the class; add --singers FILE (or --plan FILE for an old plan)");
        }

        if (parsed.GetValue(Day) is not null || Sung.IsSung(parsed))
        {
            throw new InputException("--day and --sung belong to an old plan; add --plan FILE");
        }

        var tuning = TuningOption.Read(parsed.GetValue(_tuning)!);
        if (!Tuning.TryParse(tuning.ToString(), out var again, out _) || again != tuning)
        {
            throw new InputException("--tuning: the plan's file holds only the name of its tuning, so choose a tuning by name, not a file");
        }

        if (parsed.GetValue(_climb) is not null && parsed.GetValue(_tonic) is not null)
        {
            throw new InputException("--climb moves the tonic, and --tonic holds it; leave one of them out");
        }

        var request = new PlanRequest
        {
            Singers = singers,
            Scales = ReadScales(parsed),
            Start = ReadDate(parsed, _start) ?? throw new InputException("a new plan needs its first day; add --start 2026-12-01"),
            Level = ReadLevel(parsed, singers),
            Added = _added.Read(parsed),
            Tonic = parsed.GetValue(_tonic) is { } tonic ? TonicOption.Read(tonic) : null,
            Tuning = tuning,
            Log = ReadLog(parsed, terminal),
            HasRetries = !parsed.GetValue(_noAgain),
        };
        return request with
        {
            Days = Whole(parsed, _days, 1, PlanRequest.MostDays, request.Days),
            Minutes = Whole(parsed, _minutes, PlanRequest.FewestMinutes, PlanRequest.MostMinutes, request.Minutes),
            Climb = Whole(parsed, _climb, 1, PlanRequest.MostClimb, request.Climb),
            Seed = ReadSeed(parsed) ?? request.Seed,
            NoRepeatDays = Whole(parsed, _noRepeat, 0, PlanRequest.MostNoRepeatDays, request.NoRepeatDays),
            LeastFillPercent = Whole(parsed, _least, 0, 100, request.LeastFillPercent),
            RestDays = ReadRest(parsed) ?? request.RestDays,
        };
    }

    public string ReadFolder(ParseResult parsed) =>
        parsed.GetValue(_out) is { } folder && !File.Exists(folder) ? folder : throw new InputException($"--out: {parsed.GetValue(_out)} is a file; name a folder");

    public string? ReadLogPath(ParseResult parsed) => parsed.GetValue(_log);

    public static DateOnly? ReadDate(ParseResult parsed, Option<string?> option) => parsed.GetValue(option) is not { } text
        ? null
        : DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)
            ? date
            : throw new InputException($"{option.Name} must be a date such as 2026-12-01, not {TextError.Quote(text)}");

    public TimeOnly ReadTime(ParseResult parsed) =>
        TimeOnly.TryParseExact(parsed.GetValue(_time) ?? "18:00", "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out var time)
            ? time
            : throw new InputException($"--time must be a time such as 18:00, not {TextError.Quote(parsed.GetValue(_time))}");

    /// <summary>The endings of the files for each day.</summary>
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

    private ValueList<Scale> ReadScales(ParseResult parsed)
    {
        var scales = OptionValue.Parsed<ValueList<Scale>>(
            "--scales", parsed.GetValue(_scales) ?? throw new InputException("a new plan needs scales; add --scales \"mohanam, bilahari\""), Catalogue.Default.TryReadList);
        return scales.Count <= PlanRequest.MostScales ? scales : throw new InputException($"--scales must name at most {PlanRequest.MostScales} scales, not {scales.Count}");
    }

    private static ValueList<Singer> Remaining(ValueList<Singer> singers, string[] without)
    {
        foreach (var alias in without)
        {
            var rest = singers.Where(s => !s.Alias.Equals(alias, StringComparison.OrdinalIgnoreCase)).ToValueList();
            singers = rest.Count < singers.Count ? rest : throw new InputException($"{WithoutName}: there is no {TextError.Quote(alias)} among the singers");
        }

        return singers.IsEmpty && without.Length > 0 ? throw new InputException($"{WithoutName} leaves nobody; keep at least one singer") : singers;
    }

    /// <summary>The level, with a tempo of its own if one was typed.</summary>
    private Level? ReadLevel(ParseResult parsed, ValueList<Singer> singers)
    {
        var level = parsed.GetValue(_level) is { } name ? OptionValue.Choice("--level", name, [.. Level.All.Select(l => (l.Name, l))]) : null;
        if (parsed.GetValue(_tempo) is not { } text)
        {
            return level;
        }

        var tempo = OptionValue.Parsed<TempoRamp>("--tempo", text, TempoRamp.TryParse);
        try
        {
            return (level ?? Level.Of(singers)) with { Tempo = tempo };
        }
        catch (ArgumentException)
        {
            throw new InputException($"--tempo must rise in whole aksharas or beats a minute, such as \"60 to 72 by 2\", not {TextError.Quote(text)}");
        }
    }

    private ulong? ReadSeed(ParseResult parsed) => parsed.GetValue(_seed) is not { } text
        ? null
        : ulong.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var seed)
            ? seed
            : throw new InputException($"--seed must be a whole number between 0 and {ulong.MaxValue}, not {TextError.Quote(text)}");

    private ValueList<DayOfWeek>? ReadRest(ParseResult parsed) => parsed.GetValue(_rest) switch
    {
        null => null,
        "none" => [],
        var text => text.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries).Select(ReadWeekday).Distinct().ToValueList(),
    };

    private static DayOfWeek ReadWeekday(string word)
    {
        foreach (var day in Enum.GetValues<DayOfWeek>())
        {
            if (day.ToString().Equals(word, StringComparison.OrdinalIgnoreCase))
            {
                return day;
            }
        }

        throw new InputException($"--rest must name weekdays such as sunday, not {TextError.Quote(word)}");
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

        var log = InputFile.Read("--log", path, PlanLog.LargestFile, "the log of what was sung", bytes => PlanLog.Read(bytes));
        foreach (var wrong in log.Errors)
        {
            terminal.Error($"{path}, line {wrong.Line}, column {wrong.Column}: {wrong.Message}; the line is passed over");
        }

        return log.Entries;
    }

    private static int Whole(ParseResult parsed, Option<string?> option, int least, int most, int usual) =>
        parsed.GetValue(option) is { } text ? OptionValue.Whole(option.Name, text, least, most) : usual;
}
