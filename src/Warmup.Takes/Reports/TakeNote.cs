using System.Globalization;
using System.Text.Json.Serialization;

namespace Warmup.Takes;

/// <summary>A note of the drill in a take. Immutable, value equality.</summary>
[JsonConverter(typeof(UnsupportedJsonConverter<TakeNote>))]
public sealed record TakeNote
{
    /// <summary>The index of the note among all notes of the score, from 0.</summary>
    public required int Index { get; init; }

    /// <summary>The number of its line in its round, from 1.</summary>
    public required int Line { get; init; }

    /// <summary>Its round, from 1, counted through all sections.</summary>
    public required int Round { get; init; }

    /// <summary>What became of it.</summary>
    public required NoteStatus Status { get; init; }

    /// <summary>The tone that the drill has.</summary>
    public required ScaleTone Tone { get; init; }

    /// <summary>When the voice began, or the middle of the glide from the note before, in seconds; none where it was left out.</summary>
    public double? Onset { get; init; }

    /// <summary>When it ended, in seconds; none where it was left out.</summary>
    public double? End { get; init; }

    /// <summary>
    /// How far its mean lies above the drill's pitch, in whole cents, apart from the take's offset and octave; none where it was left out or
    /// nothing could be measured.
    /// </summary>
    public int? Cents { get; init; }

    /// <summary>The standard deviation of its pitch through its middle, in whole cents, without vibrato.</summary>
    public int? Spread { get; init; }

    /// <summary>Half the extent of its vibrato in whole cents; 0 where none was found.</summary>
    public int? Vibrato { get; init; }

    /// <summary>How late it began against the beat of its line, as that line was sung, in milliseconds; negative where it was early.</summary>
    public int? Late { get; init; }

    /// <summary>The tone that was heard, where it was another.</summary>
    public ScaleTone? SungTone { get; init; }

    /// <summary>The course of its pitch, about every 20 ms where one was heard; for the picture, not in the JSON.</summary>
    public ValueList<TakePoint> Course { get; init; }

    /// <summary>Why it is not sure, in words.</summary>
    public string? Why { get; init; }

    /// <summary>The tone, what became of it, and where.</summary>
    public override string ToString() => OneLine.Of(string.Create(
        CultureInfo.InvariantCulture, $"{Tone} of line {Line}: {TakeJson.Word(Status)}{(Onset is { } onset ? string.Create(CultureInfo.InvariantCulture, $" at {onset:0.00} s") : string.Empty)}{(Cents is { } cents ? $", {cents} cents" : string.Empty)}"));
}
