using System.Text.Json.Serialization;

namespace Warmup;

/// <summary>One note of a line: a tone of the scale, its length in units, and the silence behind it.</summary>
/// <param name="Tone">The tone.</param>
/// <param name="Direction">The list of the scale it was taken from.</param>
/// <param name="Approach">How it is reached from the note before.</param>
/// <param name="Length">Its length in units, above 0. A unit is one note of the chosen speed.</param>
[JsonConverter(typeof(UnsupportedJsonConverter<LineNote>))]
public readonly record struct LineNote(ScaleTone Tone, ScaleDirection Direction, Approach Approach, Rational Length)
{
    // Lines are many and held for long, so a note is kept small: what most notes have not stands apart.
    private readonly byte _direction = (byte)Direction;
    private readonly byte _approach = (byte)Approach;
    private readonly Further? _further;

    /// <summary>The longest note or silence, in units; the shortest is 1 divided by it (the project's own bound).</summary>
    public const int LongestUnits = 4_096;

    /// <summary>The list of the scale it was taken from.</summary>
    public ScaleDirection Direction
    {
        get => (ScaleDirection)_direction;
        init => _direction = (byte)value;
    }

    /// <summary>How it is reached from the note before.</summary>
    public Approach Approach
    {
        get => (Approach)_approach;
        init => _approach = (byte)value;
    }

    /// <summary>The silence behind the note, in units; 0 by default.</summary>
    public Rational Rest
    {
        get => _further is null ? default : _further.Rest;
        init => _further = Further.Of(value, Sung);
    }

    /// <summary>What is sung on it; <see langword="null"/> where the drill's syllables decide.</summary>
    public string? Sung
    {
        get => _further?.Sung;
        init => _further = Further.Of(Rest, value);
    }

    /// <summary>Whether there is silence behind the note.</summary>
    internal bool HasRest => _further is not null && _further.Rest.Sign != 0;

    /// <summary>The note's tone, length, silence and text are the other's: what a listener hears, not how the note came about.</summary>
    /// <param name="other">The other note.</param>
    public bool SoundsAs(LineNote other) => Tone == other.Tone && Length == other.Length && Rest == other.Rest && Sung == other.Sung;

    /// <summary>The tone's text form.</summary>
    public override string ToString() => Tone.ToString();

    /// <summary>A silence, a text, or both.</summary>
    private sealed record Further(Rational Rest, string? Sung)
    {
        public static Further? Of(Rational rest, string? sung) => rest.Sign == 0 && sung is null ? null : new(rest, sung);
    }
}
