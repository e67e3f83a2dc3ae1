namespace Warmup.Takes;

/// <summary>What the sound is like every 10 ms: several pitches with their strength, and the level.</summary>
internal sealed class PitchTrack
{
    /// <summary>Frames a second; frame <c>f</c> is centred on <c>f / 100</c> s.</summary>
    public const int FramesASecond = 100;

    /// <summary>Candidates that are kept of each frame; those that a frame lacks have strength 0.</summary>
    public const int Candidates = 6;

    /// <summary>Levels of the low band that are kept of each frame.</summary>
    public const int LowASecond = 200;

    // Half a cycle of a vibrato of 5.5 Hz, and the most that a fast wide one moves in 10 ms.
    private const int HalfCycle = 9;
    private const float MostStep = 60;

    private PitchCandidate[] _candidates = new PitchCandidate[Candidates * 1024];
    private float[] _even = [];
    private float[] _levels = new float[1024];
    private float[] _rises = new float[1024];
    private float[] _low = new float[2048];

    /// <summary>The number of frames.</summary>
    public int Count { get; private set; }

    /// <summary>The number of levels of the low band.</summary>
    public int LowCount { get; private set; }

    /// <summary>The length of the recording in seconds.</summary>
    public double Seconds { get; internal set; }

    /// <summary>The share of samples at full scale.</summary>
    public double Clipped { get; internal set; }

    /// <summary>The candidates of a frame, the strongest first.</summary>
    public ReadOnlySpan<PitchCandidate> At(int frame) => _candidates.AsSpan(frame * Candidates, Candidates);

    /// <summary>The candidates' cents, each evened out along its own course over about a cycle of vibrato.</summary>
    public ReadOnlySpan<float> EvenAt(int frame) => _even.AsSpan(frame * Candidates, Candidates);

    /// <summary>The level of a frame in dB of full scale, of what lies between 60 and 5,000 Hz.</summary>
    public float Level(int frame) => _levels[frame];

    /// <summary>How far the harmonics of a frame's strongest pitch below 1 kHz rise above all that would sound if nobody sang, in dB; -60 where it has none there.</summary>
    public float Rise(int frame) => _rises[frame];

    /// <summary>The level below 1 kHz in dB of full scale, of 5 ms that begin at <c>i / 200</c> s: it tells where a voice begins.</summary>
    public float Low(int i) => _low[Math.Clamp(i, 0, LowCount - 1)];

    internal void Add(ReadOnlySpan<PitchCandidate> candidates, float level, float rise)
    {
        if (Count == _levels.Length)
        {
            Array.Resize(ref _levels, _levels.Length * 2);
            Array.Resize(ref _rises, _rises.Length * 2);
            Array.Resize(ref _candidates, _candidates.Length * 2);
        }

        candidates.CopyTo(_candidates.AsSpan(Count * Candidates));
        _rises[Count] = rise;
        _levels[Count++] = level;
    }

    /// <summary>Follows each candidate to both sides, as far as its course goes on without a jump, and takes the mean.</summary>
    internal void Follow()
    {
        _even = new float[Count * Candidates];
        for (var f = 0; f < Count; f++)
        {
            for (var k = 0; k < Candidates; k++)
            {
                var here = _candidates[(f * Candidates) + k];
                var (sum, weight) = (here.Cents, 1f);
                var (left, right) = (here.Cents, here.Cents);
                for (var n = 1; n <= HalfCycle && here.Strength > 0; n++)
                {
                    left = Next(f - n, left);
                    right = Next(f + n, right);
                    if (float.IsNaN(left) || float.IsNaN(right))
                    {
                        break;
                    }

                    sum += left + right;
                    weight += 2;
                }

                _even[(f * Candidates) + k] = sum / weight;
            }
        }
    }

    /// <summary>The candidate of a frame that continues a course; not a number where there is none.</summary>
    private float Next(int frame, float cents)
    {
        if (frame < 0 || frame >= Count)
        {
            return float.NaN;
        }

        var (best, off) = (float.NaN, MostStep);
        foreach (var candidate in At(frame))
        {
            var apart = Math.Abs(candidate.Cents - cents);
            if (candidate.Strength > 0 && apart < off)
            {
                (best, off) = (candidate.Cents, apart);
            }
        }

        return best;
    }

    /// <summary>Evens the low band's levels out over 15 ms, the period of the lowest voices.</summary>
    internal void EvenOut()
    {
        var (before, here) = (0.0, LowCount > 0 ? Math.Pow(10, _low[0] / 10) : 0);
        for (var i = 0; i < LowCount; i++)
        {
            var after = i + 1 < LowCount ? Math.Pow(10, _low[i + 1] / 10) : here;
            _low[i] = (float)(10 * Math.Log10(((i == 0 ? here : before) + here + after) / 3));
            (before, here) = (here, after);
        }
    }

    internal void AddLow(float level)
    {
        if (LowCount == _low.Length)
        {
            Array.Resize(ref _low, _low.Length * 2);
        }

        _low[LowCount++] = level;
    }
}
