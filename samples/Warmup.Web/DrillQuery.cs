using System.Globalization;

namespace Warmup.Web;

/// <summary>What is wrong with a query value.</summary>
/// <param name="Parameter">The value's name.</param>
/// <param name="Line">The line of the value's text, from 1; nothing if the value as a whole is wrong.</param>
/// <param name="Column">The column, from 1, in UTF-16 code units.</param>
/// <param name="Message">What was found, what was expected, and the fix.</param>
internal sealed record QueryError(string Parameter, int? Line, int? Column, string Message);

/// <summary>Reads a drill from a request's query.</summary>
internal static class DrillQuery
{
    /// <summary>The names of the values.</summary>
    public static ValueList<string> Names { get; } =
    [
        "scale", "pattern", "lines", "tonic", "tempo", "tuning", "syllables", "tala", "speeds", "gati", "delivery", "fill", "fill-by", "breath", "breaths",
        "repeat", "count-in", "eduppu", "drone", "drone-string", "climb", "cue", "title",
    ];

    /// <summary>The drill, or everything that is wrong with the query.</summary>
    public static DrillRequest? Read(IQueryCollection query, Limits limits, List<QueryError> errors)
    {
        foreach (var name in query.Keys.Where(k => !Names.Contains(k, StringComparer.Ordinal)))
        {
            errors.Add(new(Shown(name), null, null, $"is unknown; the parameters are {string.Join(", ", Names)}"));
        }

        var values = new QueryValues(query, limits, errors);
        var scale = values.Parsed<Scale>("scale", null, Catalogue.Default.TryRead);
        var exercise = values.Peek("pattern") is { } named ? Repertoire.Find(named.Trim()) : null;
        var pattern = exercise?.Pattern ?? values.Parsed<Pattern>("pattern", null, Pattern.TryParse, limits.LongestLines);
        var tonic = values.Parsed("tonic", null, (string text, out Tonic? read, out TextError? wrong) => Tonic.TryParse(text, out read, out wrong));
        var tempo = values.Tempo();
        var tuning = values.OneOf("tuning", "equal", ("equal", Tuning.Equal), ("just", Tuning.Just), ("pythagorean", Tuning.Pythagorean));
        var syllables = values.Parsed<Syllables>("syllables", Syllables.SvaraLetters.Name, Syllables.TryParse);
        var meter = TimeQuery.Meter(values, exercise);
        var speeds = TimeQuery.Speeds(values, exercise);
        var delivery = TimeQuery.Delivery(values, meter);
        var lines = LinesQuery.Read(values);
        var breaths = LinesQuery.Breaths(values);
        var repetitions = values.Whole("repeat", 1, Drill.MostRepetitions, 1);
        var countIn = TimeQuery.CountIn(values, meter);
        var eduppu = TimeQuery.Eduppu(values, meter);
        var (hasDrone, droneStyle) = DroneQuery.Read(values);
        var climb = ClimbQuery.Read(values);
        var title = ReadTitle(values) ?? (exercise is null || scale is null ? null : $"{scale.Name}: {exercise.Title}");
        if (errors.Count > 0)
        {
            return null;
        }

        var drill = new Drill
        {
            Scale = scale!,
            Pattern = pattern!,
            Tonic = tonic!,
            Tempo = tempo!,
            Tuning = tuning!,
            Syllables = syllables!,
            Meter = meter!,
            Speeds = speeds,
            Delivery = delivery!,
            Repetitions = repetitions,
            CountIn = countIn,
            Eduppu = eduppu,
            HasDrone = hasDrone,
            DroneStyle = droneStyle,
        };
        return new DrillRequest(title is null ? drill : drill with { Title = title }, lines, breaths, climb);
    }

    private static string? ReadTitle(QueryValues values)
    {
        if (values.Peek("title") is null || values.Text("title", string.Empty) is not { } title)
        {
            return null;
        }

        if (!title.Any(c => char.IsControl(c) || char.IsSurrogate(c) || char.GetUnicodeCategory(c) == UnicodeCategory.Format))
        {
            return title.Trim();
        }

        values.Wrong("title", $"must be plain text in one line, not {TextError.Quote(title)}");
        return null;
    }

    private static string Shown(string text) => string.Concat((text.Length <= 40 ? text : text[..40] + "...").Select(c => char.IsControl(c) || char.IsSurrogate(c) ? '?' : c));
}
