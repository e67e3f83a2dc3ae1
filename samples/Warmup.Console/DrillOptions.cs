using System.CommandLine;
using System.Globalization;

namespace Warmup.Cli;

/// <summary>The options that describe a drill, shared by the commands that make one.</summary>
internal sealed class DrillOptions(bool needsTonic = true)
{
    private readonly Option<string> _scale = new("--scale")
    {
        Description = "Scale: a name (Mohanam), a parent's number (15) or the notes (\"S R2 G3 P D2 S'\").",
        Required = true,
    };

    private readonly Option<string> _pattern = new("--pattern")
    {
        Description = "Pattern: ladder, ladder.reversed, ladder.ends, ladder.up-down, combinations such as \"ladder + ladder.reversed\", or an exercise (alankara-7).",
        Required = true,
    };

    private readonly Option<string?> _tonic = new("--tonic")
    {
        Description = needsTonic
            ? "Tonic: a note (G3), a kattai (5.5) or a frequency (220Hz)."
            : $"Tonic of the table and the chart: a note (G3), a kattai (5.5) or a frequency (220Hz); the best one if left out.",
        Required = needsTonic,
    };

    private readonly Option<string> _tempo = new("--tempo")
    {
        Description = $"Tempo in aksharas a minute, {Tempo.Slowest} to {Tempo.Fastest}, or faster each time: \"60 to 90 by 5\".",
        Required = true,
    };

    private readonly TimeOptions _time = new();

    private readonly DroneOptions _drone = new();

    private readonly Option<string> _tuning = TuningOption.Create();

    private readonly Option<string> _syllables = new("--syllables")
    {
        Description = $"What is sung: {string.Join(" ", Syllables.All.Select(s => s.Name))}, or \"vowel: ee\".",
        DefaultValueFactory = _ => Syllables.SvaraLetters.Name,
    };

    private readonly Option<bool> _simpler = new("--simpler-spelling") { Description = "Write notes without double accidentals, and the white keys by their natural names." };

    private readonly Option<string?> _title = new("--title") { Description = "Title; scale and pattern, or the exercise's title, if left out." };

    // Where a command ranks all tonics, the one it begins from does not matter.
    private const string MiddleC = "C4";

    /// <summary>Whether a tonic was named.</summary>
    public bool HasTonic(ParseResult parsed) => parsed.GetValue(_tonic) is not null;

    public void AddTo(Command command)
    {
        foreach (var option in (Option[])[_scale, _pattern, _tonic, _tempo, _tuning, _syllables, _simpler, _title])
        {
            command.Add(option);
        }

        _time.AddTo(command);
        _drone.AddTo(command);
    }

    /// <summary>The drill that the options describe.</summary>
    /// <exception cref="InputException">An option's value cannot be used; the message names the option.</exception>
    public Drill Read(ParseResult parsed)
    {
        if (!Catalogue.Default.TryRead(parsed.GetValue(_scale)!, out var scale, out var error))
        {
            throw Refusal("--scale", error!);
        }

        var exercise = Repertoire.Find(parsed.GetValue(_pattern)!.Trim());
        var pattern = exercise?.Pattern;
        if (pattern is null && !Pattern.TryParse(parsed.GetValue(_pattern)!, out pattern, out error))
        {
            throw Refusal("--pattern", error!);
        }

        if (!Tonic.TryParse(parsed.GetValue(_tonic) ?? MiddleC, out var tonic, out error))
        {
            throw Refusal("--tonic", error!);
        }

        if (!Syllables.TryParse(parsed.GetValue(_syllables)!, out var syllables, out error))
        {
            throw Refusal("--syllables", error!);
        }

        var drill = new Drill
        {
            Scale = scale!,
            Pattern = pattern!,
            Tonic = tonic!,
            Tempo = ReadTempo(parsed.GetValue(_tempo)!),
            Tuning = TuningOption.Read(parsed.GetValue(_tuning)!),
            Syllables = syllables!,
            HasSimplerSpelling = parsed.GetValue(_simpler),
        };
        drill = _drone.Read(parsed, _time.Read(parsed, exercise is null ? drill : drill with { Meter = exercise.Meter }));
        return (parsed.GetValue(_title) ?? (exercise is null ? null : $"{scale!.Name}: {exercise.Title}")) is { } title ? Titled(drill, title) : drill;
    }

    public static T Choice<T>(string option, string text, params (string Name, T Value)[] choices)
    {
        foreach (var (name, value) in choices)
        {
            if (name.Equals(text.Trim(), StringComparison.OrdinalIgnoreCase))
            {
                return value;
            }
        }

        throw new InputException($"{option} must be {string.Join(" or ", choices.Select(c => c.Name))}, not '{text}'");
    }

    /// <summary>A whole number between two bounds.</summary>
    public static int Whole(string option, string text, int least, int most) =>
        int.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out var number)
            && number >= least && number <= most
            ? number
            : throw new InputException($"{option} must be a whole number between {least} and {most}, not '{text}'");

    private static TempoRamp ReadTempo(string text) => TempoRamp.TryParse(text, out var ramp, out var error) ? ramp : throw Refusal("--tempo", error);

    private static Drill Titled(Drill drill, string title)
    {
        try
        {
            return drill with { Title = title };
        }
        catch (ArgumentException refused)
        {
            throw new InputException($"--title: {refused.Message.Split(" (Parameter", 2)[0]}");
        }
    }

    public static InputException Refusal(string option, TextError error) => new($"{option}, {error}");
}
