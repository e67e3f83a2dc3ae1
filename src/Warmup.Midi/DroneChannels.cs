using System.Globalization;

namespace Warmup.Midi;

/// <summary>
/// The channels of a drone. Strings share a channel unless they are bent differently, or are the same key: then one would cut off the other.
/// </summary>
internal sealed class DroneChannels
{
    /// <summary>The channel of the voice; the drone has the channels from the next one on.</summary>
    public const int VoiceChannel = 0;

    /// <summary>The channel of percussion, the tenth; the drone skips it.</summary>
    public const int PercussionChannel = 9;

    private const int Channels = 16;

    public DroneChannels(Drone drone, MidiTuning tuning)
    {
        Drone = drone;
        Keys = new KeyTuning[drone.Strings.Count];
        ChannelOf = new int[Keys.Length];
        for (var i = 0; i < Keys.Length; i++)
        {
            Keys[i] = KeyTuning.Of(drone.Strings[i], tuning)
                ?? throw new ExportException(string.Create(
                    CultureInfo.InvariantCulture, $"drone string {i + 1}: {MidiPlan.OutOfKeys(drone.Strings[i])}"));
            ChannelOf[i] = FirstFree(i);
            LastChannel = Math.Max(LastChannel, ChannelOf[i]);
        }
    }

    public Drone Drone { get; }

    /// <summary>The key and the tuning of each string.</summary>
    public KeyTuning[] Keys { get; }

    /// <summary>The channel of each string, counted from 0.</summary>
    public int[] ChannelOf { get; }

    /// <summary>The highest channel in use.</summary>
    public int LastChannel { get; }

    private int FirstFree(int index)
    {
        for (var channel = VoiceChannel + 1; channel < Channels; channel++)
        {
            if (channel != PercussionChannel && Fits(index, channel))
            {
                return channel;
            }
        }

        throw new ExportException(string.Create(
            CultureInfo.InvariantCulture, $"drone string {index + 1} would need a channel of its own; there are {Channels - 2} beside the voice and the percussion"));
    }

    private bool Fits(int index, int channel)
    {
        for (var i = 0; i < index; i++)
        {
            if (ChannelOf[i] == channel && (Keys[i].Key == Keys[index].Key || Keys[i].Bend != Keys[index].Bend))
            {
                return false;
            }
        }

        return true;
    }
}
