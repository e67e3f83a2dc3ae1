namespace Warmup.Takes;

/// <summary>
/// One channel of a recording at the rate of the analysis, never the sum of several: two that swing against each other would cancel. It is the
/// loudest of the recording's beginning: of a minute where there are two channels, so that a drone in one of them may sound first and alone.
/// </summary>
/// <param name="source">The recording.</param>
internal sealed class MonoSound(SoundSource source)
{
    /// <summary>Samples a second: twice the highest partial that is looked at, with room for the filter.</summary>
    public const int Rate = 16_000;

    private const int BlocksASecond = 4;

    // What is held of all channels until one is taken: 8 MB.
    private const int MostHeld = 2 * 60 * Rate;

    private readonly int _channels = source.Channels;
    private readonly float[] _block = new float[source.SampleRate / BlocksASecond * source.Channels];
    private readonly double[] _energy = new double[source.Channels];
    private long _frames;

    /// <summary>The samples from the beginning to the end, some thousands at a time; each part is valid until the next.</summary>
    /// <exception cref="SoundException">The recording is broken, or longer than half an hour.</exception>
    public IEnumerable<ReadOnlyMemory<float>> Read()
    {
        var resamplers = Enumerable.Range(0, _channels).Select(_ => new Resampler(source.SampleRate, Rate)).ToArray();
        var channel = 0;
        if (_channels > 1)
        {
            var held = Array.ConvertAll(resamplers, _ => new List<float>());
            while (held[0].Count < MostHeld / _channels && ReadBlock() is var frames and > 0)
            {
                for (var c = 0; c < _channels; c++)
                {
                    held[c].AddRange(resamplers[c].Next(Channel(c, frames)).Span);
                }
            }

            channel = Loudest();
            foreach (var part in held[channel].Chunk(Rate / BlocksASecond))
            {
                yield return part;
            }
        }

        while (ReadBlock() is var frames and > 0)
        {
            yield return resamplers[channel].Next(Channel(channel, frames));
        }

        yield return resamplers[channel].End();
    }

    /// <summary>Reads on in all channels.</summary>
    /// <returns>How many samples of each were read; 0 at the end.</returns>
    private int ReadBlock()
    {
        var filled = 0;
        while (filled < _block.Length && source.Read(_block.AsSpan(filled)) is var count and > 0)
        {
            filled += count;
        }

        var frames = filled / _channels;
        _frames += frames;
        return _frames <= (long)SoundSource.LongestSeconds * source.SampleRate
            ? frames
            : throw new SoundException($"the recording is longer than {SoundSource.LongestSeconds / 60} minutes; cut it into parts, such as with: ffmpeg -i FILE -t 1500 part.wav");
    }

    /// <summary>What was read last of one channel.</summary>
    private float[] Channel(int channel, int frames)
    {
        var samples = new float[frames];
        for (int i = 0, at = channel; i < frames; i++, at += _channels)
        {
            samples[i] = _block[at];
            _energy[channel] += samples[i] * (double)samples[i];
        }

        return samples;
    }

    /// <summary>The channel with the most energy so far; the first of equal ones.</summary>
    private int Loudest()
    {
        var loudest = 0;
        for (var c = 1; c < _channels; c++)
        {
            loudest = _energy[c] > _energy[loudest] ? c : loudest;
        }

        return loudest;
    }
}
