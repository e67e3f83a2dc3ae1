namespace Warmup.Takes;

/// <summary>Sound that is read from its beginning to its end, once. Not safe to share between threads.</summary>
public abstract class SoundSource : IDisposable
{
    /// <summary>The lowest sample rate that is read, in Hz.</summary>
    public static int LowestRate => 8_000;

    /// <summary>The highest sample rate that is read, in Hz.</summary>
    public static int HighestRate => 192_000;

    /// <summary>The most channels that are read (the project's own bound).</summary>
    public static int MostChannels => 32;

    /// <summary>The longest recording that is read, in seconds: half an hour (the project's own bound).</summary>
    public static int LongestSeconds => 1_800;

    /// <summary>Makes a source.</summary>
    /// <param name="sampleRate">Samples a second in each channel, 8,000 to 192,000.</param>
    /// <param name="channels">The number of channels, 1 to 32.</param>
    /// <exception cref="SoundException">A value lies outside its range.</exception>
    protected SoundSource(int sampleRate, int channels)
    {
        SampleRate = sampleRate >= LowestRate && sampleRate <= HighestRate
            ? sampleRate
            : throw new SoundException($"the recording has {sampleRate} samples a second; {LowestRate} to {HighestRate} can be read");
        Channels = channels >= 1 && channels <= MostChannels
            ? channels
            : throw new SoundException($"the recording has {channels} channels; 1 to {MostChannels} can be read");
    }

    /// <summary>Samples a second in each channel.</summary>
    public int SampleRate { get; }

    /// <summary>The number of channels, 1 or more.</summary>
    public int Channels { get; }

    /// <summary>Sound that is in memory already, such as what a page recorded.</summary>
    /// <param name="samples">The samples of one channel, -1 to 1.</param>
    /// <param name="sampleRate">Samples a second, 8,000 to 192,000.</param>
    /// <exception cref="SoundException">The sample rate lies outside its range.</exception>
    public static SoundSource FromSamples(ReadOnlyMemory<float> samples, int sampleRate) => new MemorySource(samples, sampleRate);

    /// <summary>Reads on.</summary>
    /// <param name="buffer">Takes the samples, the channels one after the other at each time; its length is a multiple of the channels.</param>
    /// <returns>The number of samples read, a multiple of the channels; 0 at the end.</returns>
    /// <exception cref="SoundException">The recording is broken.</exception>
    public abstract int Read(Span<float> buffer);

    /// <summary>Closes what the sound is read from.</summary>
    public void Dispose()
    {
        Dispose(true);
        GC.SuppressFinalize(this);
    }

    /// <summary>Closes what the sound is read from.</summary>
    /// <param name="disposing">Whether it was asked for.</param>
    protected virtual void Dispose(bool disposing)
    {
    }

    private sealed class MemorySource(ReadOnlyMemory<float> samples, int sampleRate) : SoundSource(sampleRate, 1)
    {
        private int _at;

        public override int Read(Span<float> buffer)
        {
            var count = Math.Min(buffer.Length, samples.Length - _at);
            samples.Span.Slice(_at, count).CopyTo(buffer);
            _at += count;
            return count;
        }
    }
}
