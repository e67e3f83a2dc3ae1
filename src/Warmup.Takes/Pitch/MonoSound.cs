using NAudio.Dsp;

namespace Warmup.Takes;

/// <summary>
/// One channel of a recording at the rate of the analysis. Of several channels the louder is taken, never their sum: two that swing against
/// each other would cancel.
/// </summary>
internal sealed class MonoSound
{
    /// <summary>Samples a second: twice the highest partial that is looked at, with room for the filter.</summary>
    public const int Rate = 16_000;

    // Another channel must have twice the energy so far, so that equal channels are not exchanged to and fro.
    private const double LouderBy = 2;
    private const int BlocksASecond = 4;

    private readonly SoundSource _source;
    private readonly WdlResampler? _resampler;
    private readonly float[] _block;
    private readonly float[] _mono;
    private readonly double[] _energy;
    private float[] _out = [];
    private int _channel;
    private long _frames;
    private bool _flushed;

    public MonoSound(SoundSource source)
    {
        _source = source;
        var frames = source.SampleRate / BlocksASecond;
        _block = new float[frames * source.Channels];
        _mono = new float[frames];
        _energy = new double[source.Channels];
        if (source.SampleRate != Rate)
        {
            _resampler = new WdlResampler();
            _resampler.SetMode(true, 2, true, Math.Max(48, 48 * source.SampleRate / Rate), 32);
            _resampler.SetFilterParms();
            _resampler.SetFeedMode(true);
            _resampler.SetRates(source.SampleRate, Rate);
        }
    }

    /// <summary>The next samples, some thousands; none at the end.</summary>
    /// <exception cref="SoundException">The recording is broken, or longer than half an hour.</exception>
    public ReadOnlySpan<float> Next()
    {
        var filled = 0;
        while (filled < _block.Length && _source.Read(_block.AsSpan(filled)) is var count and > 0)
        {
            filled += count;
        }

        var frames = filled / _source.Channels;
        _frames += frames;
        if (_frames > (long)SoundSource.LongestSeconds * _source.SampleRate)
        {
            throw new SoundException($"the recording is longer than {SoundSource.LongestSeconds / 60} minutes; cut it into parts, such as with: ffmpeg -i FILE -t 1500 part.wav");
        }

        if (frames == 0)
        {
            return _flushed || _resampler is null ? [] : Flush();
        }

        TakeLouder(frames);
        return _resampler is null ? _mono.AsSpan(0, frames) : Resampled(_mono.AsSpan(0, frames));
    }

    private ReadOnlySpan<float> Flush()
    {
        // Silence after the end pushes the last samples through the filter.
        _flushed = true;
        var silence = new float[_source.SampleRate / 20];
        return Resampled(silence);
    }

    private void TakeLouder(int frames)
    {
        var channels = _source.Channels;
        for (var c = 0; c < channels; c++)
        {
            var sum = 0.0;
            for (var i = c; i < frames * channels; i += channels)
            {
                sum += _block[i] * (double)_block[i];
            }

            _energy[c] += sum;
        }

        for (var c = 0; c < channels; c++)
        {
            _channel = _energy[c] > LouderBy * _energy[_channel] ? c : _channel;
        }

        for (int i = 0, at = _channel; i < frames; i++, at += channels)
        {
            _mono[i] = _block[at];
        }
    }

    private ReadOnlySpan<float> Resampled(ReadOnlySpan<float> samples)
    {
        var most = (int)((long)samples.Length * Rate / _source.SampleRate) + 64;
        if (_out.Length < most)
        {
            _out = new float[most];
        }

#if NET9_0_OR_GREATER
        var needed = _resampler!.ResamplePrepare(samples.Length, 1, out Span<float> buffer);
        samples[..needed].CopyTo(buffer);
        var made = _resampler.ResampleOut(_out, needed, most, 1);
#else
        var needed = _resampler!.ResamplePrepare(samples.Length, 1, out var buffer, out var offset);
        samples[..needed].CopyTo(buffer.AsSpan(offset));
        var made = _resampler.ResampleOut(_out, 0, needed, most, 1);
#endif
        return _out.AsSpan(0, made);
    }
}
