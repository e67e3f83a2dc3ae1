namespace Warmup.Takes;

/// <summary>Follows the pitch of a recording from its beginning to its end; of the sound it holds no more than a frame.</summary>
internal static class PitchTracker
{
    private const int Hop = MonoSound.Rate / PitchTrack.FramesASecond;
    private const int LowBlock = MonoSound.Rate / PitchTrack.LowASecond;

    /// <summary>Reads and analyses a recording.</summary>
    /// <exception cref="SoundException">The recording is broken, or longer than half an hour.</exception>
    public static PitchTrack Track(SoundSource source, CancellationToken cancellation)
    {
        var sound = new MonoSound(source);
        var courses = Enumerable.Range(0, sound.Lanes).Select(_ => new Course()).ToArray();
        while (sound.Read())
        {
            cancellation.ThrowIfCancellationRequested();
            for (var l = 0; l < courses.Length; l++)
            {
                // What one channel holds need not be looked at again in the other; each goes its own way where they differ.
                courses[l].Add(sound.Of(l), l > 0 && sound.IsAlike ? courses[0] : null, sound.Gain, sound.IsSilent(l));
            }
        }

        return courses[sound.Loudest].End();
    }

    /// <summary>One channel's track as it grows.</summary>
    private sealed class Course
    {
        private const float Silence = -120;
        private static readonly PitchCandidate[] Nothing = new PitchCandidate[PitchTrack.Candidates];

        private readonly PitchTrack _track = new();
        private readonly Harmonics _harmonics = new();
        private readonly LowBand _low = new();

        // The first frame is centred on the first sample.
        private float[] _buffer = new float[Harmonics.Window * 32];
        private int _filled = Harmonics.Window / 2;
        private long _clipped;
        private long _samples;

        /// <summary>Goes on with the next samples.</summary>
        /// <param name="next">The samples.</param>
        /// <param name="same">The course that goes the same way, and has these samples already; none where this one goes its own.</param>
        /// <param name="gain">How much louder this one is than that, in dB.</param>
        /// <param name="isSilent">Whether there is nothing to look at.</param>
        public void Add(ReadOnlySpan<float> next, Course? same, float gain, bool isSilent)
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

            Frames(same, gain, isSilent);
        }

        public PitchTrack End()
        {
            // The last frames reach beyond the end.
            Array.Resize(ref _buffer, Math.Max(_buffer.Length, _filled + (Harmonics.Window / 2)));
            Array.Clear(_buffer, _filled, Harmonics.Window / 2);
            _filled += Harmonics.Window / 2;
            Frames(null, 0, false);
            _track.EvenOut();
            _track.Follow();
            _track.Seconds = _samples / (double)MonoSound.Rate;
            _track.Clipped = _samples == 0 ? 0 : _clipped / (double)_samples;
            return _track;
        }

        /// <summary>Analyses the frames that are whole, and moves what is left to the front.</summary>
        private void Frames(Course? same, float gain, bool isSilent)
        {
            var at = 0;
            for (; at + Harmonics.Window <= _filled; at += Hop)
            {
                if (isSilent)
                {
                    _track.Add(Nothing, Silence);
                }
                else if (same is not null && _track.Count < same._track.Count)
                {
                    _track.Add(same._track.At(_track.Count), same._track.Level(_track.Count) + gain);
                }
                else
                {
                    var found = _harmonics.Of(_buffer.AsSpan(at, Harmonics.Window));
                    _track.Add(found, _harmonics.Level);
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
