using System.CommandLine;
using System.Globalization;

namespace Warmup.Cli;

/// <summary>The options that add a dated measurement to a singer of a class.</summary>
internal sealed class MeasuredOptions
{
    private readonly Option<string?> _date = new("--measured") { Description = "With --alias, the day of a new measurement: 2026-12-01. Write the class with --out." };
    private readonly Option<string?> _low = new("--low") { Description = "With --measured, the lowest comfortable note." };
    private readonly Option<string?> _high = new("--high") { Description = "With --measured, the highest comfortable note." };
    private readonly Option<string?> _tones = new("--tones") { Description = "With --measured, the sustained tones in seconds, such as \"12 13.5 12.8\"; the longest counts." };

    public void AddTo(Command command)
    {
        foreach (var option in (Option[])[_date, _low, _high, _tones])
        {
            command.Add(option);
        }
    }

    public bool IsGiven(ParseResult parsed) => parsed.GetValue(_date) is not null;

    /// <summary>The class with the new measurement, or as it is where none is given.</summary>
    public ValueList<Singer> Added(ParseResult parsed, ValueList<Singer> singers, string? alias)
    {
        if (PlanOptions.ReadDate(parsed, _date) is not { } date)
        {
            return Others(parsed) is { } early ? throw new InputException($"{early} belongs to --measured; add the day of the measurement") : singers;
        }

        var who = singers.FirstOrDefault(s => s.Alias.Equals(alias ?? throw new InputException("--measured needs the singer; add --alias"), StringComparison.OrdinalIgnoreCase))
            ?? throw new InputException($"--alias: there is no {TextError.Quote(alias)} in the class");
        var measurement = new Measurement(date, Note(parsed, _low), Note(parsed, _high), Tones(parsed));
        return singers.ConvertAll(s => s == who ? s.With(measurement) : s);
    }

    private string? Others(ParseResult parsed) => ((Option<string?>[])[_low, _high, _tones]).FirstOrDefault(o => parsed.GetValue(o) is not null)?.Name;

    private static NoteName Note(ParseResult parsed, Option<string?> option) => parsed.GetValue(option) is not { } text
        ? throw new InputException($"--measured needs {option.Name}, a note name such as A3")
        : OptionValue.Parsed<NoteName>(option.Name, text, NoteName.TryParse);

    private ValueList<Rational> Tones(ParseResult parsed)
    {
        var words = (parsed.GetValue(_tones) ?? throw new InputException("--measured needs --tones, the sustained tones in seconds such as \"12 13.5 12.8\"")).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return words.Select(w => decimal.TryParse(w, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var seconds)
            ? Rational.FromDecimal(Math.Round(seconds, 3))
            : throw new InputException($"--tones must be seconds such as \"12 13.5 12.8\", not {TextError.Quote(w)}")).ToValueList();
    }
}
