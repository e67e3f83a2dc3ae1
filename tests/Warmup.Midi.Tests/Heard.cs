using NAudio.Midi;

namespace Warmup.Midi.Tests;

/// <summary>A note as an independent reader (NAudio.Midi, strict) finds it in the bytes.</summary>
/// <param name="Tick">The onset in ticks.</param>
/// <param name="Length">The length in ticks.</param>
/// <param name="Channel">The channel, counted from 1.</param>
/// <param name="Key">The MIDI note.</param>
/// <param name="Velocity">The velocity.</param>
/// <param name="Cents">The pitch in cents above MIDI note 0 at A4 = 440 Hz, from note, bend and bend range.</param>
public sealed record HeardNote(long Tick, int Length, int Channel, int Key, int Velocity, double Cents);

/// <summary>What an independent reader finds in a file.</summary>
public sealed class Heard
{
    private Heard(MidiFile file) => File = file;

    public MidiFile File { get; }

    public int TicksPerQuarter => File.DeltaTicksPerQuarterNote;

    public static Heard From(Score score, MidiOptions? options = null) => From(Files.Bytes(score, options));

    public static Heard From(byte[] bytes)
    {
        using var stream = new MemoryStream(bytes);
        return new Heard(new MidiFile(stream, strictChecking: true));
    }

    public IEnumerable<MidiEvent> Events => Enumerable.Range(0, File.Tracks).SelectMany(t => File.Events[t]);

    public string[] Texts(MetaEventType type) =>
        [.. Events.OfType<TextEvent>().Where(e => e.MetaEventType == type).Select(e => e.Text)];

    public HeardNote[] Voice => Notes(channel => channel == 1);

    public HeardNote[] Drone => Notes(channel => channel is not (1 or 10));

    public HeardNote[] Clicks => Notes(channel => channel == 10);

    /// <summary>The notes with the bend and the bend range that are in force on their channel when they begin.</summary>
    private HeardNote[] Notes(Func<int, bool> channel)
    {
        var notes = new List<HeardNote>();
        for (var t = 0; t < File.Tracks; t++)
        {
            var bend = Enumerable.Repeat(8192, 17).ToArray();
            var range = Enumerable.Repeat(2.0, 17).ToArray();
            var parameter = Enumerable.Repeat((Coarse: 127, Fine: 127), 17).ToArray();
            foreach (var e in File.Events[t])
            {
                switch (e)
                {
                    case PitchWheelChangeEvent wheel:
                        bend[e.Channel] = wheel.Pitch;
                        break;
                    case ControlChangeEvent { Controller: (MidiController)101 } control:
                        parameter[e.Channel].Coarse = control.ControllerValue;
                        break;
                    case ControlChangeEvent { Controller: (MidiController)100 } control:
                        parameter[e.Channel].Fine = control.ControllerValue;
                        break;
                    case ControlChangeEvent { Controller: (MidiController)6 } control when parameter[e.Channel] == (0, 0):
                        range[e.Channel] = control.ControllerValue;
                        break;
                    case NoteOnEvent { Velocity: > 0 } note when channel(e.Channel):
                        notes.Add(new HeardNote(
                            e.AbsoluteTime,
                            note.NoteLength,
                            e.Channel,
                            note.NoteNumber,
                            note.Velocity,
                            (100.0 * note.NoteNumber) + ((bend[e.Channel] - 8192) / 8192.0 * 100 * range[e.Channel])));
                        break;
                    default:
                        break;
                }
            }
        }

        return [.. notes.OrderBy(n => n.Tick)];
    }

    /// <summary>A frequency in cents above MIDI note 0 at A4 = 440 Hz.</summary>
    public static double Cents(double hz) => 6900 + (1200 * Math.Log2(hz / 440));
}
