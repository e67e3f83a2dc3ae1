using System.Globalization;
using System.Text;
using Microsoft.Extensions.Primitives;
using Warmup.Plans;

namespace Warmup.Web;

/// <summary>Reads what a plan must be like from the values of its page.</summary>
internal static class PlanQuery
{
    private const string DayForm = "yyyy-MM-dd";

    /// <summary>The request, or nothing where something is wrong or missing: the first day, or the class.</summary>
    public static PlanRequest? Read(PageState state, ValueList<Singer> singers, Limits limits, List<QueryError> errors)
    {
        var values = new QueryValues(new QueryCollection(state.Form.Values.ToDictionary(v => v.Name, v => new StringValues(state[v.Name]))), limits, errors);
        var scales = Scales(values);
        var start = state["start"].Length == 0 ? null : Day(values, "start");
        var days = values.Whole("days", 1, limits.MostPlanDays, 28);
        var minutes = values.Whole("minutes", PlanRequest.FewestMinutes, PlanRequest.MostMinutes, 8);
        var tempo = state["tempo"].Length == 0 ? null : values.Parsed<TempoRamp>("tempo", null, TempoRamp.TryParse);
        var level = Level(values, tempo, singers);
        var tonic = state["tonic"].Length == 0 ? null : values.Parsed("tonic", null, (string text, out Tonic? read, out TextError? wrong) => Tonic.TryParse(text, out read, out wrong));
        var climb = values.Whole("climb", 1, PlanRequest.MostClimb, 0);
        if (climb > 0 && tonic is not null)
        {
            values.Wrong("climb", "moves the tonic, and a typed tonic holds it: leave one of them empty");
        }

        var rest = Rest(values);
        var wait = values.Whole("no-repeat", 0, PlanRequest.MostNoRepeatDays, 3);
        var least = values.Whole("least", 0, 100, 50);
        var seed = Seed(values);
        var tuning = values.OneOf("tuning", "equal", ("equal", Tuning.Equal), ("just", Tuning.Just), ("pythagorean", Tuning.Pythagorean));
        var hasRetries = values.OneOf("retry", "yes", ("yes", true), ("no", false));
        var log = Log(state, errors);
        return errors.Count > 0 || start is null || singers.IsEmpty ? null : new PlanRequest
        {
            Scales = scales,
            Singers = singers,
            Start = start.Value,
            Days = days,
            Minutes = minutes,
            Seed = seed,
            NoRepeatDays = wait,
            LeastFillPercent = least,
            RestDays = rest,
            Climb = climb,
            Level = level,
            Tonic = tonic,
            Tuning = tuning!,
            Log = log,
            HasRetries = hasRetries,
        };
    }

    /// <summary>The day that is opened; nothing where none is.</summary>
    public static DateOnly? OpenedDay(PageState state) =>
        DateOnly.TryParseExact(state["day"], DayForm, CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : null;

    /// <summary>A date as the page's values carry it.</summary>
    public static string ToText(DateOnly date) => date.ToString(DayForm, CultureInfo.InvariantCulture);

    /// <summary>What a change of the request changes in the page's values; nothing where it leaves a singer out, which no address says.</summary>
    public static IEnumerable<(string Name, string Value)>? Changes(PlanRequest request, PlanRequest changed)
    {
        if (changed.Singers.Count < request.Singers.Count)
        {
            return null;
        }

        var changes = new List<(string Name, string Value)>();
        void Take(string name, int before, int after) => changes.AddRange(before == after ? [] : [(name, after.ToString(CultureInfo.InvariantCulture))]);
        Take("no-repeat", request.NoRepeatDays, changed.NoRepeatDays);
        Take("least", request.LeastFillPercent, changed.LeastFillPercent);
        Take("minutes", request.Minutes, changed.Minutes);
        Take("days", request.Days, changed.Days);
        if (changed.Tonic != request.Tonic)
        {
            changes.Add(("tonic", changed.Tonic?.ToString() ?? string.Empty));
        }

        var (old, level) = (request.Level ?? Plans.Level.Of(request.Singers), changed.Level ?? Plans.Level.Of(changed.Singers));
        if (changed.Level is not null && level.Name != old.Name)
        {
            changes.AddRange([("level", level.Name), ("tempo", string.Empty)]);
        }
        else if (changed.Level is not null && level.Tempo != old.Tempo)
        {
            changes.Add(("tempo", level.Tempo.ToString()));
        }

        return changes.Count == 0 ? null : changes;
    }

    private static ValueList<Scale> Scales(QueryValues values)
    {
        if (values.Text("scales", string.Empty) is not { } text)
        {
            return [];
        }

        if (!Catalogue.Default.TryReadList(text, out var scales, out var wrong))
        {
            values.Errors.Add(new("scales", wrong.Line, wrong.Column, wrong.Message));
        }
        else if (scales.Count > values.Limits.MostPlanScales)
        {
            values.Wrong("scales", string.Create(CultureInfo.InvariantCulture, $"must name at most {values.Limits.MostPlanScales} scales here, not {scales.Count}"));
        }

        return scales;
    }

    private static DateOnly? Day(QueryValues values, string name)
    {
        if (values.Text(name, string.Empty) is { } text && DateOnly.TryParseExact(text.Trim(), DayForm, CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) && day.Year is >= 1900 and < 9999)
        {
            return day;
        }

        values.Wrong(name, "must be a date such as 2026-12-01");
        return null;
    }

    private static Level? Level(QueryValues values, TempoRamp? tempo, ValueList<Singer> singers)
    {
        var level = values.Peek("level") is null ? null : values.OneOf("level", string.Empty, [.. Plans.Level.All.Select(l => (l.Name, l))]);
        if (tempo is null || singers.IsEmpty)
        {
            return level;
        }

        try
        {
            return (level ?? Plans.Level.Of(singers)) with { Tempo = tempo };
        }
        catch (ArgumentException)
        {
            values.Wrong("tempo", $"must rise in whole aksharas or beats a minute, such as 60 to 72 by 2, not {TextError.Quote(tempo.ToString())}");
            return level;
        }
    }

    private static ValueList<DayOfWeek> Rest(QueryValues values)
    {
        var days = new List<DayOfWeek>();
        foreach (var word in (values.Text("rest", string.Empty) ?? string.Empty).Split([' ', ','], StringSplitOptions.RemoveEmptyEntries).Where(w => w != "none"))
        {
            if (Enum.GetValues<DayOfWeek>().Select(d => (DayOfWeek?)d).FirstOrDefault(d => d.ToString()!.Equals(word, StringComparison.OrdinalIgnoreCase)) is { } day)
            {
                days.Add(day);
            }
            else
            {
                values.Wrong("rest", $"must name weekdays such as sunday, or none, not {TextError.Quote(word)}");
            }
        }

        return days.Distinct().ToValueList();
    }

    private static ulong Seed(QueryValues values)
    {
        if (ulong.TryParse(values.Text("seed", "1"), NumberStyles.None, CultureInfo.InvariantCulture, out var seed))
        {
            return seed;
        }

        values.Wrong("seed", $"must be a whole number between 0 and {ulong.MaxValue}");
        return 1;
    }

    private static ValueList<LogEntry> Log(PageState state, List<QueryError> errors)
    {
        if (state["log"].Length == 0)
        {
            return [];
        }

        var log = PlanLog.Read(Encoding.UTF8.GetBytes(state["log"]));
        errors.AddRange(log.Errors.Take(1).Select(e => new QueryError("log", e.Line, e.Column, e.Message)));
        return log.Entries;
    }
}
