using System.CommandLine;

namespace Warmup.Cli;

/// <summary>The options that describe a drill, shared by the commands that make one.</summary>
internal sealed class DrillOptions(bool needsTonic = true, bool needsPattern = true)
{
    private readonly Option<string> _scale = new("--scale")
    {
        Description = "Scale: a name (Mohanam), the number of a parent (15) or the notes (\"S R2 G3 P D2 S'\").",
        Required = true,
    };

    private readonly Option<string> _pattern = new("--pattern")
    {
        Description = "Pattern: ladder, ladder.reversed, ladder.ends, ladder.up-down, combinations such as \"ladder + ladder.reversed\", or an exercise (alankara-7).",
        Required = true,
    };

    private readonly Option<string?> _tonic = new(TonicOption.Name)
    {
        Description = needsTonic ? $"Tonic: {TonicOption.Forms}." : $"Tonic of the table and the chart: {TonicOption.Forms}; the best one by default.",
        Required = needsTonic,
    };

    private readonly Option<string> _tempo = new("--tempo")
    {
        Description = $"Tempo in aksharas a minute, with a time signature in beats a minute, {Tempo.Slowest} to {Tempo.Fastest}, or a rising tempo: \"60 to 90 by 5\".",
        Required = true,
    };

    private readonly Option<string?> _lines = new("--lines") { Description = "Only these lines of the pattern, such as 1-5,7; all by default." };

    private readonly TimeOptions _time = new();

    private readonly DroneOptions _drone = new();

    private readonly Option<string> _tuning = TuningOption.Create();

    private readonly Option<string> _syllables = new("--syllables")
    {
        Description = $"What is sung: {string.Join(", ", Syllables.All.Select(s => s.Name))}, or \"vowel: ee\".",
        DefaultValueFactory = _ => Syllables.SvaraLetters.Name,
    };

    private readonly Option<bool> _simpler = new("--simpler-spelling") { Description = "Write no double accidentals, and write white keys by their natural names." };

    private readonly Option<string?> _title = new("--title") { Description = "Title; the scale and the pattern or the exercise by default." };

    // Where a command ranks all tonics, the one it begins from does not matter.
    private const string MiddleC = "C4";

    /// <summary>Whether a tonic was named.</summary>
    public bool HasTonic(ParseResult parsed) => parsed.GetValue(_tonic) is not null;

    /// <summary>The title that was asked for, or none.</summary>
    public string? Title(ParseResult parsed) => parsed.GetValue(_title);

    /// <summary>The pattern as it was typed: for an exercise its name, by which plans know it.</summary>
    public string PatternName(ParseResult parsed) => parsed.GetValue(_pattern)!.Trim();

    /// <summary>Whether a drone was named.</summary>
    public bool HasNamedDrone(ParseResult parsed) => _drone.IsNamed(parsed);

    public void AddTo(Command command)
    {
        foreach (var option in (Option[])[_scale, .. needsPattern ? (Option[])[_pattern, _lines] : [], _tonic, _tempo, _tuning, _syllables, _simpler, _title])
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
        var scale = OptionValue.Parsed<Scale>("--scale", parsed.GetValue(_scale)!, Catalogue.Default.TryRead);
        var exercise = needsPattern ? Repertoire.Find(parsed.GetValue(_pattern)!.Trim()) : null;
        var drill = new Drill
        {
            Scale = scale,
            Pattern = !needsPattern ? Pattern.Run : exercise?.Pattern ?? OptionValue.Pattern("--pattern", parsed.GetValue(_pattern)!),
            Tonic = TonicOption.Read(parsed.GetValue(_tonic) ?? MiddleC),
            Tempo = OptionValue.Parsed<TempoRamp>("--tempo", parsed.GetValue(_tempo)!, TempoRamp.TryParse),
            Tuning = TuningOption.Read(parsed.GetValue(_tuning)!),
            Syllables = OptionValue.Parsed<Syllables>("--syllables", parsed.GetValue(_syllables)!, Syllables.TryParse),
            HasSimplerSpelling = parsed.GetValue(_simpler),
        };
        drill = _drone.Read(parsed, _time.Read(parsed, exercise is null ? drill : drill with { Meter = exercise.Meter, Speeds = [exercise.Speed] }));
        drill = exercise is null ? drill : WithRemark(drill, exercise);
        drill = needsPattern && parsed.GetValue(_lines) is { } lines ? LineChoice.Of(drill, LineChoice.Read(lines)) : drill;
        return (parsed.GetValue(_title) ?? (exercise is null ? null : $"{scale.Name}: {exercise.Title}")) is { } title ? Titled(drill, title) : drill;
    }

    /// <summary>The options that make a change of the drill: they replace those of the command, or join them.</summary>
    public IReadOnlyList<string> ToOptions(Remedy remedy, ParseResult parsed)
    {
        var options = new OrderedOptions();
        foreach (var (name, value) in ToPairs(remedy, parsed))
        {
            options.Set(name, value);
        }

        return options.ToList();
    }

    private IEnumerable<(string Name, string? Value)> ToPairs(Remedy remedy, ParseResult parsed) => remedy switch
    {
        OtherTonic tonic => [(_tonic.Name, tonic.Text)],
        OtherTempo tempo => [(_tempo.Name, tempo.Tempo.ToString())],
        OtherScale scale => [(_scale.Name, scale.Scale.Name)],
        FewerLines fewer => [(_lines.Name, LineChoice.ToText(fewer.Lines, parsed.GetValue(_lines)))],
        PlannedBreaths => [(BreathOption.Name, null)],
        TwoRemedies two => ToPairs(two.First, parsed).Concat(ToPairs(two.Second, parsed)),
        _ => _time.ToPairs(remedy, parsed),
    };

    /// <summary>The drill with a remark for its sheets where the exercise does not come out even.</summary>
    private static Drill WithRemark(Drill drill, Exercise exercise)
    {
        if (!drill.TryToScore(out var score, out _) || score.Sections[0].UnevenEnd(exercise) is not { } uneven)
        {
            return drill;
        }

        var lines = drill.Expand();
        return drill with { Expansion = new Expansion(lines.Lines, [.. lines.Findings, uneven]) };
    }

    private static Drill Titled(Drill drill, string title)
    {
        try
        {
            return drill with { Title = title };
        }
        catch (ArgumentException)
        {
            throw new InputException($"--title must have at most {Drill.LongestTitle} characters, without control and bidirectional characters, not {TextError.Quote(title)}");
        }
    }
}
