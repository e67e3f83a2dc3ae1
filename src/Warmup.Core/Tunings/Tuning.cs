using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json.Serialization;

namespace Warmup;

/// <summary>How far above the tonic each degree is tuned. Octaves are pure.</summary>
/// <remarks>
/// One interval for each of the twelve svarasthanas (semitone places), so R2 and G1 are tuned alike unless one of them is tuned
/// differently by <see cref="With"/>. Immutable, value equality.
/// </remarks>
[JsonConverter(typeof(TextJsonConverter<Tuning>))]
public sealed record Tuning : ITextForm<Tuning>, IWritesText
{
    /// <summary>The places of an octave: a tuning has an interval for each.</summary>
    internal const int Places = 12;

    /// <summary>The longest name, in characters.</summary>
    internal const int LongestName = 100;

    /// <summary>Makes a tuning.</summary>
    /// <param name="name">The name: 1 to 100 characters without control characters, and without white space at its ends.</param>
    /// <param name="intervals">The intervals of the twelve places above the tonic, from the unison to the seventh.</param>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is <see langword="null"/>.</exception>
    /// <exception cref="ArgumentException">The name is not one, there are not twelve intervals, or the first is not the unison.</exception>
    public Tuning(string name, ValueList<Interval> intervals)
    {
        Name = Require.Name(name, LongestName);
        Intervals = IntervalsFault(intervals) is { } fault ? throw new ArgumentException(fault, nameof(intervals)) : intervals;
    }

    /// <summary>How far a svara tuned differently may lie from its equal pitch: 100 cents (the project's own setting).</summary>
    internal static int MostOverrideCents => 100;

    /// <summary>Twelve equal steps of 100 cents.</summary>
    public static Tuning Equal => EqualTuning.Value;

    /// <summary>Five-limit just intonation: 16/15, 9/8, 6/5, 5/4, 4/3, 45/32, 3/2, 8/5, 5/3, 9/5, 15/8.</summary>
    /// <remarks>
    /// The ratios in which two reference libraries agree. Where two ratios are common this tuning takes the ones above;
    /// <see cref="JustWith"/> takes others.
    /// </remarks>
    public static Tuning Just { get; } = JustTuning.Usual.ToTuning();

    /// <summary>Pure fifths from the tonic: 256/243, 9/8, 32/27, 81/64, 4/3, 729/512, 3/2, 128/81, 27/16, 16/9, 243/128.</summary>
    public static Tuning Pythagorean => PythagoreanTuning.Value;

    /// <summary>The tunings that have a name, for reading what people type.</summary>
    public static ValueList<Tuning> All => [Equal, Just, Pythagorean];

    /// <summary>The name.</summary>
    public string Name { get; }

    /// <summary>The intervals of the twelve places above the tonic.</summary>
    public ValueList<Interval> Intervals { get; }

    /// <summary>The single svaras that are tuned otherwise than their place, by pitch and letter.</summary>
    internal ValueList<TunedDegree> Overrides { get; private init; }

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
    /// <exception cref="ArgumentNullException"><paramref name="tonic"/> is <see langword="null"/>.</exception>
    public double Hz(ScaleTone tone, Tonic tonic)
    {
        ArgumentNullException.ThrowIfNull(tonic);
        return Hz(tone, tonic.Hz);
    }

    /// <summary>The frequency of a tone above a tonic's frequency, both in Hz.</summary>
    internal double Hz(ScaleTone tone, double tonicHz) => this[tone.Degree].Above(tonicHz, tone.Octave + OctaveOf(tone.Degree));

    /// <summary>Just intonation with a choice where two ratios are common (common practice). A place is shared, so a choice serves two svaras.</summary>
    /// <param name="r2">R2 and G1: 9/8 (the default) or 10/9.</param>
    /// <param name="m2">M2: 45/32 (the default) or 64/45.</param>
    /// <param name="d2">D2 and N1: 5/3 (the default) or 27/16.</param>
    /// <param name="n2">N2 and D3: 9/5 (the default) or 16/9.</param>
    /// <exception cref="ArgumentOutOfRangeException">A ratio is neither of the two.</exception>
    public static Tuning JustWith(Rational? r2 = null, Rational? m2 = null, Rational? d2 = null, Rational? n2 = null) => JustTuning.Of(r2, m2, d2, n2).ToTuning();

    /// <summary>This tuning with one svara tuned differently, as some scales want it. R2 and G1 are then tuned apart.</summary>
    /// <param name="degree">The svara; not the tonic.</param>
    /// <param name="interval">Its interval above the tonic, within 100 cents of the svara's equal pitch (the project's own bound).</param>
    /// <exception cref="ArgumentException"><paramref name="degree"/> is the tonic.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="interval"/> lies outside its range.</exception>
    public Tuning With(Degree degree, Interval interval)
    {
        if (degree == default)
        {
            throw new ArgumentException("the tonic S is the unison of every tuning and cannot be tuned differently", nameof(degree));
        }

        return OverrideFault(degree, interval) is { } fault
            ? throw new ArgumentOutOfRangeException(nameof(interval), interval, fault)
            : this with { Overrides = Overrides.Where(o => o.Degree != degree).Append(new TunedDegree(degree, interval)).OrderBy(o => o.Degree).ToValueList() };
    }

    // A name, twelve intervals and thirty-four others, all of ratios with two numbers of nineteen digits.
    static int ITextForm<Tuning>.LongestText => 4_000;

    static string ITextForm<Tuning>.What => "a tuning";

    /// <summary>
    /// Reads a tuning: a name (<c>equal</c>, <c>just</c>, <c>pythagorean</c>), <c>just:</c> with the ratios chosen
    /// (<c>just: 10/9 27/16</c>), or a tuning of one's own with its twelve intervals after its name and a colon. Svaras tuned differently may
    /// follow: <c>just, R2 10/9, G3 400c</c>.
    /// </summary>
    /// <param name="text">The text; the names in any case.</param>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is <see langword="null"/>.</exception>
    /// <exception cref="WarmupFormatException">The text is not a tuning.</exception>
    public static Tuning Parse(string text) => TextForm.Parse<Tuning>(text);

    /// <summary>Reads a tuning as <see cref="Parse"/> does.</summary>
    /// <param name="text">The text.</param>
    /// <param name="tuning">The tuning, or <see langword="null"/>.</param>
    /// <param name="error">What is wrong, or <see langword="null"/>.</param>
    /// <returns>Whether the text was a tuning.</returns>
    public static bool TryParse([NotNullWhen(true)] string? text, [NotNullWhen(true)] out Tuning? tuning, [NotNullWhen(false)] out TextError? error) =>
        TextForm.TryParse<Tuning>(text, out tuning, out error);

    static Tuning IParsable<Tuning>.Parse(string s, IFormatProvider? provider) => Parse(s);

    static bool IParsable<Tuning>.TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, [MaybeNullWhen(false)] out Tuning result) => TryParse(s, out result, out _);

    static Tuning ISpanParsable<Tuning>.Parse(ReadOnlySpan<char> s, IFormatProvider? provider) => TextForm.Parse<Tuning>(s);

    static bool ISpanParsable<Tuning>.TryParse(ReadOnlySpan<char> s, IFormatProvider? provider, [MaybeNullWhen(false)] out Tuning result) =>
        TextForm.TryParse(s, out result, out _);

    static bool ITextForm<Tuning>.TryRead(TextCursor cursor, [MaybeNullWhen(false)] out Tuning value, [NotNullWhen(false)] out TextError? error) =>
        TuningText.TryRead(cursor, out value, out error);

    /// <summary>The whole tuning, as <see cref="Parse"/> reads it back; the intervals are written out where the name does not say them.</summary>
    public string ToText() => TuningText.Write(this);

    /// <summary>The name, and the svaras tuned differently: <c>just, R2 10/9</c>.</summary>
    public override string ToString() => OneLine.Of(string.Join(", ", Overrides.Select(o => o.ToString()).Prepend(Name)));

    /// <summary>What is wrong with the intervals of the places; <see langword="null"/> where nothing is.</summary>
    internal static string? IntervalsFault(ValueList<Interval> intervals) =>
        intervals.Count != Places ? string.Create(CultureInfo.InvariantCulture, $"a tuning has {Places} intervals above the tonic, not {intervals.Count}")
        : intervals[0] != Interval.Unison ? $"the first interval of a tuning is the unison 1/1, not {intervals[0]}"
        : null;

    /// <summary>Why a degree cannot be tuned to an interval; <see langword="null"/> where it can.</summary>
    internal static string? OverrideFault(Degree degree, Interval interval)
    {
        // The tuning counts within the octave, so a lowered tonic lies near its top.
        var place = 100 * (((degree.Semitones % 12) + 12) % 12);
        return Math.Abs(interval.Cents - place) > MostOverrideCents
            ? string.Create(CultureInfo.InvariantCulture, $"{degree} must be tuned between {place - MostOverrideCents} and {place + MostOverrideCents} cents above the tonic, not {interval.Cents:0.###}")
            : null;
    }
}
