namespace Warmup.Takes;

/// <summary>What in a take's level parts notes and lines, at each place where a note may begin: dips, and pauses before it.</summary>
internal sealed class TakeCues
{
    // A consonant stops the voice for a tenth of a second; breath takes a quarter and more.
    private const int LongestConsonant = 14;
    private const int ShortestBreath = 24;

    // A note may begin a little before or after the voice does.
    private const int Around = 8;

    private readonly float[] _dips;
    private readonly float[] _pauses;
    private readonly float[] _pausesUntil;

    public TakeCues(PitchTrack track, Voicing voicing, int places, int step)
    {
        _dips = Dips(track, places, step);
        (_pauses, _pausesUntil) = Pauses(voicing, places, step);
    }

    /// <summary>How clearly the level dips, 0 to 1.</summary>
    public float Dip(int place) => _dips[place];

    /// <summary>How clearly nobody sings for the time of a breath until here, 0 to 1.</summary>
    public float Pause(int place) => _pauses[place];

    /// <summary>How many pauses end between two places.</summary>
    public float PausesBetween(int from, int to) => to <= from ? 0 : _pausesUntil[to] - _pausesUntil[from];

    private static float[] Dips(PitchTrack track, int places, int step)
    {
        var dips = new float[places + 1];
        for (var p = 0; p < dips.Length; p++)
        {
            for (var i = (2 * p * step) - 4; i <= (2 * p * step) + 4; i++)
            {
                var (before, after) = (float.MinValue, float.MinValue);
                for (var k = 3; k <= 24; k++)
                {
                    before = Math.Max(before, track.Low(i - k));
                    after = Math.Max(after, track.Low(i + k));
                }

                dips[p] = Math.Max(dips[p], Math.Clamp((Math.Min(before, after) - track.Low(i) - 1.5f) / 5, 0, 1));
            }
        }

        return dips;
    }

    private static (float[] Pauses, float[] Until) Pauses(Voicing voicing, int places, int step)
    {
        var silent = new int[voicing.Count];
        for (var f = 0; f < silent.Length; f++)
        {
            silent[f] = voicing[f] >= 0.5 ? 0 : f == 0 ? ShortestBreath : silent[f - 1] + 1;
        }

        var (pauses, until) = (new float[places + 1], new float[places + 1]);
        for (var p = 0; p < pauses.Length; p++)
        {
            var longest = 0;
            for (var f = Math.Max(0, (p * step) - Around); f < Math.Min(silent.Length, (p * step) + Around); f++)
            {
                longest = Math.Max(longest, silent[f]);
            }

            pauses[p] = Length(longest);
            until[p] = p == 0 ? 0 : until[p - 1];
            for (var f = Math.Max(1, (p - 1) * step); f < Math.Min(silent.Length, p * step); f++)
            {
                until[p] += silent[f] == 0 ? Length(silent[f - 1]) : 0;
            }
        }

        return (pauses, until);
    }

    private static float Length(int silent) => Math.Clamp((silent - LongestConsonant) / (float)(ShortestBreath - LongestConsonant), 0, 1);
}
