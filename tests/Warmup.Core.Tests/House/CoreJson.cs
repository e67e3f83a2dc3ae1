using System.Text.Json.Serialization;

namespace Warmup.Tests;

/// <summary>What a caller keeps: values of the library inside a type of the caller's own.</summary>
public sealed class Kept
{
    public Scale? Scale { get; set; }

    public TempoRamp? Tempo { get; set; }

    public ValueList<Speed> Speeds { get; set; }

    public ValueList<string> Words { get; set; }

    public Dictionary<Degree, int> Cents { get; set; } = [];

    public Tonic? Tonic { get; set; }
}

/// <summary>A source-generated context with every public value of the core, as a caller would write it.</summary>
[JsonSerializable(typeof(Kept))]
[JsonSerializable(typeof(string))]
[JsonSerializable(typeof(Anga))]
[JsonSerializable(typeof(Breath))]
[JsonSerializable(typeof(CatalogueEntry))]
[JsonSerializable(typeof(Caution))]
[JsonSerializable(typeof(Climb))]
[JsonSerializable(typeof(Degree))]
[JsonSerializable(typeof(Delivery))]
[JsonSerializable(typeof(Drill))]
[JsonSerializable(typeof(Drone))]
[JsonSerializable(typeof(DroneStroke))]
[JsonSerializable(typeof(DroneStyle))]
[JsonSerializable(typeof(Exercise))]
[JsonSerializable(typeof(Expansion))]
[JsonSerializable(typeof(Finding))]
[JsonSerializable(typeof(Interval))]
[JsonSerializable(typeof(Line))]
[JsonSerializable(typeof(LineNote))]
[JsonSerializable(typeof(Measure))]
[JsonSerializable(typeof(Meter))]
[JsonSerializable(typeof(ModalShift))]
[JsonSerializable(typeof(NoteName))]
[JsonSerializable(typeof(Pattern))]
[JsonSerializable(typeof(PatternWord))]
[JsonSerializable(typeof(Rational))]
[JsonSerializable(typeof(ScalaFile))]
[JsonSerializable(typeof(Scale))]
[JsonSerializable(typeof(ScaleKind))]
[JsonSerializable(typeof(ScaleTone))]
[JsonSerializable(typeof(Score))]
[JsonSerializable(typeof(ScoreLine))]
[JsonSerializable(typeof(ScoreNote))]
[JsonSerializable(typeof(ScorePitch))]
[JsonSerializable(typeof(Section))]
[JsonSerializable(typeof(Speed))]
[JsonSerializable(typeof(Syllables))]
[JsonSerializable(typeof(SymmetryLaws))]
[JsonSerializable(typeof(TempoChange))]
[JsonSerializable(typeof(TempoRamp))]
[JsonSerializable(typeof(TextError))]
[JsonSerializable(typeof(Tonic))]
[JsonSerializable(typeof(Tuning))]
[JsonSerializable(typeof(PatternVocabulary))]
public sealed partial class CoreJson : JsonSerializerContext;
