using System.Globalization;
using System.Text.Json.Serialization;

namespace Warmup.Voices;

/// <summary>Where a svara meets a string of the drone: the two partials that lie nearest each other, and how fast they beat.</summary>
/// <remarks>Immutable, value equality; <c>default</c> is the tonic at rest on the first string.</remarks>
[JsonConverter(typeof(UnsupportedJsonConverter<Beating>))]
public readonly record struct Beating
{
    private readonly int _voicePartialLessOne;
    private readonly int _stringPartialLessOne;

    internal Beating(ScaleTone tone, int stringIndex, int voicePartial, int stringPartial, double beatHz)
    {
        Tone = tone;
        StringIndex = stringIndex;
        _voicePartialLessOne = voicePartial - 1;
        _stringPartialLessOne = stringPartial - 1;
        BeatHz = beatHz;
    }

    /// <summary>The svara.</summary>
    public ScaleTone Tone { get; }

    /// <summary>The index of the string in <see cref="Drone.Strings"/>.</summary>
    public int StringIndex { get; }

    /// <summary>The partial of the voice, 1 for its fundamental.</summary>
    public int VoicePartial => _voicePartialLessOne + 1;

    /// <summary>The partial of the string, 1 for its fundamental.</summary>
    public int StringPartial => _stringPartialLessOne + 1;

    /// <summary>Beats a second between the two partials; 0 where they agree exactly.</summary>
    public double BeatHz { get; }

    /// <summary>Whether the beating is slow enough to be heard as rest: below 1 Hz (the project's own setting).</summary>
    public bool IsLockedIn => BeatHz < Consonance.RestBelowHz;

    /// <summary>The svara, the partials that meet, and how fast they beat.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Tone}: partial {VoicePartial} with partial {StringPartial} of string {StringIndex}, {BeatHz:0.###} Hz");
}

/// <summary>How svaras agree with the drone: arithmetic on partials, no judgement of an ear.</summary>
public static class Consonance
{
    /// <summary>The highest partial that is compared, in the voice and in each string: 8 (the project's own setting).</summary>
    internal static int MostPartials => 8;

    /// <summary>The beat rate below which a svara counts as locked in, in Hz: 1 (the project's own setting).</summary>
    internal static double RestBelowHz => 1;

    // Two partials that differ by less than this part of their frequency agree: only rounding keeps them apart.
    private const double Rounding = 1e-12;

    /// <summary>How a svara beats with each string of the drone.</summary>
    /// <param name="tone">The svara.</param>
    /// <param name="tonic">The tonic.</param>
    /// <param name="tuning">The tuning.</param>
    /// <param name="drone">The drone.</param>
    /// <param name="voicePartials">
    /// How many partials of the voice count, 1 to 8; all eight by default, since a just third meets the drone's fifth partial with its
    /// fourth. With 1 only the fundamental counts.
    /// </param>
    /// <returns>One entry for each string, in the strings' order; of several partials that beat equally slowly the lowest are named.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="voicePartials"/> lies outside its range.</exception>
    public static ValueList<Beating> With(ScaleTone tone, Tonic tonic, Tuning tuning, Drone drone, int voicePartials = 8)
    {
        ArgumentNullException.ThrowIfNull(tonic);
        ArgumentNullException.ThrowIfNull(tuning);
        ArgumentNullException.ThrowIfNull(drone);
        Require.InRange(voicePartials, 1, MostPartials);
        var hz = tuning.Hz(tone, tonic);
        var beats = new Beating[drone.Strings.Count];
        for (var i = 0; i < beats.Length; i++)
        {
            beats[i] = Nearest(tone, hz, i, drone.Strings[i].Hz, voicePartials);
        }

        return beats.ToValueList();
    }

    /// <summary>The slowest beating of a svara with any string of the drone.</summary>
    /// <param name="tone">The svara.</param>
    /// <param name="tonic">The tonic.</param>
    /// <param name="tuning">The tuning.</param>
    /// <param name="drone">The drone.</param>
    /// <param name="voicePartials">How many partials of the voice count, 1 to 8; all eight by default.</param>
    /// <returns>The slowest; of several strings that beat equally slowly the one that meets the lowest partials.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="voicePartials"/> lies outside its range.</exception>
    public static Beating Slowest(ScaleTone tone, Tonic tonic, Tuning tuning, Drone drone, int voicePartials = 8)
    {
        var best = default(Beating);
        var first = true;
        foreach (var beat in With(tone, tonic, tuning, drone, voicePartials))
        {
            var slower = beat.BeatHz.CompareTo(best.BeatHz);
            if (first || slower < 0 || (slower == 0 && beat.VoicePartial + beat.StringPartial < best.VoicePartial + best.StringPartial))
            {
                (best, first) = (beat, false);
            }
        }

        return best;
    }

    private static Beating Nearest(ScaleTone tone, double hz, int index, double stringHz, int voicePartials)
    {
        var best = new Beating(tone, index, 1, 1, double.MaxValue);
        for (var voice = 1; voice <= voicePartials; voice++)
        {
            for (var partial = 1; partial <= MostPartials; partial++)
            {
                var beat = Math.Abs((voice * hz) - (partial * stringHz));
                beat = beat < Rounding * voice * hz ? 0 : beat;

                // Multiples of a pair beat as many times as fast; rounding must not let one of them win.
                if (beat < best.BeatHz * (1 - 1e-9))
                {
                    best = new Beating(tone, index, voice, partial, beat);
                }
            }
        }

        return best;
    }
}
