using System.Globalization;
using System.Text;

namespace Warmup.Midi.Tests;

/// <summary>
/// Writes a file the plain way: all events in lists, sorted, then byte by byte, from nothing but the public score and the Standard MIDI
/// Files specification.
/// </summary>
/// <remarks>
/// It knows the format's default options, one section in a meter of quarter notes with one tempo and without a count-in, syllables in
/// ASCII, and pitches less than two semitones from their written notes. What is the project's own (programs, velocities, accents) is
/// written down once more here.
/// </remarks>
internal static class PlainMidi
{
    public static byte[] Write(Score score)
    {
        var section = score.Sections[0];
        long division = 480;
        while (division % section.Resolution != 0)
        {
            division += 480;
        }

        var end = section.LengthSteps * (division / section.Resolution);
        List<List<Event>> tracks = [ConductorTrack(score, division), VoiceTrack(section, division / section.Resolution)];
        if (score.Drone is { } drone)
        {
            tracks.Add(DroneTrack(drone, section, division));
        }

        List<byte> file = [.. "MThd"u8, 0, 0, 0, 6, 0, 1, 0, (byte)tracks.Count, .. Big(division, 2)];
        foreach (var track in tracks)
        {
            List<byte> events = [];
            var at = 0L;
            foreach (var e in track.OrderBy(e => e.Tick).ThenBy(e => e.Order).Append(new Event(end, 0, [0xFF, 0x2F, 0])))
            {
                events.AddRange(Quantity(e.Tick - at));
                events.AddRange(e.Bytes);
                at = e.Tick;
            }

            file.AddRange("MTrk"u8);
            file.AddRange(Big(events.Count, 4));
            file.AddRange(events);
        }

        return [.. file];
    }

    private static List<Event> ConductorTrack(Score score, long division)
    {
        var section = score.Sections[0];
        var tempo = ((60_000_000 / section.Tempo) + new Rational(1, 2)).Floor();
        List<Event> events =
        [
            new(0, 0, Meta(3, score.Title)),
            new(0, 0, [0xFF, 0x51, 3, .. Big(tempo, 3)]),
            new(0, 0, [0xFF, 0x59, 2, 0, 0]),

            // Quarter notes, 24 clocks to a click, 8 thirty-seconds to a quarter.
            new(0, 0, [0xFF, 0x58, 4, (byte)section.Meter.Beats, 2, 24, 8]),
        ];
        for (var l = 0; l < section.Lines.Count; l++)
        {
            events.Add(new Event((section.Lines[l].Onset * division).Numerator, 0, Meta(6, string.Create(CultureInfo.InvariantCulture, $"Line {l + 1}"))));
        }

        return events;
    }

    private static List<Event> VoiceTrack(Section section, long step)
    {
        List<Event> events = [new(0, Order.Setup, Meta(3, "Voice")), .. Channel(0, 54, 100)];
        var bent = -1;
        for (var n = 0; n < section.Notes.Count; n++)
        {
            var note = section.Notes[n];
            var pitch = section.PitchOf(note);
            var on = note.OnsetSteps * step;
            var bend = Bend(pitch);
            if (bend != bent)
            {
                events.Add(new Event(on, Order.Tuning, [0xE0, (byte)(bend & 127), (byte)(bend >> 7)]));
                bent = bend;
            }

            var endsLine = n + 1 == section.Notes.Count || section.Notes[n + 1].LineIndex != note.LineIndex;
            events.Add(new Event(on, Order.Lyric, Meta(5, section.SyllableOf(note) + (endsLine ? " \r" : " "))));
            events.Add(new Event(on, Order.On, [0x90, (byte)pitch.Midi, (byte)(90 + Accent(section, note))]));
            events.Add(new Event(note.EndSteps * step, Order.Off, [0x80, (byte)pitch.Midi, 64]));
        }

        return events;
    }

    private static int Accent(Section section, ScoreNote note)
    {
        if (!note.Onset.IsInteger)
        {
            return 0;
        }

        var akshara = note.Onset.Numerator % section.Meter.Beats;
        var anga = 0;
        foreach (var group in section.Meter.Groups)
        {
            if (akshara == anga)
            {
                return anga == 0 ? 12 : 8;
            }

            anga += group;
        }

        return 4;
    }

    private static List<Event> DroneTrack(Drone drone, Section section, long division)
    {
        // A string shares a channel unless the channel is bent otherwise or has its key; channel 10 is for percussion.
        var channels = new List<(int Channel, ScorePitch Pitch)>();
        foreach (var s in drone.Strings)
        {
            var channel = Enumerable.Range(1, 15).First(c => c != 9
                && channels.TrueForAll(o => o.Channel != c || (o.Pitch.Midi != s.Midi && Bend(o.Pitch) == Bend(s))));
            channels.Add((channel, s));
        }

        List<Event> events = [new(0, Order.Setup, Meta(3, "Drone"))];
        foreach (var group in channels.GroupBy(c => c.Channel).OrderBy(g => g.Key))
        {
            var bend = Bend(group.First().Pitch);
            events.AddRange(Channel(group.Key, 105, 100));
            events.Add(new Event(0, Order.Setup, [(byte)(0xE0 | group.Key), (byte)(bend & 127), (byte)(bend >> 7)]));
        }

        foreach (var stroke in drone.Strokes(section.Seconds))
        {
            var (on, off) = (Tick(stroke.Onset), Tick(stroke.Onset + stroke.Length));
            if (off > on)
            {
                var (channel, pitch) = channels[stroke.StringIndex];
                events.Add(new Event(on, Order.On, [(byte)(0x90 | channel), (byte)pitch.Midi, 62]));
                events.Add(new Event(off, Order.Off + stroke.StringIndex, [(byte)(0x80 | channel), (byte)pitch.Midi, 64]));
            }
        }

        return events;

        long Tick(Rational seconds) => ((seconds * section.Tempo * division / 60) + new Rational(1, 2)).Floor();
    }

    /// <summary>The program, the volume, and a bend's range of two semitones, which is then closed.</summary>
    private static IEnumerable<Event> Channel(int channel, int program, int volume)
    {
        yield return new(0, Order.Setup, [(byte)(0xC0 | channel), (byte)(program - 1)]);
        foreach (var (number, value) in ((int, int)[])[(7, volume), (101, 0), (100, 0), (6, 2), (38, 0), (101, 127), (100, 127)])
        {
            yield return new(0, Order.Setup, [(byte)(0xB0 | channel), (byte)number, (byte)value]);
        }
    }

    /// <summary>8192 steps are two semitones.</summary>
    private static int Bend(ScorePitch pitch) => 8192 + (int)Math.Round(pitch.OffsetCents * 8192 / 200, MidpointRounding.AwayFromZero);

    /// <summary>A number, its highest byte first.</summary>
    private static IEnumerable<byte> Big(long value, int bytes) => Enumerable.Range(1, bytes).Select(i => (byte)((value >> (8 * (bytes - i))) & 255));

    private static byte[] Meta(byte type, string text) => [0xFF, type, .. Quantity(text.Length), .. Encoding.ASCII.GetBytes(text)];

    private static byte[] Quantity(long value)
    {
        Stack<byte> bytes = new([(byte)(value & 127)]);
        while ((value >>= 7) > 0)
        {
            bytes.Push((byte)(128 | (value & 127)));
        }

        return [.. bytes];
    }

    /// <summary>An event; those of one tick stand in the order of what they are, and otherwise as they were added.</summary>
    private sealed record Event(long Tick, int Order, byte[] Bytes);

    private static class Order
    {
        // The strings of a drone that end together end in their order.
        public const int Off = 0;
        public const int Setup = Off + 32;
        public const int Tuning = Setup + 1;
        public const int Lyric = Tuning + 1;
        public const int On = Lyric + 1;
    }
}
