using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup;

/// <summary>How far above the tonic each degree is tuned. Octaves are pure.</summary>
/// <remarks>
/// One interval for each of the twelve svarasthanas (semitone places), so R2 and G1 are tuned alike unless one of them is tuned
/// otherwise by <see cref="With"/>. Immutable, value equality.
/// </remarks>
public sealed record Tuning
{
    /// <summary>How far a svara tuned otherwise may lie from its equal pitch, in cents (the project's own bound).</summary>
    public const int MostOverrideCents = 100;

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

        Intervals = places;
    }

    /// <summary>Twelve equal steps of 100 cents.</summary>
    public static Tuning Equal => EqualTuning.Value;

    /// <summary>Five-limit just intonation: 16/15, 9/8, 6/5, 5/4, 4/3, 45/32, 3/2, 8/5, 5/3, 9/5, 15/8.</summary>
    /// <remarks>
    /// The ratios in which two reference libraries agree. Where two ratios are common this tuning takes the ones above;
    /// <see cref="JustWith"/> takes others.
    /// </remarks>
    public static Tuning Just => JustTuning.Usual;

    /// <summary>Pure fifths from the tonic: 256/243, 9/8, 32/27, 81/64, 4/3, 729/512, 3/2, 128/81, 27/16, 16/9, 243/128.</summary>
    public static Tuning Pythagorean => PythagoreanTuning.Value;

    /// <summary>The tunings that have a name, for reading what people type. A new tuning is one new file and one line here.</summary>
    public static ValueList<Tuning> All => [Equal, Just, Pythagorean];

    /// <summary>The name.</summary>
    public string Name { get; }

    /// <summary>The intervals of the twelve places above the tonic.</summary>
    public ValueList<Interval> Intervals { get; }

    /// <summary>The single svaras that are tuned otherwise than their place, by pitch and letter.</summary>
    public ValueList<TunedDegree> Overrides { get; private init; }

    /// <summary>The interval of a degree above the tonic, within the octave.</summary>
    /// <param name="degree">The degree.</param>
    public Interval this[Degree degree]
    {
        get
        {
            foreach (var tuned in Overrides)
            {
                if (tuned.Degree == degree)
                {
                    return tuned.Interval;
                }
            }

            return Intervals[((degree.Semitones % 12) + 12) % 12];
        }
    }

    /// <summary>Octaves between the degree's place in the list and its pitch: -1 for a lowered tonic, which sounds below it.</summary>
    internal static int OctaveOf(Degree degree) => degree.Semitones < 0 ? -1 : degree.Semitones / 12;

    /// <summary>The interval of a tone above the middle tonic; exact where the tuning is.</summary>
    /// <param name="tone">The tone.</param>
    public Interval IntervalOf(ScaleTone tone) => this[tone.Degree] + Interval.FromOctaves(tone.Octave + OctaveOf(tone.Degree));

    /// <summary>The height of a tone above the middle tonic, in cents.</summary>
    /// <param name="tone">The tone.</param>
    public double Cents(ScaleTone tone) => this[tone.Degree].Cents + (1200 * (tone.Octave + OctaveOf(tone.Degree)));

    /// <summary>The frequency of a tone in Hz.</summary>
    /// <param name="tone">The tone.</param>
    /// <param name="tonic">The tonic.</param>
    public double Hz(ScaleTone tone, Tonic tonic) => Hz(tone, tonic.Hz);

    /// <summary>The frequency of a tone above a tonic's frequency, both in Hz.</summary>
    internal double Hz(ScaleTone tone, double tonicHz) => this[tone.Degree].Above(tonicHz, tone.Octave + OctaveOf(tone.Degree));

    /// <summary>Just intonation with a choice where two ratios are common.</summary>
    /// <param name="choices">The ratios.</param>
    public static Tuning JustWith(JustChoices choices) => JustTuning.Of(choices);

    /// <summary>This tuning with one svara tuned otherwise, as some scales want it. R2 and G1 are then tuned apart.</summary>
    /// <param name="degree">The svara; not the tonic.</param>
    /// <param name="interval">Its interval above the tonic, within 100 cents of the svara's equal pitch (the project's own bound).</param>
    /// <exception cref="ArgumentException"><paramref name="degree"/> is the tonic.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="interval"/> lies outside its range.</exception>
    public Tuning With(Degree degree, Interval interval)
    {
        if (degree == default)
        {
            throw new ArgumentException("the tonic S is the unison of every tuning and cannot be tuned otherwise", nameof(degree));
        }

        // The tuning counts within the octave, so a lowered tonic lies near its top.
        var place = 100 * (((degree.Semitones % 12) + 12) % 12);
        if (Math.Abs(interval.Cents - place) > MostOverrideCents)
        {
            throw new ArgumentOutOfRangeException(
                nameof(interval),
                interval,
                string.Create(CultureInfo.InvariantCulture, $"{degree} must be tuned between {place - MostOverrideCents} and {place + MostOverrideCents} cents above the tonic, not {interval.Cents:0.###}"));
        }

        var others = ((IEnumerable<TunedDegree>)Overrides).Where(o => o.Degree != degree);
        return this with { Overrides = others.Append(new TunedDegree(degree, interval)).OrderBy(o => o.Degree).ToValueList() };
    }

    /// <summary>Reads a tuning: a name, or <c>just:</c> with the ratios chosen: <c>just: 10/9 27/16</c>.</summary>
    /// <param name="text">The text, in any case.</param>
    /// <param name="tuning">The tuning, or <see langword="null"/>.</param>
    /// <param name="error">What is wrong, or <see langword="null"/>.</param>
    /// <returns>Whether the text was a tuning.</returns>
    public static bool TryParse(string text, [NotNullWhen(true)] out Tuning? tuning, [NotNullWhen(false)] out TextError? error)
    {
        tuning = null;
        error = null;
        var trimmed = text.Trim();
        foreach (var named in All)
        {
            if (trimmed.Equals(named.Name, StringComparison.OrdinalIgnoreCase))
            {
                tuning = named;
                return true;
            }
        }

        if (trimmed.StartsWith(JustTuning.Prefix, StringComparison.OrdinalIgnoreCase))
        {
            return JustTuning.TryParse(trimmed, out tuning, out error);
        }

        error = TextError.At(1, $"unknown tuning {TextError.Quote(trimmed)}; write {string.Join(" or ", All)}, or just: with ratios such as just: 10/9 27/16");
        return false;
    }

    /// <summary>The name, and the svaras tuned otherwise: <c>just, R2 10/9</c>.</summary>
    public override string ToString() => string.Join(", ", ((IEnumerable<TunedDegree>)Overrides).Select(o => $"{o.Degree} {o.Interval}").Prepend(Name));
}

/// <summary>A svara tuned otherwise than its place.</summary>
/// <param name="Degree">The svara.</param>
/// <param name="Interval">Its interval above the tonic.</param>
public readonly record struct TunedDegree(Degree Degree, Interval Interval);
