namespace Warmup.Takes;

/// <summary>Follows the pitch of a recording from its beginning to its end; of the sound it holds no more than a frame, and of its spectra some seconds.</summary>
internal static class PitchTracker
{
    private const int Hop = MonoSound.Rate / PitchTrack.FramesASecond;
    private const int LowBlock = MonoSound.Rate / PitchTrack.LowASecond;

    /// <summary>Reads and analyses a recording.</summary>
    /// <exception cref="SoundException">The recording is broken, or longer than half an hour.</exception>
    public static PitchTrack Track(SoundSource source, CancellationToken cancellation)
    {
        var course = new Course();
        foreach (var part in new MonoSound(source).Read())
        {
            cancellation.ThrowIfCancellationRequested();
            course.Add(part.Span);
        }

        return course.End();
    }

    /// <summary>The track as it grows.</summary>
    private sealed class Course
    {
        private readonly PitchTrack _track = new();
        private readonly Harmonics _harmonics = new();
        private readonly Ground _ground = new(Harmonics.Powers);
        private readonly LowBand _low = new();

        // The first frame is centred on the first sample.
        private float[] _buffer = new float[Harmonics.Window * 32];
        private int _filled = Harmonics.Window / 2;
        private long _clipped;
        private long _samples;

        /// <summary>Goes on with the next samples.</summary>
        public void Add(ReadOnlySpan<float> next)
        {
            _samples += next.Length;
            if (_filled + next.Length > _buffer.Length)
            {
                Array.Resize(ref _buffer, _filled + next.Length);
            }

            next.CopyTo(_buffer.AsSpan(_filled));
            _filled += next.Length;
            foreach (var sample in next)
            {
                _clipped += Math.Abs(sample) >= 0.999f ? 1 : 0;
                _low.Add(sample, _track);
            }

            Frames();
        }

        public PitchTrack End()
        {
            // The last frames reach beyond the end.
            Array.Resize(ref _buffer, Math.Max(_buffer.Length, _filled + (Harmonics.Window / 2)));
            Array.Clear(_buffer, _filled, Harmonics.Window / 2);
            _filled += Harmonics.Window / 2;
            Frames();
            while (_ground.IsHolding)
            {
                Candidates();
            }

            _track.EvenOut();
            _track.Follow();
            _track.Seconds = _samples / (double)MonoSound.Rate;
            _track.Clipped = _samples == 0 ? 0 : _clipped / (double)_samples;
            return _track;
        }

        /// <summary>Weighs the pitches of the first frame of which is known what sounds all the time.</summary>
        private void Candidates()
        {
            var powers = _ground.Take(out var stays);
            _track.Add(_harmonics.Of(powers, stays), _harmonics.Level, _harmonics.Rise);
        }

        /// <summary>Transforms the frames that are whole, and moves what is left to the front.</summary>
        private void Frames()
        {
            var at = 0;
            for (; at + Harmonics.Window <= _filled; at += Hop)
            {
                _harmonics.Transformed(_buffer.AsSpan(at, Harmonics.Window), _ground.Add());
                while (_ground.IsReady)
                {
                    Candidates();
                }
            }

            _buffer.AsSpan(at, _filled - at).CopyTo(_buffer);
            _filled -= at;
        }
    }

    /// <summary>The level below 1 kHz, where voices are and hissing consonants are not.</summary>
    private sealed class LowBand
    {
        private const float Pass = 0.30f;
        private const float Block = 0.972f;
        private float _first;
        private float _second;
        private float _slow;
        private double _sum;
        private int _count;

        public void Add(float sample, PitchTrack track)
        {
            _first += Pass * (sample - _first);
            _second += Pass * (_first - _second);
            _slow = (Block * _slow) + ((1 - Block) * _second);
            var low = _second - _slow;
            _sum += low * low;
            if (++_count == LowBlock)
            {
                track.AddLow((float)(10 * Math.Log10((_sum / LowBlock) + 1e-12)));
                (_sum, _count) = (0, 0);
            }
        }
    }
}
