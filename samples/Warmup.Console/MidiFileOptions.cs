using System.CommandLine;
using Warmup.Midi;

namespace Warmup.Cli;

/// <summary>The options that say what a MIDI file holds.</summary>
internal sealed class MidiFileOptions
{
    private readonly Option<string> _tuning = new("--midi-tuning")
    {
        Description = "In .mid, notes are tuned by pitch-bend, by tuning-standard messages (few players know them), or sound in equal steps only: equal-only.",
        DefaultValueFactory = _ => "pitch-bend",
    };

    private readonly Option<string> _text = new("--midi-text")
    {
        Description = "In .mid, text as ascii, as the standard asks, or as utf-8, which syllables in Indic scripts need.",
        DefaultValueFactory = _ => "ascii",
    };

    private readonly Option<string> _click = new("--click")
    {
        Description = "In .mid, the beat is clicked in the count-in, throughout, or not at all: none.",
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
        Tuning = DrillOptions.Choice(
            "--midi-tuning",
            parsed.GetValue(_tuning)!,
            ("pitch-bend", MidiTuning.PitchBend),
            ("tuning-standard", MidiTuning.TuningStandard),
            ("equal-only", MidiTuning.EqualOnly)),
        Text = DrillOptions.Choice("--midi-text", parsed.GetValue(_text)!, ("ascii", MidiTextEncoding.Ascii), ("utf-8", MidiTextEncoding.Utf8)),
        Click = DrillOptions.Choice(
            "--click", parsed.GetValue(_click)!, ("count-in", MidiClick.CountIn), ("throughout", MidiClick.Throughout), ("none", MidiClick.None)),
    };
}
