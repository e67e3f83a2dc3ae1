using NAudio.Midi;

namespace Warmup.Benchmarks;

/// <summary>The notes, tempo, meter and name of a score of the job as NAudio's events: a drill in quarters of four to a bar.</summary>
internal static class PlainNAudio
{
    private const int TicksPerQuarter = 480;
    private const int Channel = 1;
    private const int Velocity = 96;

    public static MidiEventCollection EventsOf(Score score)
    {
        var section = score.Sections[0];
        var events = new MidiEventCollection(1, TicksPerQuarter);
        var conductor = events.AddTrack();
        conductor.Add(new TextEvent(score.Title, MetaEventType.SequenceTrackName, 0));
        conductor.Add(new TempoEvent((int)(60_000_000 / section.Tempo).Floor(), 0));
        conductor.Add(new TimeSignatureEvent(0, 4, 2, 24, 8));
        var end = Ticks(section, section.LengthSteps);
        conductor.Add(new MetaEvent(MetaEventType.EndTrack, 0, end));
        var voice = events.AddTrack();
        foreach (ref readonly var note in section.Notes.AsSpan())
        {
            var on = new NoteOnEvent(Ticks(section, note.OnsetSteps), Channel, section.PitchOf(note).Midi, Velocity, (int)Ticks(section, note.LengthSteps));
            voice.Add(on);
            voice.Add(on.OffEvent!);
        }

        voice.Add(new MetaEvent(MetaEventType.EndTrack, 0, end));
        return events;
    }

    private static long Ticks(Section section, int steps) => (long)steps * TicksPerQuarter / section.Resolution;
}
