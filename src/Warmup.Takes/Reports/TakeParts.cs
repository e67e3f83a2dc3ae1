using System.Globalization;
using System.Text.Json.Serialization;

namespace Warmup.Takes;

/// <summary>A line of the drill in a take. Immutable, value equality.</summary>
[JsonConverter(typeof(UnsupportedJsonConverter<TakeLine>))]
public sealed record TakeLine
{
    /// <summary>Its number in its round, from 1.</summary>
    public required int Line { get; init; }

    /// <summary>Its round, from 1.</summary>
    public required int Round { get; init; }

    /// <summary>How often it was sung to its end.</summary>
    public required int Times { get; init; }

    /// <summary>How often it was begun and not sung to its end.</summary>
    public required int BrokenOff { get; init; }

    /// <summary>The notes that were heard of it, each time counted.</summary>
    public required int Heard { get; init; }

    /// <summary>Those of them that were in tune.</summary>
    public required int InTune { get; init; }

    /// <summary>The median distance from the drill's pitches, in whole cents; none where nothing was heard.</summary>
    public int? Cents { get; init; }
}

/// <summary>What a singer did otherwise than the drill's lines follow each other.</summary>
public enum TakeEventKind
{
    /// <summary>A line was sung again.</summary>
    Repeat,

    /// <summary>A line was left out.</summary>
    Skip,

    /// <summary>A line was begun, broken off and begun again.</summary>
    FalseStart,

    /// <summary>The take ends before the drill does.</summary>
    EarlyStop,
}

/// <summary>A departure from the order of the lines. Immutable, value equality; <c>default</c> is a repeat of no line.</summary>
/// <param name="Kind">What happened.</param>
/// <param name="Line">The number of the line in its round, from 1.</param>
/// <param name="Round">The round, from 1.</param>
/// <param name="Seconds">When, in seconds.</param>
[JsonConverter(typeof(UnsupportedJsonConverter<TakeEvent>))]
public readonly record struct TakeEvent(TakeEventKind Kind, int Line, int Round, double Seconds)
{
    /// <summary>What happened, in which line, and when.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{TakeJson.Word(Kind)} in line {Line} of round {Round} at {Seconds:0.0} s");
}

/// <summary>A breath in a take. Immutable, value equality; <c>default</c> has no length.</summary>
/// <param name="Onset">When it begins, in seconds.</param>
/// <param name="Seconds">How long it lasts, in seconds.</param>
/// <param name="AfterNote">The index of the note before it; none before the first.</param>
/// <param name="IsPlanned">Whether the drill has a breath or a rest there.</param>
[JsonConverter(typeof(UnsupportedJsonConverter<TakeBreath>))]
public readonly record struct TakeBreath(double Onset, double Seconds, int? AfterNote, bool IsPlanned)
{
    /// <summary>When it begins, and how long it lasts.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"at {Onset:0.00} s for {Seconds:0.00} s");
}

/// <summary>How fast a line was sung. Immutable, value equality; <c>default</c> has no tempo.</summary>
/// <param name="Onset">When the line begins, in seconds.</param>
/// <param name="Tempo">The tempo in aksharas a minute.</param>
[JsonConverter(typeof(UnsupportedJsonConverter<TakeTempo>))]
public readonly record struct TakeTempo(double Onset, double Tempo)
{
    /// <summary>The tempo, and from when on.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Tempo:0.#} from {Onset:0.0} s on");
}

/// <summary>A point of a note's course. Immutable, value equality; <c>default</c> is the drill's own pitch at the beginning.</summary>
/// <param name="Seconds">When, in seconds.</param>
/// <param name="Cents">How far the pitch lies above the drill's, in whole cents, apart from the take's offset and octave.</param>
[JsonConverter(typeof(UnsupportedJsonConverter<TakePoint>))]
public readonly record struct TakePoint(double Seconds, int Cents)
{
    /// <summary>The cents, and when.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Cents:+0;-0;0} at {Seconds:0.00} s");
}
