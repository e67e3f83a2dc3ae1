using System.CommandLine;

namespace Warmup.Cli;

/// <summary>The options of a command in the groups in which help and manual show them.</summary>
internal static class OptionGroups
{
    private static readonly (string Title, string[] Names)[] All =
    [
        ("What is sung", ["--take", "--file", "--part", "--section", "--scale", "--scales", "--pattern", "--lines", "--add", "--difficulty", "--count", "--raised", "--tonic", "--to-scale", "--to-tonic", "--climb", "--cue", "--syllables", "--title", "--tuning", "--simpler-spelling", "--drone", "--drone-string"]),
        ("Whose voices", ["--lowest-highest", "--sustained", "--date", "--singers", "--alias", "--without", "--level", "--voices", "--history", "--on", "--form", "--measured", "--low", "--high", "--tones", "--plan-breaths", "--call-and-response"]),
        ("Time", ["--tempo", "--tala", "--speed", "--speeds", "--gati", "--delivery", "--fill", "--fill-by", "--breath", "--eduppu", "--repeat", "--end-on-first-beat", "--count-in"]),
        ("Days", ["--start", "--days", "--minutes", "--seed", "--no-repeat", "--least", "--rest", "--time", "--log", "--no-again", "--plan", "--day", "--sung", "--tick", "--absent", "--reached", "--week"]),
        ("Files", ["--out", "--formats", "--contour", "--chart", "--force"]),
        ("In the notation file", ["--clef", "--key", "--paper", "--staff", "--verse", "--second-voice", "--beat-part", "--drone-part", "--slur-lines", "--microtones"]),
        ("In the MIDI file", ["--midi-tuning", "--midi-text", "--click"]),
        ("Which scales", ["--find", "--show", "--holding", "--contains", "--equals", "--near", "--notes", "--parent", "--without-p", "--kind"]),
        ("Which patterns", ["--explain", "--exercises", "--table", "--size", "--words"]),
        ("Report", ["--json", "--cautions", "--help", "--version"]),
    ];

    /// <summary>The groups of a command that have options, in order; what no group names comes under "More".</summary>
    public static IEnumerable<(string Title, IReadOnlyList<Option> Options)> Of(Command command)
    {
        var rest = command.Options.Where(o => !o.Hidden).ToList();
        foreach (var (title, names) in All)
        {
            var found = names.Select(n => rest.Find(o => o.Name == n)).OfType<Option>().ToList();
            rest.RemoveAll(found.Contains);
            if (found.Count > 0)
            {
                yield return (title, found);
            }
        }

        if (rest.Count > 0)
        {
            yield return ("More", rest);
        }
    }

    /// <summary>How the option is typed: <c>--tempo TEMPO</c>.</summary>
    public static string Label(Option option) => option.Arity.MaximumNumberOfValues == 0 || option.ValueType == typeof(bool)
        ? option.Name
        : $"{option.Name} {(option.HelpName ?? option.Name.TrimStart('-')).ToUpperInvariant()}";

    /// <summary>What the option does, whether it must be there, and its default.</summary>
    public static string Describe(Option option)
    {
        var text = option.Description ?? string.Empty;
        if (option.Required)
        {
            return text + " Required.";
        }

        return option.ValueType != typeof(bool) && option.HasDefaultValue && option.GetDefaultValue() is { } value and not System.Collections.ICollection
            ? $"{text} Default: {value}."
            : text;
    }
}
