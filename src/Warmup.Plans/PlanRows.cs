using System.Globalization;

namespace Warmup.Plans;

/// <summary>The rows of a plan's file.</summary>
internal static class PlanRows
{
    private const string DateFormat = "yyyy-MM-dd";
    private const int MostDrills = 100_000;

    public static string Word(DayOfWeek day) => day.ToString().ToLowerInvariant();

    public static TonicDto ToDto(Tonic tonic)
    {
        var a4 = tonic.A4.Equals(Tonic.StandardA4) ? (double?)null : tonic.A4;
        return (tonic.OffsetCents, tonic.TypedName) switch
        {
            (not 0, _) => new TonicDto { Hz = tonic.Hz, A4 = a4 },
            (_, { } typed) => new TonicDto { Note = typed.ToString(), A4 = a4 },
            _ => new TonicDto { Midi = tonic.Midi, A4 = a4 },
        };
    }

    public static DrillDto ToDto(PlanDrill drill, int scale) => new()
    {
        Scale = scale,
        Role = drill.Role.ToWord(),
        Exercise = drill.Exercise,
        Title = drill.Title,
        Pattern = drill.Pattern.ToString(),
        Meter = drill.Meter.Name,
        Delivery = new DeliveryDto
        {
            LineByLine = drill.Delivery.IsLineByLine,
            Fill = drill.Delivery.Fill.ToString().ToLowerInvariant(),
            FillBy = drill.Delivery.FillBy.ToString().ToLowerInvariant(),
            BreathSeconds = drill.Delivery.BreathSeconds.ToString(),
            LeastHold = drill.Delivery.LeastHold.ToString(),
        },
        Speeds = [.. ((IEnumerable<Speed>)drill.Speeds).Select(s => new SpeedDto { Kalam = s.Kalam, Gati = s.Gati })],
        Repetitions = drill.Repetitions,
        Grade = drill.Grade,
        Span = drill.Span,
    };

    public static DayDto ToDto(PlanDay day) => new()
    {
        Date = day.Date.ToString(DateFormat, CultureInfo.InvariantCulture),
        Seconds = day.Seconds.ToString(),
        Drills = [.. ((IEnumerable<PlannedDrill>)day.Drills).Select(d => new DrillOfDayDto { Drill = d.Drill, Tempo = d.Tempo, Times = d.Times })],
        LeftOut = [.. (IEnumerable<int>)day.LeftOut],
        Shortfall = day.Shortfall is { } s ? new ShortfallDto { Unfit = s.Unfit, Closed = s.Closed, Waiting = s.Waiting, Order = s.Order } : null,
    };

    public static WarmupPlan ToPlan(PlanDto file)
    {
        if (file.Generator != SeededSource.Name)
        {
            throw PlanFile.Fail($"the generator is '{PlanFile.Shown(file.Generator ?? string.Empty)}'; this library knows {SeededSource.Name}");
        }

        var scales = Needed(file.Scales, "scales").ConvertAll(ToScale);
        var drills = Needed(file.Drills, "drills").ConvertAll(d => ToDrill(d, scales));
        Require.InRange(drills.Count, 1, MostDrills, "the number of drills");
        var days = Needed(file.Days, "days").ConvertAll(d => ToDay(d, drills.Count));
        Require.InRange(days.Count, 1, PlanRequest.MostDays, "the number of days");
        for (var d = 1; d < days.Count; d++)
        {
            if (days[d].Date.DayNumber != days[d - 1].Date.DayNumber + 1)
            {
                throw PlanFile.Fail(string.Create(CultureInfo.InvariantCulture, $"{days[d].Date:yyyy-MM-dd} stands behind {days[d - 1].Date:yyyy-MM-dd}; the days must follow each other"));
            }
        }

        return new WarmupPlan
        {
            Generator = file.Generator,
            Seed = file.Seed ?? throw Lacks("seed"),
            Level = Needed(file.Level, "level"),
            Minutes = Require.InRange(Needed(file.Minutes, "minutes"), PlanRequest.FewestMinutes, PlanRequest.MostMinutes, "minutes"),
            NoRepeatDays = Require.InRange(Needed(file.NoRepeatDays, "noRepeatDays"), 0, PlanRequest.MostNoRepeatDays, "noRepeatDays"),
            RestDays = Needed(file.RestDays, "restDays").ConvertAll(ToDayOfWeek).ToValueList(),
            Tonic = ToTonic(Needed(file.Tonic, "tonic")),
            Tuning = Tuning.TryParse(Needed(file.Tuning, "tuning"), out var tuning, out var error) ? tuning! : throw error!.ToException(),
            Need = new BreathNeed(ToRational(file.BreathSeconds, "breathSeconds"), ToRational(file.ShortestBreathSeconds, "shortestBreathSeconds")),
            Drills = drills.ToValueList(),
            Days = days.ToValueList(),
        };
    }

    private static Scale ToScale(ScaleDto row)
    {
        var written = Scale.Parse(Needed(row.Notes, "notes"));
        return new Scale(Needed(row.Name, "name"), written.Ascent, written.Descent);
    }

    private static Tonic ToTonic(TonicDto row)
    {
        var a4 = row.A4 ?? Tonic.StandardA4;
        return row.Hz is { } hz ? Tonic.FromHz(hz, a4)
            : row.Midi is { } midi ? Tonic.FromMidi(midi, a4)
            : NoteName.TryParse(row.Note, out var note, out _) ? Tonic.FromNote(note, a4) : throw PlanFile.Fail($"'{PlanFile.Shown(row.Note ?? string.Empty)}' is no note for the tonic");
    }

    private static PlanDrill ToDrill(DrillDto row, List<Scale> scales)
    {
        var exercise = Needed(row.Exercise, "exercise");
        return exercise.LastIndexOf('-') <= 0
            ? throw PlanFile.Fail($"'{PlanFile.Shown(exercise)}' must be a group and a number, such as sarali-3")
            : new PlanDrill(
                scales[Require.InRange(Needed(row.Scale, "scale"), 0, scales.Count - 1, "the index of a scale")],
                RoleWords.TryParse(row.Role, out var role) ? role : throw PlanFile.Fail($"the role '{PlanFile.Shown(row.Role ?? string.Empty)}' must be opening, middle or descent"),
                exercise,
                Needed(row.Title, "title"),
                Pattern.Parse(Needed(row.Pattern, "pattern")),
                Meter.Parse(Needed(row.Meter, "meter")),
                ToDelivery(Needed(row.Delivery, "delivery")),
                Needed(row.Speeds, "speeds").ConvertAll(s => new Speed(Needed(s.Kalam, "kalam"), Needed(s.Gati, "gati"))).ToValueList(),
                Require.InRange(Needed(row.Repetitions, "repetitions"), 1, Drill.MostRepetitions / PlannedDrill.MostTimes, "repetitions"),
                Needed(row.Grade, "grade"),
                Needed(row.Span, "span"));
    }

    private static Delivery ToDelivery(DeliveryDto row) => (Needed(row.LineByLine, "lineByLine") ? Delivery.LineByLine : Delivery.Continuous) with
    {
        Fill = row.Fill switch { "none" => Fill.None, "anga" => Fill.Anga, "avartana" => Fill.Avartana, _ => throw PlanFile.Fail("fill must be none, anga or avartana") },
        FillBy = row.FillBy switch { "hold" => FillBy.Hold, "rest" => FillBy.Rest, _ => throw PlanFile.Fail("fillBy must be hold or rest") },
        BreathSeconds = ToRational(row.BreathSeconds, "breathSeconds"),
        LeastHold = ToRational(row.LeastHold, "leastHold"),
    };

    private static PlanDay ToDay(DayDto row, int drills) => new(
        DateOnly.TryParseExact(row.Date, DateFormat, CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)
            ? date
            : throw PlanFile.Fail($"'{PlanFile.Shown(row.Date ?? string.Empty)}' is no date such as 2026-12-01"),
        Needed(row.Drills, "drills").ConvertAll(d => new PlannedDrill(
            Require.InRange(Needed(d.Drill, "drill"), 0, drills - 1, "the index of a drill"),
            Require.InRange(Needed(d.Tempo, "tempo"), Tempo.Slowest, Tempo.Fastest, "tempo"),
            Require.InRange(Needed(d.Times, "times"), 1, PlannedDrill.MostTimes, "times"))).ToValueList(),
        ToRational(row.Seconds, "seconds"),
        Needed(row.LeftOut, "leftOut").ConvertAll(i => Require.InRange(i, 0, drills - 1, "the index of a drill left out")).ToValueList())
    {
        Shortfall = row.Shortfall is { } s ? new Shortfall(Count(s.Unfit, "unfit"), Count(s.Closed, "closed"), Count(s.Waiting, "waiting"), Count(s.Order, "order")) : null,
    };

    private static int Count(int? value, string name) => Require.InRange(Needed(value, name), 0, MostDrills, name);

    private static DayOfWeek ToDayOfWeek(string word)
    {
        foreach (var day in Enum.GetValues<DayOfWeek>())
        {
            if (Word(day) == word)
            {
                return day;
            }
        }

        throw PlanFile.Fail($"'{PlanFile.Shown(word)}' is no weekday such as sunday");
    }

    private static Rational ToRational(string? text, string name) =>
        Rational.TryParse(Needed(text, name), out var value, out _) ? value : throw PlanFile.Fail($"{name} must be a number or a fraction such as 25/2, not '{PlanFile.Shown(text!)}'");

    private static T Needed<T>(T? value, string name)
        where T : class => value ?? throw Lacks(name);

    private static T Needed<T>(T? value, string name)
        where T : struct => value ?? throw Lacks(name);

    private static WarmupFormatException Lacks(string name) => PlanFile.Fail($"\"{name}\" is missing");
}
