using System.Globalization;

namespace Warmup;

/// <summary>The tones of lines written and tuned on a tonic, and what goes with it: all of a score that depends on the tonic and the tuning.</summary>
internal sealed class TunedPitches
{
    private readonly Drill _drill;

    /// <summary>Writes and tunes the tones of lines as a drill wants them.</summary>
    /// <exception cref="PatternException">A note leaves MIDI's range.</exception>
    public TunedPitches(Drill drill, Palette palette)
    {
        _drill = drill;
        TonicName = Spelling.ChooseTonic(drill.Tonic, drill.Scale, out var isRespelled);
        Respelled = isRespelled
            ? new Finding(
                FindingCode.TonicRespelled,
                Severity.Note,
                $"{drill.Tonic.TypedName} would need triple accidentals in {drill.Scale.Name} and is written {TonicName}",
                "no change is needed")
            : null;
        var tones = palette.Tones;
        var pitches = new ScorePitch[tones.Length];
        var hz = drill.Tonic.Hz;
        for (var p = 0; p < pitches.Length; p++)
        {
            var (tone, line) = tones[p];
            if (drill.Tonic.Midi + tone.Semitones is < 0 or > 127)
            {
                throw OutsideMidi(tone, line);
            }

            pitches[p] = ScorePitch.Of(tone, drill.Tonic, hz, drill.Tuning, TonicName);
        }

        Pitches = ValueList.Adopt(drill.HasSimplerSpelling ? Array.ConvertAll(pitches, p => p with { Name = Spelling.Simpler(p.Name) }) : pitches);
        Drone = drill.HasDrone ? drill.DroneStyle.For(drill.Scale, drill.Tonic, drill.Tuning, TonicName) : null;
    }

    /// <summary>The written name of the tonic.</summary>
    public NoteName TonicName { get; }

    /// <summary>The remark where the name is not the one that was typed.</summary>
    public Finding? Respelled { get; }

    /// <summary>The pitches in the order of the palette.</summary>
    public ValueList<ScorePitch> Pitches { get; }

    public Drone? Drone { get; }

    /// <summary>Whether another drill writes and tunes the same tones in the same way.</summary>
    public bool Suit(Drill other) =>
        other.Tonic == _drill.Tonic && other.Tuning == _drill.Tuning && other.HasSimplerSpelling == _drill.HasSimplerSpelling
        && other.HasDrone == _drill.HasDrone && other.DroneStyle == _drill.DroneStyle && other.Scale == _drill.Scale;

    private PatternException OutsideMidi(ScaleTone tone, int line) => new(new Finding(
        FindingCode.OutsideMidi,
        Severity.Error,
        string.Create(
            CultureInfo.InvariantCulture, $"{tone} on the tonic {_drill.Tonic} would be MIDI note {_drill.Tonic.Midi + tone.Semitones}; it must lie from 0 to 127"),
        "choose another tonic or fewer octaves")
    { Place = new ScorePlace(1, line + 1) });
}
