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
    private static readonly string[] Known = ["scale", "pattern", "tonic", "tempo", "tuning", "delivery"];

    /// <summary>The drill, or everything that is wrong with the query.</summary>
    public static Drill? Read(IQueryCollection query, Limits limits, List<QueryError> errors)
    {
        foreach (var name in query.Keys.Where(k => !Known.Contains(k, StringComparer.Ordinal)))
        {
            errors.Add(new(Shown(name), null, null, $"is unknown; the parameters are {string.Join(", ", Known)}"));
        }

        var scale = Parsed<Scale>(query, "scale", limits, errors, Catalogue.Default.TryRead);
        var pattern = Parsed<Pattern>(query, "pattern", limits, errors, Pattern.TryParse);
        var tonic = Parsed<Tonic>(query, "tonic", limits, errors, (string text, out Tonic? read, out TextError? wrong) => Tonic.TryParse(text, out read, out wrong));
        var tempo = Tempo(Text(query, "tempo", "60", limits, errors), limits, errors);
        var tuning = OneOf("tuning", Text(query, "tuning", "equal", limits, errors), errors, ("equal", Tuning.Equal), ("just", Tuning.Just), ("pythagorean", Tuning.Pythagorean));
        var delivery = OneOf("delivery", Text(query, "delivery", "continuous", limits, errors), errors, ("continuous", Delivery.Continuous), ("line-by-line", Delivery.LineByLine));
        return errors.Count > 0 ? null : new Drill
        {
            Scale = scale!,
            Pattern = pattern!,
            Tonic = tonic!,
            Tempo = tempo,
            Tuning = tuning!,
            Delivery = delivery!,
        };
    }

    private delegate bool Parser<T>(string text, out T? value, out TextError? wrong);

    /// <summary>A value that one of the library's types reads; nothing where it is missing or wrong.</summary>
    private static T? Parsed<T>(IQueryCollection query, string name, Limits limits, List<QueryError> errors, Parser<T> parser)
        where T : class
    {
        if (Text(query, name, null, limits, errors) is not { } text)
        {
            return null;
        }

        if (!parser(text, out var value, out var wrong))
        {
            errors.Add(new(name, wrong!.Line, wrong.Column, wrong.Message));
        }

        return value;
    }

    private static string? Text(IQueryCollection query, string name, string? usual, Limits limits, List<QueryError> errors)
    {
        var values = query[name];
        if (values.Count > 1)
        {
            errors.Add(new(name, null, null, string.Create(CultureInfo.InvariantCulture, $"must be given once, not {values.Count} times")));
            return null;
        }

        var text = values.Count == 0 || string.IsNullOrEmpty(values[0]) ? usual : values[0];
        if (text is null)
        {
            errors.Add(new(name, null, null, "is missing"));
        }
        else if (text.Length > limits.LongestText)
        {
            errors.Add(new(name, 1, limits.LongestText + 1, string.Create(CultureInfo.InvariantCulture, $"must have at most {limits.LongestText} characters, not {text.Length}")));
            return null;
        }

        return text;
    }

    private static int Tempo(string? text, Limits limits, List<QueryError> errors)
    {
        if (text is null)
        {
            return limits.SlowestTempo;
        }

        if (!int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var tempo) || tempo < limits.SlowestTempo || tempo > limits.FastestTempo)
        {
            errors.Add(new("tempo", 1, 1, string.Create(
                CultureInfo.InvariantCulture, $"must be a whole number between {limits.SlowestTempo} and {limits.FastestTempo}, not {TextError.Quote(text)}")));
        }

        return tempo;
    }

    private static T? OneOf<T>(string name, string? text, List<QueryError> errors, params ReadOnlySpan<(string Word, T Value)> choices)
        where T : class
    {
        var words = new List<string>();
        foreach (var (word, value) in choices)
        {
            if (word == text)
            {
                return value;
            }

            words.Add(word);
        }

        if (text is not null)
        {
            errors.Add(new(name, 1, 1, $"must be {string.Join(" or ", words)}, not {TextError.Quote(text)}"));
        }

        return null;
    }

    private static string Shown(string text) => string.Concat((text.Length <= 40 ? text : text[..40] + "...").Select(c => char.IsControl(c) || char.IsSurrogate(c) ? '?' : c));
}
