using System.Globalization;

namespace Warmup.Voices;

/// <summary>A note of a scale on a tonic in a tuning. Immutable, value equality.</summary>
public sealed record TunedNote
{
    internal TunedNote(ScaleTone tone, NoteName name, Interval interval, double hz, Interval aboveString, Beating beating) =>
        (Tone, Name, Interval, Hz, AboveString, Beating) = (tone, name, interval, hz, aboveString, beating);

    /// <summary>The tone.</summary>
    public ScaleTone Tone { get; }

    /// <summary>How it is written.</summary>
    public NoteName Name { get; }

    /// <summary>Its interval above the tonic; exact where the tuning is.</summary>
    public Interval Interval { get; }

    /// <summary>Its frequency in Hz.</summary>
    public double Hz { get; }

    /// <summary>Its interval above the drone string it agrees with best.</summary>
    public Interval AboveString { get; }

    /// <summary>Where it meets that string, and how fast the two beat.</summary>
    public Beating Beating { get; }

    /// <summary>The tone, the name, the interval and the frequency.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Tone} {Name}, {Interval}, {Hz:0.###} Hz");
}

/// <summary>All notes of a scale on a tonic in a tuning, with the drone they are sung against.</summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record TunedScale
{
    private TunedScale(Scale scale, Tonic tonic, Tuning tuning, Drone drone, ValueList<TunedNote> notes) =>
        (Scale, Tonic, Tuning, Drone, Notes) = (scale, tonic, tuning, drone, notes);

    /// <summary>The scale.</summary>
    public Scale Scale { get; }

    /// <summary>The tonic.</summary>
    public Tonic Tonic { get; }

    /// <summary>The tuning.</summary>
    public Tuning Tuning { get; }

    /// <summary>The drone of the scale: the usual tanpura.</summary>
    public Drone Drone { get; }

    /// <summary>The notes of both lists from the tonic up, and the upper tonic.</summary>
    public ValueList<TunedNote> Notes { get; }

    /// <summary>Tunes a scale.</summary>
    /// <param name="scale">The scale.</param>
    /// <param name="tonic">The tonic.</param>
    /// <param name="tuning">The tuning.</param>
    public static TunedScale Of(Scale scale, Tonic tonic, Tuning tuning)
    {
        ArgumentNullException.ThrowIfNull(scale);
        ArgumentNullException.ThrowIfNull(tonic);
        ArgumentNullException.ThrowIfNull(tuning);
        var tonicName = Spelling.ChooseTonic(tonic, scale, out _);
        var drone = DroneStyle.Tanpura.For(scale, tonic, tuning, tonicName);
        var notes = new TunedNote[scale.Degrees.Count + 1];
        for (var n = 0; n < notes.Length; n++)
        {
            var tone = n < scale.Degrees.Count ? new ScaleTone(scale.Degrees[n]) : new ScaleTone(default, 1);
            var beating = Consonance.Slowest(tone, tonic, tuning, drone);
            var interval = tuning.IntervalOf(tone);
            notes[n] = new TunedNote(
                tone,
                Spelling.Name(tone, tonicName),
                interval,
                tuning.Hz(tone, tonic),
                interval - tuning.IntervalOf(drone.Strings[beating.StringIndex].Tone),
                beating);
        }

        return new TunedScale(scale, tonic, tuning, drone, notes.ToValueList());
    }

    /// <summary>The scale, the tonic and the tuning.</summary>
    public override string ToString() => OneLine.Of($"{Scale.Name} on {Tonic}, {Tuning.Name}");
}
