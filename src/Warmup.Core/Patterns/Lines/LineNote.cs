using System.Globalization;
using System.Text.Json.Serialization;

namespace Warmup;

/// <summary>One note of a line: a tone of the scale, its length in units, and the silence after it.</summary>
/// <remarks>
/// A unit is one note at the chosen speed. <c>default</c> is the middle S of the ascent, one unit long. Immutable, compared by value,
/// safe to share between threads.
/// </remarks>
[JsonConverter(typeof(UnsupportedJsonConverter<LineNote>))]
public readonly record struct LineNote
{
    /// <summary>The longest note or silence, in units; also the finest part of a unit: 1 divided by it (the project's own bound).</summary>
    internal const int LongestUnits = 4_096;

    // Lines are many and held for long, so a note is kept small: one number, and what most notes do not have apart. From its lowest bit: the tone
    // (the degree in 16 bits, the octave in 5), the direction, the approach, the joining, the loudness, and the length. The numerator 0 stands
    // for the usual length of one unit, so that the default value is a note that can be sung.
    private const int ToneBits = 21;
    private const ulong ToneMask = (1UL << ToneBits) - 1;
    private const int DirectionAt = 21;
    private const int ApproachAt = 22;
    private const int JoiningAt = 24;
    private const int LoudnessAt = 26;
    private const int DenominatorAt = 28;
    private const int NumeratorAt = 40;

    // A denominator less one is below 4,096; a numerator is then below 4,096 times that, since a note lasts at most 4,096 units.
    private const int DenominatorBits = 12;
    private const int NumeratorBits = 24;

    // All but the direction and the approach.
    private const ulong Heard = ToneMask | (~0UL << JoiningAt);

    private readonly ulong _bits;
    private readonly Further? _further;

    /// <summary>Makes a note without a silence after it.</summary>
    /// <param name="tone">The tone.</param>
    /// <param name="direction">The list of the scale that the tone is taken from.</param>
    /// <param name="approach">How the note is reached from the one before.</param>
    /// <param name="length">Its length: 1/4096 to 4096 units, in parts of at most 4096 to a unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">The length lies outside its range, or an enum value is not defined.</exception>
    public LineNote(ScaleTone tone, ScaleDirection direction, Approach approach, Rational length)
    {
        Tone = tone;
        Direction = direction;
        Approach = approach;
        Length = length;
    }

    /// <summary>A note of one unit, of values that the library has made and that need no check.</summary>
    internal LineNote(ScaleTone tone, ScaleDirection direction, Approach approach) =>
        _bits = unchecked(ToneOnly(tone) | ((ulong)direction << DirectionAt) | ((ulong)approach << ApproachAt));

    private LineNote(ulong bits, Further? further) => (_bits, _further) = (bits, further);

    /// <summary>The tone.</summary>
    public ScaleTone Tone
    {
        get => ScaleTone.Unpacked(unchecked((int)(_bits << (32 - ToneBits)) >> (32 - ToneBits)));
        init => _bits = (_bits & ~ToneMask) | ToneOnly(value);
    }

    /// <summary>The list of the scale that the tone is taken from.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not defined.</exception>
    public ScaleDirection Direction
    {
        get => (ScaleDirection)Part(DirectionAt, 1);
        init => _bits = value is ScaleDirection.Ascent or ScaleDirection.Descent ? With(DirectionAt, 1, (int)value) : throw Undefined(nameof(Direction), (int)value);
    }

    /// <summary>How the note is reached from the one before.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not defined.</exception>
    public Approach Approach
    {
        get => (Approach)Part(ApproachAt, 2);
        init => _bits = value is >= Approach.Leap and <= Approach.Descent ? With(ApproachAt, 2, (int)value) : throw Undefined(nameof(Approach), (int)value);
    }

    /// <summary>The length: 1/4096 to 4096 units, in parts of at most 4096 to a unit.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The length lies outside its range.</exception>
    public Rational Length
    {
        get => HasUsualLength ? Rational.One : Rational.Reduced(Part(NumeratorAt, NumeratorBits), Part(DenominatorAt, DenominatorBits) + 1);
        init => _bits = !Fits(value) || value.Sign <= 0 ? throw TooLongOrShort(value)
            : (_bits & ((1UL << DenominatorAt) - 1))
            | (value == Rational.One ? 0 : ((ulong)value.Numerator << NumeratorAt) | ((ulong)(value.Denominator - 1) << DenominatorAt));
    }

    /// <summary>The silence after the note: 0 to 4096 units, in parts of at most 4096 to a unit; 0 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The silence lies outside its range.</exception>
    public Rational Rest
    {
        get => _further is null ? default : _further.Rest;
        init
        {
            // Most notes have neither a silence nor a text, and get none.
            if (_further is not null || value.Sign != 0)
            {
                _further = Fits(value) ? Further.Of(value, Sung) : throw TooLongSilence(value);
            }
        }
    }

    /// <summary>
    /// What is sung on the note: at most 20 characters; the empty text goes on with the word before it. <see langword="null"/>, the
    /// default, where the drill's syllables decide.
    /// </summary>
    /// <exception cref="ArgumentException">The text is longer, or holds control or bidirectional characters.</exception>
    public string? Sung
    {
        get => _further?.Sung;
        init => _further = Further.Of(Rest, value is null ? null : Require.PlainText(value, Pattern.LongestSungText));
    }

    /// <summary>How the note goes on to the next one of its line; plain by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not defined.</exception>
    public Joining Joining
    {
        get => (Joining)Part(JoiningAt, 2);
        init => _bits = value is >= Joining.Plain and <= Joining.Staccato ? With(JoiningAt, 2, (int)value) : throw Undefined(nameof(Joining), (int)value);
    }

    /// <summary>How loud the note is from its beginning to its end; even by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not defined.</exception>
    public Loudness Loudness
    {
        get => (Loudness)Part(LoudnessAt, 1);
        init => _bits = value is Loudness.Even or Loudness.SwellAndFade ? With(LoudnessAt, 1, (int)value) : throw Undefined(nameof(Loudness), (int)value);
    }

    /// <summary>Whether the middle of the note matters: for a slide, a silence or a swell.</summary>
    internal bool IsHalved => (_bits & (0b111UL << JoiningAt)) != 0;

    /// <summary>Whether there is silence after the note.</summary>
    internal bool HasRest => _further is not null && _further.Rest.Sign != 0;

    /// <summary>Whether the note takes one unit and no silence, as most do.</summary>
    internal bool TakesOneUnit => HasUsualLength && !HasRest;

    /// <summary>Whether the note takes one unit and no silence, has no text and is sung plain, as nearly all are.</summary>
    internal bool IsPlain => _bits < 1UL << JoiningAt && _further is null;

    private bool HasUsualLength => _bits < 1UL << DenominatorAt;

    /// <summary>What is sung, where a pattern has checked it once for all its notes.</summary>
    internal string? CheckedText
    {
        init => _further = Further.Of(Rest, value);
    }

    /// <summary>The same note, reached in a way that the library knows to be defined.</summary>
    internal LineNote ReachedBy(Approach approach) => new(With(ApproachAt, 2, (int)approach), _further);

    /// <summary>Whether a listener hears the same: tone, length, silence, sung text, joining and loudness are equal, however the notes came about.</summary>
    /// <param name="other">The other note.</param>
    public bool SoundsAs(LineNote other) => ((_bits ^ other._bits) & Heard) == 0 && Rest == other.Rest && Sung == other.Sung;

    /// <summary>The tone's text form: <c>R2</c>.</summary>
    public override string ToString() => Tone.ToString();

    /// <summary>Whether a number of units is a length or a silence.</summary>
    internal static bool Fits(Rational units)
    {
        var (numerator, denominator) = (units.Numerator, units.Denominator);
        return numerator >= 0 && denominator <= LongestUnits && numerator <= LongestUnits * denominator;
    }

    private static ulong ToneOnly(ScaleTone tone) => unchecked((uint)tone.Packed) & ToneMask;

    private int Part(int at, int bits) => unchecked((int)((_bits >> at) & ((1UL << bits) - 1)));

    private ulong With(int at, int bits, int value) => unchecked((_bits & ~(((1UL << bits) - 1) << at)) | ((ulong)value << at));

    private static ArgumentOutOfRangeException TooLongOrShort(Rational value) => Outside("a note", $"1/{LongestUnits}", value);

    private static ArgumentOutOfRangeException TooLongSilence(Rational value) => Outside("a silence", "0", value);

    private static ArgumentOutOfRangeException Outside(string what, string shortest, Rational value) => new(
        nameof(value),
        string.Create(
            CultureInfo.InvariantCulture, $"{what} must last {shortest} to {LongestUnits} units, in parts of at most {LongestUnits} to a unit, not {value}"));

    private static ArgumentOutOfRangeException Undefined(string what, int value) => new(
        what, string.Create(CultureInfo.InvariantCulture, $"{what} must be one of the values of its type, not {value}"));

    /// <summary>A silence, a text, or both.</summary>
    private sealed record Further(Rational Rest, string? Sung)
    {
        public static Further? Of(Rational rest, string? sung) => rest.Sign == 0 && sung is null ? null : new(rest, sung);
    }
}
