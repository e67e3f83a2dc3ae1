using System.Globalization;
using Warmup.Plans;

namespace Warmup.Web;

/// <summary>The page's values for a drill of a plan, so that it can be opened on the page on which drills are made.</summary>
internal static class DayDrillAddress
{
    /// <summary>The values: of a climb, the same figure with the page's own cue between the rounds.</summary>
    public static PageState Of(WarmupPlan plan, PlanDay day, DayDrill planned)
    {
        var drill = planned.Drill.ToDrill(plan.Tonic, plan.Tuning, planned.Tempo, planned.Times);
        var need = day.BreathNeed ?? plan.BreathNeed;
        return PageState.Usual(PageForm.Drill).With(
        [
            ("scale", DrillAddress.NameOf(drill.Scale)),
            .. Repertoire.Find(planned.Drill.ExerciseName) is { } known && known.Pattern == drill.Pattern
                ? ((string, string)[])[("exercise", known.Name)]
                : [("from", "words"), ("pattern", drill.Pattern.ToString()!)],
            ("title", drill.Title),
            ("tonic", drill.Tonic.ToString()),
            ("tuning", drill.Tuning.ToString()),
            ("tempo", drill.Tempo.ToString()),
            ("tala", drill.Meter.ToText()),
            ("gati", Text(drill.Speeds[0].Gati)),
            ("speeds", string.Join(',', drill.Speeds.Select(s => Text(s.Kalam)))),
            ("delivery", drill.Delivery.IsLineByLine ? "line-by-line" : "continuous"),
            ("fill", drill.Delivery.Fill switch { Fill.None => "none", Fill.Anga => "anga", _ => "avartana" }),
            ("fill-by", drill.Delivery.Fill == Fill.None ? string.Empty : drill.Delivery.FillBy switch { FillBy.Room => "room", FillBy.Hold => "hold", _ => "rest" }),
            ("breath", drill.Delivery.IsLineByLine ? LinesQuery.ToText(drill.Delivery.BreathSeconds) : string.Empty),
            ("breaths", LinesQuery.ToText(need)),
            ("repeat", Text(drill.Repetitions)),
            ("count-in", Text(drill.CountIn)),
            ("climb", planned.Drill.ClimbSemitones > 0 ? Text(planned.Drill.ClimbSemitones) : string.Empty),
        ]);
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
