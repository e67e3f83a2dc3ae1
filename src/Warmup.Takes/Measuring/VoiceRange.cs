using System.Globalization;
using System.Text.Json.Serialization;

namespace Warmup.Takes;

/// <summary>The lowest and the highest note of a recording. Immutable, value equality.</summary>
[JsonConverter(typeof(UnsupportedJsonConverter<VoiceRange>))]
public sealed record VoiceRange
{
    internal VoiceRange(double lowHz, double highHz) => (LowHz, HighHz) = (lowHz, highHz);

    /// <summary>The lowest pitch that was held or passed steadily, in Hz.</summary>
    public double LowHz { get; }

    /// <summary>The highest, in Hz.</summary>
    public double HighHz { get; }

    /// <summary>The note nearest to the lowest pitch, with A4 at 440 Hz.</summary>
    public NoteName Low => Nearest(LowHz);

    /// <summary>The note nearest to the highest pitch, with A4 at 440 Hz.</summary>
    public NoteName High => Nearest(HighHz);

    /// <summary>The notes and the frequencies.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Low} ({LowHz:0.0} Hz) to {High} ({HighHz:0.0} Hz)");

    private static NoteName Nearest(double hz) => NoteName.FromMidi((int)Math.Round(Pitches.Cents(hz) / 100));
}
