namespace Warmup.Midi.Tests;

/// <summary>The options' defaults are those that docs/midi.md states, and a description names what is written.</summary>
public class OptionsTests
{
    [Fact]
    public void The_defaults_are_those_documented()
    {
        var options = new MidiOptions();
        Assert.Equal((MidiTuning.PitchBend, MidiTextEncoding.Ascii, MidiClick.CountIn), (options.Tuning, options.Text, options.Click));
        Assert.Equal((true, true, true, true), (options.HasVoice, options.HasDrone, options.HasLyrics, options.HasMarkers));
        Assert.Equal((false, false), (options.IsSingleTrack, options.HasRunningStatus));
        Assert.Equal((54, 105, 21), (options.VoiceProgram, options.DroneProgram, options.HeldDroneProgram));
        Assert.Equal((90, 62), (options.VoiceVelocity, options.DroneVelocity));
        Assert.Equal((12, 8, 4), (options.AvartanaAccent, options.AngaAccent, options.AksharaAccent));

        // Plucked, the drone lies 8 dB below the voice at the usual volume, as it should; held only 1.5 dB, so that its volume is 6.5 dB lower:
        // 100 times ten to the power of -6.5 / 40 is 68.8.
        Assert.Equal(8, SoundBalance.DroneBelowVoice);
        Assert.Equal((100, 100, 69), (options.VoiceVolume, options.DroneVolume, options.HeldDroneVolume));
    }

    [Fact]
    public void A_description_names_what_is_written()
    {
        Assert.Equal("PitchBend, Ascii, a track for each part, voice, drone, click CountIn", new MidiOptions().ToString());
        var few = new MidiOptions { Tuning = MidiTuning.EqualOnly, Text = MidiTextEncoding.Utf8, IsSingleTrack = true, HasVoice = false, HasDrone = false, Click = MidiClick.None };
        Assert.Equal("EqualOnly, Utf8, one track, click None", few.ToString());
    }

    [Fact]
    public void Markers_can_be_left_out()
    {
        var tracks = RawFile.Of(Files.Drill().ToScore(), new MidiOptions { HasMarkers = false }).Tracks;
        Assert.DoesNotContain(tracks[0], e => e.IsMeta(0x06));
        Assert.Equal(35, tracks[1].Count(e => e.IsNoteOn));
    }
}
