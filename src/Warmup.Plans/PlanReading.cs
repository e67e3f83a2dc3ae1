using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup.Plans;

/// <summary>A plan from the rows of its file.</summary>
internal static class PlanReading
{
    private const int MostDrills = 100_000;
    private const int LongestText = 1_000;

    public static WarmupPlan ToPlan(PlanDto file)
    {
        if (file.Generator != SeededSource.Name)
        {
            throw PlanFile.Fail($"the generator of the plan is {TextError.Quote(file.Generator)}; this library knows {SeededSource.Name}");
        }

        var scales = Needed(file.Scales, "scales").ConvertAll(ToScale);
        var drills = Needed(file.Drills, "drills").ConvertAll(d => ToDrill(d, scales));
        InRange(drills.Count, 1, MostDrills, "the number of drills");
        var minutes = InRange(file.Minutes, PlanRequest.FewestMinutes, PlanRequest.MostMinutes, "minutes");
        var days = Needed(file.Days, "days").Select(d => ToDay(d, drills, minutes)).ToList();
        InRange(days.Count, 1, PlanRequest.MostDays, "the number of days");
        for (var d = 1; d < days.Count; d++)
        {
            if (days[d].Date.DayNumber != days[d - 1].Date.DayNumber + 1)
            {
                throw PlanFile.Fail(string.Create(CultureInfo.InvariantCulture, $"{days[d].Date:yyyy-MM-dd} comes after {days[d - 1].Date:yyyy-MM-dd}; the days must follow each other without gaps"));
            }
        }

        var tonic = ToTonic(Needed(file.Tonic, "tonic"));
        if (tonic.Midi + drills.Max(d => d.ClimbSemitones) > Tonic.HighestMidi)
        {
            throw PlanFile.Fail($"a drill climbs from {tonic} beyond C7, the highest tonic");
        }

        return new WarmupPlan(tonic, ToTuning(Needed(file.Tuning, "tuning")), ToBreathNeed(file.BreathSeconds, file.ShortestBreathSeconds))
        {
            Generator = file.Generator,
            Origin = file.Origin is null || PlanFile.IsFingerprint(file.Origin) ? file.Origin : throw PlanFile.Fail($"the origin must be 16 hexadecimal digits in lower case, not {TextError.Quote(file.Origin)}"),
            Seed = file.Seed ?? throw Lacks("seed"),
            LevelName = Line(file.Level, "level"),
            Minutes = minutes,
            NoRepeatDays = InRange(file.NoRepeatDays, 0, PlanRequest.MostNoRepeatDays, "noRepeatDays"),
            RestDays = Needed(file.RestDays, "restDays").ConvertAll(ToDayOfWeek).ToValueList(),
            Drills = drills.ToValueList(),
            Days = days.ToValueList(),
        };
    }

    /// <summary>A tonic given as a frequency, rounded until writing and reading it changes nothing.</summary>
    [return: NotNullIfNotNull(nameof(tonic))]
    public static Tonic? Settled(Tonic? tonic)
    {
        for (var i = 0; i < 8 && tonic is { OffsetCents: not 0 }; i++)
        {
            tonic = Tonic.FromHz(tonic.Hz, tonic.A4);
        }

        return tonic;
    }

    private static Scale ToScale(ScaleDto row)
    {
        var name = Needed(row.Name, "name");
        return !Checks.IsName(name, Scale.LongestName) || string.IsNullOrWhiteSpace(name)
            ? throw PlanFile.Fail($"the name of a scale must have 1 to {Scale.LongestName} characters without control characters, not {TextError.Quote(name)}")
            : Scale.TryParse(Needed(row.Notes, "notes"), out var written, out var error)
                ? new Scale(name, written.Ascent, written.Descent)
                : throw Within("notes", error);
    }

    private static Tonic ToTonic(TonicDto row)
    {
        var a4 = InRange(row.A4 ?? Tonic.StandardA4, Tonic.LowestA4, Tonic.HighestA4, "a4");
        return row.Hz is { } hz ? Settled(Taken(() => Tonic.FromHz(hz, a4), Shown($"hz must give a tonic from C1 to C7, not {hz}")))
            : row.Midi is { } midi ? Tonic.FromMidi(InRange(midi, Tonic.LowestMidi, Tonic.HighestMidi, "midi"), a4)
            : NoteName.TryParse(row.Note, out var note, out _) ? Taken(() => Tonic.FromNote(note, a4), $"the note of the tonic must lie from C1 to C7, not at {note}")
            : throw PlanFile.Fail($"the note of the tonic must be a note name such as G3, not {TextError.Quote(row.Note)}");
    }

    private static Tuning ToTuning(string text) => Tuning.TryParse(text, out var tuning, out var error) ? tuning : throw Within("tuning", error);

    private static BreathNeed ToBreathNeed(string? capacityText, string? shortestText)
    {
        var (capacity, shortest) = (ToRational(capacityText, "breathSeconds"), ToRational(shortestText, "shortestBreathSeconds"));
        return Taken(() => new BreathNeed(capacity, shortest), $"breathSeconds must be between 1/10 and 120 and shortestBreathSeconds between 1/10 and 10, not {capacity} and {shortest}");
    }

    private static PlanDrill ToDrill(DrillDto row, List<Scale> scales)
    {
        var exercise = Needed(row.Exercise, "exercise");
        if (exercise.LastIndexOf('-') <= 0 || !Checks.IsName(exercise, PlanDrill.LongestName))
        {
            throw PlanFile.Fail($"the exercise must be a group and a number, such as sarali-3, of at most {PlanDrill.LongestName} characters, not {TextError.Quote(exercise)}");
        }

        var role = DrillRoleWords.TryParse(row.Role, out var read) ? read : throw PlanFile.Fail($"the role must be opening, middle or descent, not {TextError.Quote(row.Role)}");
        var speeds = Needed(row.Speeds, "speeds");
        InRange(speeds.Count, 1, Drill.MostSpeeds, "the number of speeds");
        return new PlanDrill(scales[InRange(row.Scale, 0, scales.Count - 1, "scale")], role, exercise)
        {
            Title = Line(row.Title, "title"),
            Pattern = Pattern.TryParse(Needed(row.Pattern, "pattern"), out var pattern, out var error) ? pattern : throw Within("pattern", error),
            Meter = Meter.TryParse(Needed(row.Meter, "meter"), out var meter, out error) ? meter : throw Within("meter", error),
            Delivery = ToDelivery(Needed(row.Delivery, "delivery")),
            Speeds = speeds.ConvertAll(ToSpeed).ToValueList(),
            Repetitions = InRange(row.Repetitions, 1, Drill.MostRepetitions / DayDrill.MostTimes, "repetitions"),
            ClimbSemitones = row.Climb is null ? 0 : InRange(row.Climb, 1, PlanRequest.MostClimb, "climb"),
            Grade = row.Grade ?? throw Lacks("grade"),
            SpanSemitones = row.Span ?? throw Lacks("span"),
        };
    }

    private static Speed ToSpeed(SpeedDto row)
    {
        var (kalam, gati) = (row.Kalam ?? throw Lacks("kalam"), row.Gati ?? throw Lacks("gati"));
        return Taken(() => new Speed(kalam, gati), Shown($"kalam must be 1 to 4 and gati 3, 4, 5, 7 or 9, not {kalam} and {gati}"));
    }

    private static Delivery ToDelivery(DeliveryDto row)
    {
        var (breath, grid, hold) = (ToRational(row.BreathSeconds, "breathSeconds"), row.BreathGrid ?? Delivery.Continuous.BreathGrid, ToRational(row.LeastHold, "leastHold"));
        return Taken(
            () => (row.LineByLine ?? throw Lacks("lineByLine") ? Delivery.LineByLine : Delivery.Continuous) with
            {
                Fill = row.Fill switch { "none" => Fill.None, "anga" => Fill.Anga, "avartana" => Fill.Avartana, _ => throw PlanFile.Fail($"fill must be none, anga or avartana, not {TextError.Quote(row.Fill)}") },
                FillBy = row.FillBy switch { "room" => FillBy.Room, "hold" => FillBy.Hold, "rest" => FillBy.Rest, _ => throw PlanFile.Fail($"fillBy must be room, hold or rest, not {TextError.Quote(row.FillBy)}") },
                BreathSeconds = breath,
                BreathGrid = grid,
                LeastHold = hold,
            },
            Shown($"breathSeconds must be between 1/5 and 10, breathGrid must divide {Delivery.FinestBreathGrid}, and leastHold must be between 1/4 and 64, not {breath}, {grid} and {hold}"));
    }

    private static PlanDay ToDay(DayDto row, List<PlanDrill> drills, int minutes)
    {
        if (!DateOnly.TryParseExact(row.Date, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date))
        {
            throw PlanFile.Fail($"the date must be a day such as 2026-12-01, not {TextError.Quote(row.Date)}");
        }

        var sung = Needed(row.Drills, "drills").ConvertAll(d => new DayDrill(
            drills[InRange(d.Drill, 0, drills.Count - 1, "drill")],
            InRange(d.Tempo, Tempo.Slowest, Tempo.Fastest, "tempo"),
            InRange(d.Times, 1, DayDrill.MostTimes, "times")));
        var seconds = ToRational(row.Seconds, "seconds");
        if (seconds < Rational.Zero || seconds > 60 * minutes)
        {
            throw PlanFile.Fail($"seconds must be between 0 and {60 * minutes}, not {seconds}");
        }

        var leftOut = Needed(row.LeftOut, "leftOut").ConvertAll(i => drills[InRange(i, 0, drills.Count - 1, "leftOut")]);
        return new PlanDay(date, sung.ToValueList(), seconds, leftOut.ToValueList())
        {
            BreathNeed = row.BreathSeconds is null && row.ShortestBreathSeconds is null ? null : ToBreathNeed(row.BreathSeconds, row.ShortestBreathSeconds),
            Shortfall = row.Shortfall is not { } s ? null : new Shortfall
            {
                Unfit = InRange(s.Unfit, 0, MostDrills, "unfit"),
                AboveCeiling = InRange(s.Closed, 0, MostDrills, "closed"),
                Waiting = InRange(s.Waiting, 0, MostDrills, "waiting"),
                OutOfOrder = InRange(s.Order, 0, MostDrills, "order"),
            },
        };
    }

    private static DayOfWeek ToDayOfWeek(string word)
    {
        foreach (var day in Enum.GetValues<DayOfWeek>())
        {
            if (PlanWriting.Word(day) == word)
            {
                return day;
            }
        }

        throw PlanFile.Fail($"a day of rest must be a weekday such as sunday, not {TextError.Quote(word)}");
    }

    private static Rational ToRational(string? text, string name) =>
        Rational.TryParse(Needed(text, name), out var value, out _) ? value : throw PlanFile.Fail($"{name} must be a number or a fraction such as 25/2, not {TextError.Quote(text)}");

    private static string Line(string? text, string name) => Needed(text, name) is var line && line.Length <= LongestText && Require.IndexOfControl(line) < 0
        ? line
        : throw PlanFile.Fail($"{name} must have at most {LongestText} characters without control characters, not {TextError.Quote(text)}");

    private static int InRange(int? value, int low, int high, string name) => (value ?? throw Lacks(name)) is var given && given >= low && given <= high
        ? given
        : throw PlanFile.Fail(Shown($"{name} must be between {low} and {high}, not {given}"));

    private static double InRange(double value, double low, double high, string name) => value >= low && value <= high
        ? value
        : throw PlanFile.Fail(Shown($"{name} must be between {low} and {high}, not {value}"));

    /// <summary>A value of the core, or the refusal in the file's own words where the core does not take what the file gives.</summary>
    private static T Taken<T>(Func<T> make, string refusal)
    {
        try
        {
            return make();
        }
        catch (Exception refused) when (refused is ArgumentException or OverflowException)
        {
            throw PlanFile.Fail(refusal);
        }
    }

    private static T Needed<T>(T? value, string name)
        where T : class => value ?? throw Lacks(name);

    private static WarmupFormatException Lacks(string name) => PlanFile.Fail($"\"{name}\" is missing");

    private static WarmupFormatException Within(string name, TextError error) => PlanFile.Fail($"{name}, {error}");

    private static string Shown(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
