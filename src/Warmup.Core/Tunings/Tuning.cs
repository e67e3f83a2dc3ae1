using System.Globalization;

namespace Warmup;

/// <summary>How far above the tonic each degree is tuned. Octaves are pure.</summary>
/// <remarks>
/// One interval for each of the twelve svarasthanas (semitone places), so R2 and G1 are tuned alike. Immutable, value equality.
/// </remarks>
public sealed record Tuning
{
    /// <summary>Makes a tuning.</summary>
    /// <param name="name">The name: 1 to 100 characters without control characters.</param>
    /// <param name="places">The intervals of the twelve places above the tonic, from the unison to the seventh.</param>
    /// <exception cref="ArgumentException">There are not twelve places, or the first is not the unison.</exception>
    public Tuning(string name, ValueList<Interval> places)
    {
        if (string.IsNullOrWhiteSpace(name))
        {
            throw new ArgumentException("a tuning needs a name of 1 to 100 characters", nameof(name));
        }

        Name = Require.PlainText(name, Scale.LongestName);
        if (places.Count != 12)
        {
            throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"a tuning has 12 places above the tonic, not {places.Count}"), nameof(places));
        }

        if (places[0] != Interval.Unison)
        {
            throw new ArgumentException($"the first place of a tuning is the unison, not {places[0]}", nameof(places));
        }

        Places = places;
    }

    /// <summary>Twelve equal steps of 100 cents.</summary>
    public static Tuning Equal { get; } = new("equal", Enumerable.Range(0, 12).Select(i => Interval.FromCents(100 * i)).ToValueList());

    /// <summary>
    /// Five-limit just intonation: 16/15, 9/8, 6/5, 5/4, 4/3, 45/32, 3/2, 8/5, 5/3, 9/5, 15/8.
    /// </summary>
    /// <remarks>
    /// The ratios in which two reference libraries agree. Where two ratios are common (10/9 or 9/8, 27/16 or 5/3, 16/9 or 9/5) this
    /// tuning takes the ones above.
    /// </remarks>
    public static Tuning Just { get; } = new("just", FromRatios(1, 1, 16, 15, 9, 8, 6, 5, 5, 4, 4, 3, 45, 32, 3, 2, 8, 5, 5, 3, 9, 5, 15, 8));

    /// <summary>The tunings that have a name, for reading what people type.</summary>
    public static ValueList<Tuning> All { get; } = [Equal, Just];

    /// <summary>The name.</summary>
    public string Name { get; }

    /// <summary>The intervals of the twelve places above the tonic.</summary>
    public ValueList<Interval> Places { get; }

    /// <summary>The interval of a degree above the tonic, within the octave.</summary>
    /// <param name="degree">The degree.</param>
    public Interval this[Degree degree] => Places[((degree.Semitones % 12) + 12) % 12];

    /// <summary>Octaves between the degree's place in the list and its pitch: -1 for a lowered tonic, which sounds below it.</summary>
    internal static int OctaveOf(Degree degree) => degree.Semitones < 0 ? -1 : degree.Semitones / 12;

    /// <summary>The height of a tone above the middle tonic, in cents.</summary>
    /// <param name="tone">The tone.</param>
    public double Cents(ScaleTone tone) => this[tone.Degree].Cents + (1200 * (tone.Octave + OctaveOf(tone.Degree)));

    /// <summary>The frequency of a tone in Hz.</summary>
    /// <param name="tone">The tone.</param>
    /// <param name="tonic">The tonic.</param>
    public double Hz(ScaleTone tone, Tonic tonic) => this[tone.Degree].Above(tonic.Hz, tone.Octave + OctaveOf(tone.Degree));

    /// <summary>The name.</summary>
    public override string ToString() => Name;

    private static ValueList<Interval> FromRatios(params ReadOnlySpan<int> ratios)
    {
        var places = new Interval[ratios.Length / 2];
        for (var i = 0; i < places.Length; i++)
        {
            places[i] = Interval.FromRatio(new Rational(ratios[2 * i], ratios[(2 * i) + 1]));
        }

        return ValueList.Adopt(places);
    }
}
