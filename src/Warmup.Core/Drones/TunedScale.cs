using System.Globalization;

namespace Warmup;

/// <summary>A note of a scale on a tonic in a tuning.</summary>
/// <param name="Tone">The tone.</param>
/// <param name="Name">How it is written.</param>
/// <param name="Interval">Its interval above the tonic; exact where the tuning is.</param>
/// <param name="Hz">Its frequency in Hz.</param>
/// <param name="AboveString">Its interval above the drone string it agrees with best.</param>
/// <param name="Beat">Where it meets that string, and how fast the two beat.</param>
public sealed record TunedNote(ScaleTone Tone, NoteName Name, Interval Interval, double Hz, Interval AboveString, Beat Beat)
{
    /// <summary>The tone, the name, the interval and the frequency.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Tone} {Name}, {Interval}, {Hz:0.###} Hz");
}

/// <summary>All notes of a scale on a tonic in a tuning, with the drone they are sung against.</summary>
/// <param name="Scale">The scale.</param>
/// <param name="Tonic">The tonic.</param>
/// <param name="Tuning">The tuning.</param>
/// <param name="Drone">The drone of the scale.</param>
/// <param name="Notes">The notes of both lists from the tonic up, and the upper tonic.</param>
/// <remarks>Immutable, value equality.</remarks>
public sealed record TunedScale(Scale Scale, Tonic Tonic, Tuning Tuning, Drone Drone, ValueList<TunedNote> Notes)
{
    /// <summary>Tunes a scale.</summary>
    /// <param name="scale">The scale.</param>
    /// <param name="tonic">The tonic.</param>
    /// <param name="tuning">The tuning.</param>
    public static TunedScale Of(Scale scale, Tonic tonic, Tuning tuning)
    {
        var tonicName = Spelling.ChooseTonic(tonic, scale, out _);
        var drone = Drone.Tanpura(scale, tonic, tuning, tonicName);
        var notes = new List<TunedNote>();
        foreach (var tone in ((IEnumerable<Degree>)scale.Degrees).Select(d => new ScaleTone(d)).Append(new ScaleTone(default, 1)))
        {
            var beat = Consonance.Slowest(tone, tonic, tuning, drone);
            var interval = tuning.IntervalOf(tone);
            notes.Add(new TunedNote(
                tone,
                Spelling.Name(tone, tonicName),
                interval,
                tuning.Hz(tone, tonic),
                interval - tuning.IntervalOf(drone.Strings[beat.StringIndex].Pitch.Tone),
                beat));
        }

        return new TunedScale(scale, tonic, tuning, drone, notes.ToValueList());
    }
}
