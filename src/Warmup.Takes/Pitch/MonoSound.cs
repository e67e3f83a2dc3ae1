using NAudio.Dsp;

namespace Warmup.Takes;

/// <summary>
/// The channels of a recording at the rate of the analysis, each for itself, never their sum: two that swing against each other would cancel.
/// Which of two is the louder is known at the end only: where a drone has one of them and the voice the other, the drone alone sounds first.
/// Of more than two, the one is taken that has been the loudest so far.
/// </summary>
internal sealed class MonoSound
{
    /// <summary>Samples a second: twice the highest partial that is looked at, with room for the filter.</summary>
    public const int Rate = 16_000;

    // Where only one of many is followed, another must have twice the energy so far, so that equal channels are not exchanged to and fro.
    private const double LouderBy = 2;
    private const int BlocksASecond = 4;

    // Channels are alike where all but a thousandth of what they hold is the same, whichever way up, and one is silent 40 dB below the other.
    private const double Alike = 0.999;
    private const double Silent = 1e-4;
    private const int MostLanes = 2;

    private readonly SoundSource _source;
    private readonly float[] _block;
    private readonly Lane[] _lanes;
    private readonly double[] _energy;
    private readonly bool[] _isSilent = [true, true];
    private readonly bool[] _wasSilent = new bool[2];
    private int _channel;
    private bool _isAlike = true;
    private bool _wasAlike;
    private long _frames;
    private bool _flushed;

    public MonoSound(SoundSource source)
    {
        _source = source;
        var frames = source.SampleRate / BlocksASecond;
        _block = new float[frames * source.Channels];
        _energy = new double[source.Channels];
        _lanes = [.. Enumerable.Range(0, source.Channels <= MostLanes ? source.Channels : 1).Select(_ => new Lane(source.SampleRate, frames))];
    }

    /// <summary>How many channels are followed.</summary>
    public int Lanes => _lanes.Length;

    /// <summary>The lane that is the loudest in all that was read; the first of equal ones.</summary>
    public int Loudest => _lanes.Length > 1 && _energy[1] > _energy[0] ? 1 : 0;

    /// <summary>Whether the second lane holds the same as the first in what was read last, and just before it, but for its loudness.</summary>
    public bool IsAlike => _isAlike && _wasAlike;

    /// <summary>How much louder the second lane is than the first where they are alike, in dB.</summary>
    public float Gain { get; private set; }

    /// <summary>Whether a lane holds next to nothing beside the other in what was read last, and just before it.</summary>
    public bool IsSilent(int lane) => _isSilent[lane] && _wasSilent[lane];

    /// <summary>The samples of a lane that were read last.</summary>
    public ReadOnlySpan<float> Of(int lane) => _lanes[lane].Samples;

    /// <summary>Reads the next samples of all lanes, some thousands each.</summary>
    /// <returns>Whether there were any.</returns>
    /// <exception cref="SoundException">The recording is broken, or longer than half an hour.</exception>
    public bool Read()
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
            if (_flushed || _source.SampleRate == Rate)
            {
                return false;
            }

            _flushed = true;
            Array.ForEach(_lanes, lane => lane.Flush());
            return true;
        }

        FindLoudest(frames);
        Compare(frames);
        for (var l = 0; l < _lanes.Length; l++)
        {
            _lanes[l].Take(_block.AsSpan(0, frames * _source.Channels), _lanes.Length > 1 ? l : _channel, _source.Channels);
        }

        return true;
    }

    private void FindLoudest(int frames)
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
    }

    /// <summary>Whether two channels are alike, so that one of them need not be followed.</summary>
    private void Compare(int frames)
    {
        if (_lanes.Length < 2)
        {
            return;
        }

        var (first, second, both) = (0.0, 0.0, 0.0);
        for (var i = 0; i < 2 * frames; i += 2)
        {
            first += _block[i] * (double)_block[i];
            second += _block[i + 1] * (double)_block[i + 1];
            both += _block[i] * (double)_block[i + 1];
        }

        (_wasSilent[0], _wasSilent[1], _wasAlike) = (_isSilent[0], _isSilent[1], _isAlike);
        _isSilent[0] = first < Silent * second;
        _isSilent[1] = second < Silent * first;
        _isAlike = both * both >= Alike * first * second && !_isSilent[0] && !_isSilent[1];
        Gain = first > 0 && second > 0 ? (float)(10 * Math.Log10(second / first)) : 0;
    }

    /// <summary>One channel on its way to the rate of the analysis.</summary>
    private sealed class Lane
    {
        private readonly int _sampleRate;
        private readonly WdlResampler? _resampler;
        private readonly float[] _mono;
        private float[] _out = [];
        private int _count;

        public Lane(int sampleRate, int frames)
        {
            (_sampleRate, _mono) = (sampleRate, new float[frames]);
            if (sampleRate != Rate)
            {
                _resampler = new WdlResampler();
                _resampler.SetMode(true, 2, true, Math.Max(48, 48 * sampleRate / Rate), 32);
                _resampler.SetFilterParms();
                _resampler.SetFeedMode(true);
                _resampler.SetRates(sampleRate, Rate);
            }
        }

        public ReadOnlySpan<float> Samples => _resampler is null ? _mono.AsSpan(0, _count) : _out.AsSpan(0, _count);

        public void Take(ReadOnlySpan<float> block, int channel, int channels)
        {
            var frames = block.Length / channels;
            for (int i = 0, at = channel; i < frames; i++, at += channels)
            {
                _mono[i] = block[at];
            }

            _count = frames;
            if (_resampler is not null)
            {
                Resample(_mono.AsSpan(0, frames));
            }
        }

        /// <summary>Silence after the end pushes the last samples through the filter.</summary>
        public void Flush() => Resample(new float[_sampleRate / 20]);

        private void Resample(ReadOnlySpan<float> samples)
        {
            var most = (int)((long)samples.Length * Rate / _sampleRate) + 64;
            if (_out.Length < most)
            {
                _out = new float[most];
            }

#if NET9_0_OR_GREATER
            var needed = _resampler!.ResamplePrepare(samples.Length, 1, out Span<float> buffer);
            samples[..needed].CopyTo(buffer);
            _count = _resampler.ResampleOut(_out, needed, most, 1);
#else
            var needed = _resampler!.ResamplePrepare(samples.Length, 1, out var buffer, out var offset);
            samples[..needed].CopyTo(buffer.AsSpan(offset));
            _count = _resampler.ResampleOut(_out, 0, needed, most, 1);
#endif
        }
    }
}
