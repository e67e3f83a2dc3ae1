using System.CommandLine;
using Warmup.Midi;

namespace Warmup.Cli;

/// <summary>The options that say what a MIDI file holds.</summary>
internal sealed class MidiFileOptions
{
    private readonly Option<string> _tuning = new("--midi-tuning")
    {
        Description = "How a .mid file is tuned: pitch-bend, tuning-standard (messages that few players know) or equal-only (equal steps).",
        DefaultValueFactory = _ => "pitch-bend",
    };

    private readonly Option<string> _text = new("--midi-text")
    {
        Description = "How text is written in a .mid file: ascii, as the standard says, or utf-8, which Indic scripts need.",
        DefaultValueFactory = _ => "ascii",
    };

    private readonly Option<string> _click = new("--click")
    {
        Description = "Where the beat clicks in a .mid file: count-in, throughout or none.",
        DefaultValueFactory = _ => "count-in",
    };

    public void AddTo(Command command)
    {
        command.Add(_tuning);
        command.Add(_text);
        command.Add(_click);
    }

    /// <exception cref="InputException">An option's value cannot be used; the message names the option.</exception>
    public MidiOptions Read(ParseResult parsed) => new()
    {
        Tuning = OptionValue.Choice(
            "--midi-tuning",
            parsed.GetValue(_tuning)!,
            ("pitch-bend", MidiTuning.PitchBend),
            ("tuning-standard", MidiTuning.TuningStandard),
            ("equal-only", MidiTuning.EqualOnly)),
        Text = OptionValue.Choice("--midi-text", parsed.GetValue(_text)!, ("ascii", MidiTextEncoding.Ascii), ("utf-8", MidiTextEncoding.Utf8)),
        Click = OptionValue.Choice(
            "--click", parsed.GetValue(_click)!, ("count-in", MidiClick.CountIn), ("throughout", MidiClick.Throughout), ("none", MidiClick.None)),
    };
}
