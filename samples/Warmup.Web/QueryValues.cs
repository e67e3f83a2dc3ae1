using System.Globalization;

namespace Warmup.Web;

/// <summary>Reads one of the library's types from a text.</summary>
internal delegate bool Parser<T>(string text, out T? value, out TextError? wrong);

/// <summary>The values of a query, each given at most once and no longer than allowed.</summary>
/// <param name="Query">The query.</param>
/// <param name="Limits">What is allowed.</param>
/// <param name="Errors">Takes what is wrong.</param>
internal sealed record QueryValues(IQueryCollection Query, Limits Limits, List<QueryError> Errors)
{
    /// <summary>A value that one of the library's types reads; nothing where it is missing or wrong.</summary>
    public T? Parsed<T>(string name, string? usual, Parser<T> parser, int? longest = null)
        where T : class
    {
        if (Text(name, usual, longest) is not { } text)
        {
            return null;
        }

        if (!parser(text, out var value, out var wrong))
        {
            Errors.Add(new(name, wrong!.Line, wrong.Column, wrong.Message));
        }

        return value;
    }

    /// <summary>One of some words.</summary>
    public T? OneOf<T>(string name, string usual, params ReadOnlySpan<(string Word, T Value)> choices)
    {
        var text = Text(name, usual);
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
            Errors.Add(new(name, 1, 1, $"must be {string.Join(" or ", words)}, not {TextError.Quote(text)}"));
        }

        return default;
    }

    /// <summary>A whole number.</summary>
    public int Whole(string name, int least, int most, int usual)
    {
        if (Peek(name) is null || Text(name, string.Empty) is not { } text)
        {
            return usual;
        }

        if (int.TryParse(text.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= least && number <= most)
        {
            return number;
        }

        Wrong(name, string.Create(CultureInfo.InvariantCulture, $"must be a whole number between {least} and {most}, not {TextError.Quote(text)}"));
        return usual;
    }

    /// <summary>The tempo or the rise of the tempo.</summary>
    public TempoRamp? Tempo()
    {
        if (Text("tempo", "60") is not { } text)
        {
            return null;
        }

        if (!TempoRamp.TryParse(text, out var ramp, out _) || ramp.Start < Limits.SlowestTempo || ramp.Start > Limits.FastestTempo || ramp.Ceiling > Limits.FastestTempo)
        {
            Wrong("tempo", string.Create(
                CultureInfo.InvariantCulture, $"must be a number between {Limits.SlowestTempo} and {Limits.FastestTempo}, or a rise such as 60 to 90 by 5, not {TextError.Quote(text)}"));
            return null;
        }

        return ramp;
    }

    /// <summary>The text of a value, or the usual one; a missing value without a usual one is wrong.</summary>
    public string? Text(string name, string? usual, int? longest = null)
    {
        var most = longest ?? Limits.LongestText;
        var values = Query[name];
        if (values.Count > 1)
        {
            Errors.Add(new(name, null, null, string.Create(CultureInfo.InvariantCulture, $"must be given once, not {values.Count} times")));
            return null;
        }

        var text = Peek(name) ?? usual;
        if (text is null)
        {
            Errors.Add(new(name, null, null, "is missing"));
        }
        else if (text.Length > most)
        {
            Errors.Add(new(name, 1, most + 1, string.Create(CultureInfo.InvariantCulture, $"must have at most {most} characters, not {text.Length}")));
            return null;
        }

        return text;
    }

    /// <summary>The text of a value as it stands; nothing where it is empty, missing or given twice.</summary>
    public string? Peek(string name) => Query[name] is { Count: 1 } one && !string.IsNullOrEmpty(one[0]) ? one[0] : null;

    /// <summary>Says that a value is wrong.</summary>
    public void Wrong(string name, string message) => Errors.Add(new(name, 1, 1, message));
}
