using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text.Json.Serialization;

namespace Warmup;

/// <summary>A tone written and tuned: how it stands on paper, and how it sounds. Immutable, value equality.</summary>
[JsonConverter(typeof(UnsupportedJsonConverter<ScorePitch>))]
public readonly record struct ScorePitch
{
    internal ScorePitch(ScaleTone tone, NoteName name, double cents, double hz, double offsetCents) =>
        (Tone, Name, Cents, Hz, OffsetCents) = (tone, name, cents, hz, offsetCents);

    /// <summary>The tone of the scale.</summary>
    public ScaleTone Tone { get; }

    /// <summary>The written name.</summary>
    public NoteName Name { get; internal init; }

    /// <summary>Cents above the middle tonic, in the section's tuning.</summary>
    public double Cents { get; }

    /// <summary>The frequency in Hz.</summary>
    public double Hz { get; }

    /// <summary>
    /// How far the pitch sounds above the written note of a keyboard tuned to A4 = 440 Hz, in cents: what a pitch bend has to add.
    /// </summary>
    public double OffsetCents { get; }

    /// <summary>The MIDI note number of the written name, 0 to 127.</summary>
    public int Midi => Name.Midi;

    /// <summary>The tone, the name, and where it sounds.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Tone} {Name}, {Cents:0.###} cents, {Hz:0.###} Hz");

    /// <summary>The same tone, written and sounding elsewhere.</summary>
    internal ScorePitch MovedTo(NoteName name, double hz) => new(Tone, name, Cents, hz, OffsetCents);

    /// <summary>Writes and tunes a tone.</summary>
    /// <param name="tone">The tone.</param>
    /// <param name="tonic">The tonic.</param>
    /// <param name="tonicHz">The tonic's frequency, computed once for many tones.</param>
    /// <param name="tuning">The tuning.</param>
    /// <param name="tonicName">The written name of the tonic.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static ScorePitch Of(ScaleTone tone, Tonic tonic, double tonicHz, Tuning tuning, NoteName tonicName)
    {
        var name = Spelling.Name(tone, tonicName);
        var cents = tuning.Cents(tone);

        // Above the written note's equal pitch at A4 = 440 Hz: the tuning's deviation, the tonic's offset and the reference's.
        var reference = tonic.A4.Equals(Tonic.StandardA4) ? 0 : 1200 * Math.Log2(tonic.A4 / Tonic.StandardA4);
        var offset = cents + tonic.OffsetCents + reference - (100.0 * (name.Midi - tonic.Midi));
        return new ScorePitch(tone, name, cents, tuning.Hz(tone, tonicHz), offset);
    }
}
