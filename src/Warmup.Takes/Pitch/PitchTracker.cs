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
        var track = new PitchTrack();
        var sound = new MonoSound(source);
        var harmonics = new Harmonics();
        var low = new LowBand();
        // The first frame is centred on the first sample.
        var buffer = new float[Harmonics.Window * 32];
        var filled = Harmonics.Window / 2;
        var clipped = 0L;
        var samples = 0L;
        while (true)
        {
            var next = sound.Next();
            if (next.IsEmpty)
            {
                break;
            }

            cancellation.ThrowIfCancellationRequested();
            samples += next.Length;
            if (filled + next.Length > buffer.Length)
            {
                Array.Resize(ref buffer, filled + next.Length);
            }

            next.CopyTo(buffer.AsSpan(filled));
            filled += next.Length;
            foreach (var sample in next)
            {
                clipped += Math.Abs(sample) >= 0.999f ? 1 : 0;
                low.Add(sample, track);
            }

            filled = Frames(track, harmonics, buffer, filled);
        }

        // The last frames reach beyond the end.
        Array.Resize(ref buffer, Math.Max(buffer.Length, filled + (Harmonics.Window / 2)));
        Array.Clear(buffer, filled, Harmonics.Window / 2);
        Frames(track, harmonics, buffer, filled + (Harmonics.Window / 2));
        track.EvenOut();
        track.Follow();
        track.Seconds = samples / (double)MonoSound.Rate;
        track.Clipped = samples == 0 ? 0 : clipped / (double)samples;
        return track;
    }

    /// <summary>Analyses the frames that are whole, and moves what is left to the front.</summary>
    private static int Frames(PitchTrack track, Harmonics harmonics, float[] buffer, int filled)
    {
        var at = 0;
        for (; at + Harmonics.Window <= filled; at += Hop)
        {
            var found = harmonics.Of(buffer.AsSpan(at, Harmonics.Window));
            track.Add(found, harmonics.Level);
        }

        buffer.AsSpan(at, filled - at).CopyTo(buffer);
        return filled - at;
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
