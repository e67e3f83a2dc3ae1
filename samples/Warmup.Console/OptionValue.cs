using System.Globalization;

namespace Warmup.Cli;

/// <summary>Reads what is typed after an option. A refusal names the option, the value and what would do.</summary>
internal static class OptionValue
{
    /// <summary>A method that reads a text or says what is wrong with it.</summary>
    public delegate bool Parser<T>(string text, out T? value, out TextError? error);

    /// <summary>A text that one of the libraries reads.</summary>
    /// <exception cref="InputException">The text cannot be read.</exception>
    public static T Parsed<T>(string option, string text, Parser<T> parser) => parser(text, out var value, out var error) ? value! : throw Refusal(option, error!);

    /// <summary>One of a few words.</summary>
    /// <exception cref="InputException">It is none of them.</exception>
    public static T Choice<T>(string option, string text, params (string Name, T Value)[] choices)
    {
        foreach (var (name, value) in choices)
        {
            if (name.Equals(text.Trim(), StringComparison.OrdinalIgnoreCase))
            {
                return value;
            }
        }

        throw new InputException($"{option} must be {string.Join(" or ", choices.Select(c => c.Name))}, not {TextError.Quote(text)}");
    }

    /// <summary>One of a few numbers.</summary>
    /// <exception cref="InputException">It is none of them.</exception>
    public static int Choice(string option, string text, params int[] numbers) =>
        Choice(option, text, numbers.Select(n => (n.ToString(CultureInfo.InvariantCulture), n)).ToArray());

    /// <summary>A whole number between two bounds.</summary>
    /// <exception cref="InputException">It is not a number, or lies outside the bounds.</exception>
    public static int Whole(string option, string text, int least, int most) =>
        int.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out var number)
            && number >= least && number <= most
            ? number
            : throw new InputException($"{option} must be a whole number between {least} and {most}, not {TextError.Quote(text)}");

    /// <summary>A number between two bounds, exactly.</summary>
    /// <exception cref="InputException">It is not a number, or lies outside the bounds.</exception>
    public static Rational Number(string option, string text, Rational least, Rational most, string unit) =>
        Rational.TryParse(text, out var number, out _) && number >= least && number <= most
            ? number
            : throw new InputException($"{option} must be a number between {ToText(least)} and {ToText(most)} {unit}, not {TextError.Quote(text)}");

    /// <summary>A number as people type it, with all its digits: a decimal where that is exact, else a fraction.</summary>
    public static string ToText(Rational number)
    {
        var text = number.ToDouble().ToString("0.######", CultureInfo.InvariantCulture);
        return Rational.TryParse(text, out var read, out _) && read == number ? text : number.ToString();
    }

    /// <summary>A pattern; what looks like an exercise that is not there is named as one.</summary>
    /// <exception cref="InputException">The text is no pattern.</exception>
    public static Pattern Pattern(string option, string text)
    {
        var group = text.Trim().Split('-')[0];
        return !Warmup.Pattern.TryParse(text, out var pattern, out var error) && Exercises.All.Any(e => e.Group.Equals(group, StringComparison.OrdinalIgnoreCase))
            ? throw new InputException($"{option}: there is no exercise {TextError.Quote(text)}; 'warmup patterns --exercises' lists them")
            : pattern ?? throw Refusal(option, error!);
    }

    public static InputException Refusal(string option, TextError error) => new($"{option}, {error}");
}
