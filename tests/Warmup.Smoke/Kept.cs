using System.Text.Json.Serialization;
using Warmup;

/// <summary>Values of the library inside a type of one's own, read and written by a source-generated context.</summary>
internal sealed record Kept
{
    public required Scale Scale { get; init; }

    public required Tuning Tuning { get; init; }

    public required Meter Meter { get; init; }

    public required Pattern Pattern { get; init; }

    public required Syllables Syllables { get; init; }

    public ValueList<Speed> Speeds { get; init; }

    public ValueList<Rational> Tempi { get; init; }

    public ValueList<string> Words { get; init; }
}

[JsonSerializable(typeof(Kept))]
[JsonSerializable(typeof(string))]
[JsonSerializable(typeof(Speed))]
[JsonSerializable(typeof(Rational))]
[JsonSerializable(typeof(ScoreNote))]
internal sealed partial class KeptJson : JsonSerializerContext;
