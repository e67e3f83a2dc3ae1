using System.Globalization;

namespace Warmup.Plans;

/// <summary>A plan as the rows of its file.</summary>
internal static class PlanWriting
{
    public static PlanDto ToDto(WarmupPlan plan, IEnumerable<PlanDay> days)
    {
        var scales = plan.Drills.Select(d => d.Scale).Distinct().ToList();

        // The days hold the plan's own drills: two that are equal keep their places in the file.
        var places = new Dictionary<PlanDrill, int>(ReferenceEqualityComparer.Instance);
        foreach (var drill in plan.Drills)
        {
            places.Add(drill, places.Count);
        }

        return new PlanDto
        {
            Schema = PlanFile.Schema,
            Generator = plan.Generator,
            Origin = plan.Origin,
            Seed = plan.Seed,
            Level = plan.LevelName,
            Minutes = plan.Minutes,
            NoRepeatDays = plan.NoRepeatDays,
            RestDays = [.. plan.RestDays.Select(Word)],
            Tonic = ToDto(plan.Tonic),
            Tuning = plan.Tuning.ToString(),
            BreathSeconds = plan.BreathNeed.CapacitySeconds.ToString(),
            ShortestBreathSeconds = plan.BreathNeed.ShortestBreathSeconds.ToString(),
            Scales = [.. scales.Select(s => new ScaleDto { Name = s.Name, Notes = s.ToText() })],
            Drills = [.. plan.Drills.Select(d => ToDto(d, scales.IndexOf(d.Scale)))],
            Days = days.Select(d => ToDto(d, places)),
            Cautions = [.. FramingExercises.Cautions.Select(c => c.Text)],
        };
    }

    public static string Word(DayOfWeek day) => day.ToString().ToLowerInvariant();

    private static TonicDto ToDto(Tonic tonic)
    {
        var a4 = tonic.A4.Equals(Tonic.StandardA4) ? (double?)null : tonic.A4;
        return (tonic.OffsetCents, tonic.TypedName) switch
        {
            (not 0, _) => new TonicDto { Hz = tonic.Hz, A4 = a4 },
            (_, { } typed) => new TonicDto { Note = typed.ToString(), A4 = a4 },
            _ => new TonicDto { Midi = tonic.Midi, A4 = a4 },
        };
    }

    private static DrillDto ToDto(PlanDrill drill, int scale) => new()
    {
        Scale = scale,
        Role = drill.Role.ToWord(),
        Exercise = drill.ExerciseName,
        Title = drill.Title,
        Pattern = drill.Pattern.ToString(),
        Meter = drill.Meter.ToText(),
        Delivery = new DeliveryDto
        {
            LineByLine = drill.Delivery.IsLineByLine,
            Fill = drill.Delivery.Fill.ToString().ToLowerInvariant(),
            FillBy = drill.Delivery.FillBy.ToString().ToLowerInvariant(),
            BreathSeconds = drill.Delivery.BreathSeconds.ToString(),
            BreathGrid = drill.Delivery.BreathGrid == Delivery.Continuous.BreathGrid ? null : drill.Delivery.BreathGrid,
            LeastHold = drill.Delivery.LeastHold.ToString(),
        },
        Speeds = [.. drill.Speeds.Select(s => new SpeedDto { Kalam = s.Kalam, Gati = s.Gati })],
        Repetitions = drill.Repetitions,
        Climb = drill.ClimbSemitones == 0 ? null : drill.ClimbSemitones,
        Grade = drill.Grade,
        Span = drill.SpanSemitones,
    };

    private static DayDto ToDto(PlanDay day, Dictionary<PlanDrill, int> places) => new()
    {
        Date = day.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        Seconds = day.Seconds.ToString(),
        Drills = [.. day.Drills.Select(d => new DrillOfDayDto { Drill = places[d.Drill], Tempo = d.Tempo, Times = d.Times })],
        LeftOut = [.. day.LeftOut.Select(d => places[d])],
        Shortfall = day.Shortfall is { } s ? new ShortfallDto { Unfit = s.Unfit, Closed = s.AboveCeiling, Waiting = s.Waiting, Order = s.OutOfOrder } : null,
        BreathSeconds = day.BreathNeed?.CapacitySeconds.ToString(),
        ShortestBreathSeconds = day.BreathNeed?.ShortestBreathSeconds.ToString(),
    };
}
