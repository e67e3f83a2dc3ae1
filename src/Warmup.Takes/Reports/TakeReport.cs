using System.Globalization;
using System.Text.Json.Serialization;

namespace Warmup.Takes;

/// <summary>A take held against its drill: what was sung, note by note. Immutable, value equality.</summary>
/// <remarks>The pitch that was sung is the drill's plus the note's cents, <see cref="OffsetCents"/> and 1,200 for each <see cref="Octave"/>.</remarks>
[JsonConverter(typeof(UnsupportedJsonConverter<TakeReport>))]
public sealed record TakeReport
{
    /// <summary>The name of the form in which reports are written as JSON.</summary>
    public static string Schema => "urn:warmup:take:1";

    /// <summary>Whether the drill was recognised; where it was not, nothing of it is judged.</summary>
    public required bool IsDrill { get; init; }

    /// <summary>Why the drill was not recognised, in words; none where it was.</summary>
    public string? Reason { get; init; }

    /// <summary>How far the singer's tonic lies above the drill's in whole cents, octaves apart.</summary>
    public int OffsetCents { get; init; }

    /// <summary>How many octaves above the drill the take was sung; negative below.</summary>
    public int Octave { get; init; }

    /// <summary>How far the pitch rose from the first note to the last, in whole cents; negative where it fell.</summary>
    public int DriftCents { get; init; }

    /// <summary>The length of the recording in seconds.</summary>
    public double Seconds { get; init; }

    /// <summary>The notes in the order in which they were sung; those left out stand where they would have been.</summary>
    public ValueList<TakeNote> Notes { get; init; }

    /// <summary>The lines of the drill in order.</summary>
    public ValueList<TakeLine> Lines { get; init; }

    /// <summary>The breaths in order.</summary>
    public ValueList<TakeBreath> Breaths { get; init; }

    /// <summary>Where the order of the lines was left.</summary>
    public ValueList<TakeEvent> Events { get; init; }

    /// <summary>The tempo of each line as it was sung.</summary>
    public ValueList<TakeTempo> Tempi { get; init; }

    /// <summary>What is uncertain, and why, in words.</summary>
    public ValueList<string> Doubts { get; init; }

    /// <summary>How much was sung of what.</summary>
    public override string ToString() => IsDrill
        ? string.Create(CultureInfo.InvariantCulture, $"{Notes.Count(n => n.Status == NoteStatus.Sung)} of {Notes.Count} notes sung in {Seconds:0.0} s")
        : OneLine.Of($"this is not the drill: {Reason}");
}
