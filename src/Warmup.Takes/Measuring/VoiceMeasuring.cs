using System.Globalization;

namespace Warmup.Takes;

/// <summary>
/// Measures a voice from recordings made in a silent room: the comfortable ends from a glide or steps, and the sustained tone. The numbers
/// help with planning and diagnose nothing; <see cref="MeasuringSteps"/> says how they are recorded with care, and
/// <see cref="Cautions"/> go with them.
/// </summary>
/// <remarks>
/// A drone shares its partials with a voice and would move a range by an octave, so a recording in which something else sounds is refused.
/// </remarks>
public static class VoiceMeasuring
{
    // The project's own settings: how far the quiet parts must lie below the voice, how long a pitch must last, and what ends a tone.
    private const double LeastQuiet = 26;
    private const double QuietSeconds = 0.3;
    private const int SteadyFrames = 15;
    private const int MedianReach = 2;
    private const float SteadyCents = 60;
    private const double BelowLoud = 26;
    private const double LongestGap = 0.12;

    /// <summary>The lowest and the highest note of a glide, or of steps, down and up.</summary>
    /// <param name="sound">The recording: one voice alone, with a moment of silence before or after it.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="SoundException">The recording is broken, holds no voice, or something else sounds in it.</exception>
    public static VoiceRange Range(SoundSource sound, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(sound);
        var track = PitchTracker.Track(sound, cancellationToken);
        var threshold = VoiceAbove(track);
        var course = VoiceCourse.Of(track, f => Level(track, f) >= threshold);
        var (low, high) = (float.MaxValue, float.MinValue);
        for (var from = 0; from < course.Length;)
        {
            var to = from;
            while (to < course.Length && !float.IsNaN(course[to]) && (to == from || Math.Abs(course[to] - course[to - 1]) < SteadyCents))
            {
                to++;
            }

            if (to - from >= SteadyFrames)
            {
                // What a voice touches for a moment at either end of a tone is no note; the median of some frames is taken.
                for (var f = from + MedianReach + 2; f < to - MedianReach - 2; f++)
                {
                    var median = Median(course, f);
                    (low, high) = (Math.Min(low, median), Math.Max(high, median));
                }
            }

            from = Math.Max(to, from + 1);
        }

        return low > high
            ? throw new SoundException("no steady tone was heard; sing a slow glide or single tones, and record again")
            : new VoiceRange(Pitches.Hz(low), Pitches.Hz(high));
    }

    /// <summary>The longest sustained tone of a recording, in seconds, on the nearest hundredth.</summary>
    /// <param name="sound">The recording: one voice alone, with a moment of silence before or after it.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="SoundException">The recording is broken, holds no voice, or something else sounds in it.</exception>
    public static Rational Sustained(SoundSource sound, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(sound);
        var track = PitchTracker.Track(sound, cancellationToken);
        var threshold = VoiceAbove(track);
        var (longest, from, last) = (0, -1, -1);
        var gap = (int)(LongestGap * PitchTrack.LowASecond);
        for (var i = 0; i < track.LowCount; i++)
        {
            var frame = Math.Min(i / 2, track.Count - 1);
            if (track.Low(i) >= threshold && track.At(frame)[0].Strength > 0.15f)
            {
                from = from < 0 || i - last > gap ? i : from;
                last = i;
                longest = Math.Max(longest, last - from + 1);
            }
        }

        return longest < PitchTrack.LowASecond
            ? throw new SoundException("no tone of a second or more was heard; record again")
            : new Rational((long)Math.Round(longest * 100.0 / PitchTrack.LowASecond), 100);
    }

    /// <summary>The level above which there is voice; refuses what is not a voice in a silent room.</summary>
    private static double VoiceAbove(PitchTrack track)
    {
        var levels = new float[track.LowCount];
        for (var i = 0; i < levels.Length; i++)
        {
            levels[i] = track.Low(i);
        }

        Array.Sort(levels);
        var loud = levels.Length == 0 ? -120 : levels[(int)(levels.Length * 0.9)];
        if (loud < -60)
        {
            throw new SoundException("no voice was heard; record again, nearer to the microphone");
        }

        // The quietest tenths of a second that add up to what silence is asked for.
        var quiet = levels[Math.Min(levels.Length - 1, (int)(QuietSeconds * PitchTrack.LowASecond))];
        if (loud - quiet < LeastQuiet)
        {
            var (tonal, frames) = (0, 0);
            for (var f = 0; f < track.Count; f++)
            {
                if (Level(track, f) <= quiet + 3)
                {
                    frames++;
                    tonal += track.At(f)[0].Strength > 0.3f ? 1 : 0;
                }
            }

            throw new SoundException(string.Create(
                CultureInfo.InvariantCulture,
                $"{(tonal > frames / 2 ? "a drone or another tone sounds" : "there is noise")} beside the voice, or no moment of silence ({loud - quiet:0} dB below it, {LeastQuiet} are needed); turn off what sounds, wait a second before and after singing, and record again"));
        }

        return Math.Max(loud - BelowLoud, quiet + 8);
    }

    private static double Level(PitchTrack track, int frame) => Math.Max(track.Low((2 * frame) - 1), track.Low(2 * frame));

    private static float Median(float[] course, int centre)
    {
        Span<float> near = stackalloc float[(2 * MedianReach) + 1];
        for (var k = 0; k < near.Length; k++)
        {
            near[k] = course[centre - MedianReach + k];
        }

        near.Sort();
        return near[MedianReach];
    }
}
