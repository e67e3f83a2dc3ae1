using System.Buffers.Binary;

namespace Warmup.Reading.Tests;

/// <summary>MIDI files put together byte by byte from the Standard MIDI File specification.</summary>
public class MidiTests
{
    private static readonly byte[] End = [0, 0xFF, 0x2F, 0];

    [Fact]
    public void Running_status_and_a_note_on_of_no_velocity_are_read()
    {
        var music = Read([0, 0x90, 60, 90, 96, 60, 0, 0, 62, 90, 96, 62, 0, .. End]);
        Assert.Equal([new Rational(1), new Rational(1)], music.Sections[0].Lines.SelectMany(l => l.Notes).Select(n => n.Length));
        Assert.Empty(music.Remarks);
    }

    [Fact]
    public void Mended_things_are_said_with_their_byte()
    {
        var music = Read([0, 0xFF, 0x51, 3, 0, 0, 0, 0, 0x80, 70, 0, 0, 0x90, 60, 90, 96, 0x90, 64, 90]);
        Assert.All(music.Remarks, r => Assert.Equal((RemarkKind.Mended, PlaceKind.Byte), (r.Kind, r.Place.Kind)));
        Assert.Contains(music.Remarks, r => r.Message.Contains("tempo of 0", StringComparison.Ordinal));
        Assert.Contains(music.Remarks, r => r.Message.Contains("never began", StringComparison.Ordinal));
        Assert.Contains(music.Remarks, r => r.Message.Contains("no end", StringComparison.Ordinal));
        Assert.Equal(Tempo.Default, music.Sections[0].Tempo);
    }

    [Fact]
    public void Notes_that_never_end_end_with_their_track()
    {
        var music = Read([0, 0x90, 60, 90, 96, 0xFF, 0x2F, 0]);
        Assert.Contains(music.Remarks, r => r.Message.Contains("1 note never ends", StringComparison.Ordinal));
        Assert.Equal(1, music.Sections[0].NoteCount);
    }

    [Fact]
    public void A_gap_of_a_tick_is_closed_and_said_and_a_real_silence_stays()
    {
        var music = Read([0, 0x90, 60, 90, 95, 60, 0, 1, 62, 90, 48, 62, 0, 48, 64, 90, 95, 64, 0, 1, .. End[1..]]);
        Assert.Equal([new Rational(1), new Rational(1, 2), new Rational(1)], music.Sections[0].Lines.SelectMany(l => l.Notes).Select(n => n.Length));
        Assert.Equal(RemarkKind.Time, Assert.Single(music.Remarks).Kind);
    }

    /// <summary>Notes that are played an eighth short each, and a held one before a silence, as programs that detach notes save them: 84 of 96 ticks.</summary>
    [Fact]
    public void Notes_that_are_played_detached_have_their_written_lengths()
    {
        var music = Read([0, 0x90, 60, 90, 84, 60, 0, 12, 62, 90, 84, 62, 0, 12, 64, 90, 0x81, 0x28, 64, 0, 0x78, 60, 90, 84, 60, 0, 12, .. End[1..]]);
        Assert.Equal([new Rational(1), new Rational(1), new Rational(2), new Rational(1)], music.Sections[0].Lines.SelectMany(l => l.Notes).Select(n => n.Length));
        Assert.Equal(RemarkKind.Time, Assert.Single(music.Remarks).Kind);
    }

    [Fact]
    public void Notes_shorter_than_a_line_can_hold_follow_each_other_at_the_least_distance()
    {
        var music = MusicReader.Read(File([0, 0x90, 60, 90, 1, 60, 0, 0, 62, 90, 1, 62, 0, 0, 64, 90, 1, 64, 0, .. End], 0, 9_280));
        Assert.All(music.Sections[0].Lines.SelectMany(l => l.Notes), n => Assert.Equal(new Rational(1, 960), n.Length));
        Assert.Equal(3, music.Sections[0].NoteCount);
        Assert.Contains(music.Remarks, r => r.Kind == RemarkKind.Time);
    }

    [Fact]
    public void A_silence_after_a_very_long_note_stays()
    {
        // 22 quarter notes and one of silence, which is less than a twentieth of both.
        var music = Read([0, 0x90, 60, 90, 0x90, 0x40, 60, 0, 96, 62, 90, 96, 62, 0, .. End]);
        Assert.Equal((new Rational(22), new Rational(1)), (music.Sections[0].Lines[0].Notes[0].Length, music.Sections[0].Lines[0].Notes[0].Rest));
    }

    [Fact]
    public void Short_notes_with_silences_of_the_music_stay_short()
    {
        var music = Read([0, 0x90, 60, 90, 48, 60, 0, 48, 62, 90, 48, 62, 0, 48, 64, 90, 48, 64, 0, 48, .. End[1..]]);
        Assert.All(music.Sections[0].Lines.SelectMany(l => l.Notes), n => Assert.Equal(new Rational(1, 2), n.Length));
    }

    [Fact]
    public void A_gap_of_a_tick_before_a_silence_is_closed_too()
    {
        var music = Read([0, 0x90, 60, 90, 95, 60, 0, 97, 62, 90, 95, 62, 0, 1, .. End[1..]]);
        Assert.Equal([new Rational(1), new Rational(1)], music.Sections[0].Lines.SelectMany(l => l.Notes).Select(n => n.Length));
    }

    [Theory]
    [InlineData(0xFD, 0, "Eb")]
    [InlineData(2, 0, "D")]
    [InlineData(0xFF, 1, "D")]
    public void A_key_signature_of_flats_or_sharps_speaks_for_its_tonic(int fifths, int mode, string tonic)
    {
        // Three flats are E flat major, two sharps D major, one flat and minor D minor (Standard MIDI File specification: sf, mi).
        var music = Read([0, 0xFF, 0x59, 2, (byte)fifths, (byte)mode, 0, 0x90, 57, 90, 96, 57, 0, .. End]);
        Assert.Contains(music.Sections[0].Proposals, p => p.Tonic.Midi % 12 == NoteName.Parse(tonic + "4").Midi % 12 && p.Reasons.Any(r => r.StartsWith("the key signature", StringComparison.Ordinal)));
    }

    [Fact]
    public void Of_a_chord_the_highest_note_stays()
    {
        var music = Read([0, 0x90, 60, 90, 0, 64, 90, 0, 67, 90, 96, 60, 0, 0, 64, 0, 0, 67, 0, .. End]);
        Assert.Equal(RemarkKind.Chord, Assert.Single(music.Remarks).Kind);
        var note = Assert.Single(music.Sections[0].Lines[0].Notes);
        Assert.Equal(67, music.Sections[0].Tonic.Midi + note.Tone.Semitones);
    }

    [Theory]
    [InlineData(new byte[] { 0, 60, 90 })]
    [InlineData(new byte[] { 0, 0xF0, 1, 0xF7, 0, 60, 90 })]
    [InlineData(new byte[] { 0, 0xFF, 0x01, 0, 0, 60, 90 })]
    [InlineData(new byte[] { 0, 0x90, 0x90, 60 })]
    [InlineData(new byte[] { 0xFF, 0xFF, 0xFF, 0xFF, 0x7F, 0x90, 60, 90 })]
    [InlineData(new byte[] { 0, 0xFF, 0x01, 0xFF, 0x7F })]
    [InlineData(new byte[] { 0, 0xF4 })]
    [InlineData(new byte[] { 0, 0x90, 60 })]
    public void Tricks_with_running_status_and_lengths_are_errors_with_their_byte(byte[] track)
    {
        var fault = Assert.Throws<ReadingException>(() => Read(track));
        Assert.Equal(PlaceKind.Byte, fault.Place.Kind);
        Assert.InRange(fault.Place.Number, 22, 22 + track.Length);
    }

    [Theory]
    [InlineData(2, 96)]
    [InlineData(0, 0)]
    [InlineData(0, 0xE728)]
    public void Formats_and_divisions_that_have_no_beats_are_refused(int format, int division) =>
        Assert.Throws<ReadingException>(() => MusicReader.Read(File([0, 0x90, 60, 90, 96, 60, 0, .. End], format, division)));

    [Fact]
    public void Every_beginning_of_a_file_is_read_or_refused()
    {
        var whole = File([0, 0xFF, 0x58, 4, 3, 2, 24, 8, 0, 0xFF, 0x05, 2, (byte)'S', (byte)' ', 0, 0x90, 60, 90, 96, 60, 0, .. End], 0, 96);
        for (var length = 0; length < whole.Length; length++)
        {
            try
            {
                Assert.NotEmpty(MusicReader.Read(whole.AsMemory(0, length)).Sections);
            }
            catch (ReadingException)
            {
                // A file that is cut off may be refused.
            }
        }
    }

    private static ReadMusic Read(byte[] track) => MusicReader.Read(File(track, 0, 96));

    private static byte[] File(byte[] track, int format, int division)
    {
        var file = new byte[22 + track.Length];
        "MThd"u8.CopyTo(file);
        BinaryPrimitives.WriteInt32BigEndian(file.AsSpan(4), 6);
        BinaryPrimitives.WriteInt16BigEndian(file.AsSpan(8), (short)format);
        BinaryPrimitives.WriteInt16BigEndian(file.AsSpan(10), 1);
        BinaryPrimitives.WriteUInt16BigEndian(file.AsSpan(12), (ushort)division);
        "MTrk"u8.CopyTo(file.AsSpan(14));
        BinaryPrimitives.WriteInt32BigEndian(file.AsSpan(18), track.Length);
        track.CopyTo(file, 22);
        return file;
    }
}
