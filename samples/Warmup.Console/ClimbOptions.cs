using System.CommandLine;

namespace Warmup.Cli;

/// <summary>The options of a semitone climb.</summary>
internal sealed class ClimbOptions
{
    private readonly Option<string?> _climb = new("--climb")
    {
        Description = $"Sing the drill again a semitone higher each time, so many semitones up and back: 1 to {Climb.MostSemitones}. Without a drone, which would sound against it.",
    };

    private readonly Option<string?> _cue = new("--cue")
    {
        Description = "With --climb, what is heard on each new tonic: note (the tonic), chord (its triad, note by note) or none; note by default.",
    };

    public void AddTo(Command command)
    {
        command.Add(_climb);
        command.Add(_cue);
    }

    /// <summary>Whether the drill climbs.</summary>
    public bool IsWanted(ParseResult parsed) => parsed.GetValue(_climb) is not null;

    /// <summary>The score of a drill, or of its climb.</summary>
    /// <exception cref="InputException">An option's value cannot be used; the message names the option.</exception>
    public Score ToScore(ParseResult parsed, DrillOptions options, Drill drill, CancellationToken cancellation) =>
        Read(parsed, options, drill) is { } climb ? climb.ToScore(cancellation) : drill.ToScore(cancellation);

    /// <summary>The climb of a drill; <see langword="null"/> where it does not climb.</summary>
    /// <exception cref="InputException">An option's value cannot be used; the message names the option.</exception>
    public Climb? Read(ParseResult parsed, DrillOptions options, Drill drill)
    {
        if (parsed.GetValue(_climb) is not { } semitones)
        {
            return parsed.GetValue(_cue) is null ? null : throw new InputException("--cue belongs to a climb; add --climb 5");
        }

        if (drill.HasDrone && options.HasNamedDrone(parsed))
        {
            throw new InputException("--climb moves the tonic, and a drone would sound against it; leave --drone out");
        }

        var climb = new Climb
        {
            Drill = drill,
            Semitones = OptionValue.Whole("--climb", semitones, 1, Climb.MostSemitones),
            Cue = OptionValue.Choice("--cue", parsed.GetValue(_cue) ?? "note", ("note", Climb.TonicNote), ("chord", Climb.BrokenChord), ("none", null)),
        };
        return drill.Tonic.Midi + climb.Semitones <= Tonic.HighestMidi
            ? climb
            : throw new InputException($"--climb {climb.Semitones} from {drill.Tonic} would go beyond C7, the highest tonic; climb less, or begin lower");
    }
}
