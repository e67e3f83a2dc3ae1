using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.Tests;

/// <summary>
/// Sources: scientific pitch notation (C4 is middle C, MIDI 60; the octave changes at C), ISO 16 (A4 = 440 Hz), and the table of
/// reference pitches, computed from them.
/// </summary>
public class NoteNameTests
{
    public static TheoryData<string, int, double> ReferencePitches =>
        [.. Tables.ReferencePitches.Select(r => new TheoryDataRow<string, int, double>(r["note"], r.Whole("midi"), r.Number("hz_et12_A440")))];

    [Theory]
    [MemberData(nameof(ReferencePitches))]
    public void Reference_pitches_have_their_midi_number_and_frequency(string note, int midi, double hz)
    {
        Assert.True(NoteName.TryParse(note, out var name, out _));
        Assert.Equal((note, midi), (name.ToString(), name.Midi));
        Assert.Equal(hz, Tonic.FromNote(name).Hz, 0.00005);
        Assert.Equal(hz, Tonic.Parse(note).Hz, 0.00005);
        Assert.Equal(midi, Tonic.FromHz(hz).Midi);
    }

    [Theory]
    [InlineData("B#3", 60)]
    [InlineData("C4", 60)]
    [InlineData("Cb4", 59)]
    [InlineData("B3", 59)]
    [InlineData("Dbb4", 60)]
    [InlineData("B##3", 61)]
    [InlineData("C-1", 0)]
    [InlineData("G9", 127)]
    [InlineData("E#4", 65)]
    [InlineData("Fb4", 64)]
    public void The_octave_changes_at_C_whatever_the_accidental(string text, int midi)
    {
        Assert.True(NoteName.TryParse(text, out var name, out _));
        Assert.Equal(midi, name.Midi);
        Assert.Equal(text, name.ToString());
    }

    [Theory]
    [InlineData("E♭4", "Eb4")]
    [InlineData("F♯3", "F#3")]
    [InlineData("Gx4", "G##4")]
    [InlineData("bb3", "Bb3")]
    [InlineData("c#4", "C#4")]
    [InlineData("abb2", "Abb2")]
    public void Usual_ways_of_writing_are_read(string text, string canonical)
    {
        Assert.True(NoteName.TryParse(text, out var name, out _));
        Assert.Equal(canonical, name.ToString());
    }

    [Theory]
    [InlineData("")]
    [InlineData("H4")]
    [InlineData("C")]
    [InlineData("4")]
    [InlineData("C####4")]
    [InlineData("Cbbbb4")]
    [InlineData("C#b4")]
    [InlineData("C11")]
    [InlineData("C-3")]
    [InlineData("C4 5")]
    [InlineData("C4.5")]
    [InlineData("C٤")]
    [InlineData("C99999999999999999999")]
    public void What_is_no_note_is_not_read(string text)
    {
        Assert.False(NoteName.TryParse(text, out var name, out _));
        Assert.Equal(default, name);
    }

    [Property]
    public Property What_is_printed_is_read_back() => Prop.ForAll(
        (from letter in Gen.Elements('A', 'B', 'C', 'D', 'E', 'F', 'G')
         from alteration in Gen.Choose(-2, 2)
         from octave in Gen.Choose(NoteName.LowestOctave, NoteName.HighestOctave)
         select new NoteName(letter, alteration, octave)).ToArbitrary(),
        name =>
        {
            Assert.True(NoteName.TryParse(name.ToString(), out var read, out _));
            Assert.Equal(name, read);
            Assert.Equal(name.GetHashCode(), read.GetHashCode());
            // White keys by plain counting on the keyboard.
            var white = "C.D.EF.G.A.B".IndexOf(name.Letter, StringComparison.Ordinal);
            Assert.Equal((12 * (name.Octave + 1)) + white + name.Alteration, name.Midi);
            Assert.Equal("CDEFGAB".IndexOf(name.Letter, StringComparison.Ordinal), name.LetterIndex);
        });

    [Fact]
    public void Each_key_has_its_usual_name()
    {
        string[] names = ["C", "C#", "D", "D#", "E", "F", "F#", "G", "G#", "A", "A#", "B"];
        for (var midi = 0; midi <= 127; midi++)
        {
            Assert.Equal($"{names[midi % 12]}{(midi / 12) - 1}", NoteName.FromMidi(midi).ToString());
            Assert.Equal(names[midi % 12], NoteName.FromMidi(midi).PitchClass());
            Assert.Equal(midi, NoteName.FromMidi(midi).Midi);
        }
    }

    [Fact]
    public void Notes_that_sound_alike_are_different_names()
    {
        Assert.NotEqual(new NoteName('C', 1, 4), new NoteName('D', -1, 4));
        Assert.Equal(new NoteName('C', 1, 4).Midi, new NoteName('D', -1, 4).Midi);
        Assert.Equal("C0", default(NoteName).ToString());
    }

    [Theory]
    [InlineData('H', 0, 4, "H")]
    [InlineData('C', 4, 4, "4")]
    [InlineData('C', 0, 11, "11")]
    [InlineData('C', 0, -3, "-3")]
    public void A_name_out_of_range_is_refused_with_its_value(char letter, int alteration, int octave, string value) =>
        Assert.Contains(value, Assert.Throws<ArgumentOutOfRangeException>(() => new NoteName(letter, alteration, octave)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData(-1)]
    [InlineData(128)]
    public void A_key_out_of_range_is_refused_with_the_range(int midi)
    {
        var message = Assert.Throws<ArgumentOutOfRangeException>(() => NoteName.FromMidi(midi)).Message;
        Assert.Contains("127", message, StringComparison.Ordinal);
        Assert.Contains(midi.ToString(System.Globalization.CultureInfo.InvariantCulture), message, StringComparison.Ordinal);
    }
}
