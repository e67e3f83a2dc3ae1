using System.Text.Json.Serialization;

namespace Warmup;

/// <summary>How a note of a line is reached from the one before it.</summary>
public enum Approach
{
    /// <summary>By a leap or a step of a figure, or it is the first note: nothing lies between.</summary>
    Leap,

    /// <summary>As part of a run over the ascent.</summary>
    Ascent,

    /// <summary>As part of a run over the descent.</summary>
    Descent,
}

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

/// <summary>Notes sung as one phrase.</summary>
/// <param name="Notes">The notes, at least one.</param>
public sealed record Line(ValueList<LineNote> Notes)
{
    /// <summary>The length in units, the silences counted.</summary>
    public Rational Units
    {
        get
        {
            var sum = Rational.Zero;
            foreach (var note in Notes)
            {
                sum += note.Length + note.Rest;
            }

            return sum;
        }
    }

    /// <summary>Whether every note sounds as the other line's.</summary>
    /// <param name="other">The other line.</param>
    public bool SoundsAs(Line other)
    {
        if (Notes.Count != other.Notes.Count)
        {
            return false;
        }

        for (var i = 0; i < Notes.Count; i++)
        {
            if (!Notes[i].SoundsAs(other.Notes[i]))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The notes of several lines together.</summary>
    internal static long CountNotes(ReadOnlySpan<Line> lines)
    {
        var count = 0L;
        foreach (var line in lines)
        {
            count += line.Notes.Count;
        }

        return count;
    }

    /// <summary>A part of the line; its first note is reached from nowhere.</summary>
    internal Line Part(int start, int count)
    {
        var notes = Notes.AsSpan().Slice(start, count).ToArray();
        notes[0] = notes[0] with { Approach = Approach.Leap };
        return new Line(ValueList.Adopt(notes));
    }

    /// <summary>The tones, separated by spaces: <c>S R2 G3</c>.</summary>
    public override string ToString() => string.Join(' ', Notes);

    /// <summary>The letters without variants or lengths, separated by spaces: <c>S R G</c>.</summary>
    public string ToLetters() => string.Join(' ', Notes.ConvertAll(n => n.Tone.ToLetterString()));

    /// <summary>
    /// The letters as written exercises have them: <c>,</c> for each further unit and <c>-</c> for each unit of silence, as in
    /// <c>S' , , -</c>. Parts of a unit are not shown.
    /// </summary>
    public string ToNotation() => string.Join(' ', Notes.ConvertAll(Written));

    private static string Written(LineNote note)
    {
        var more = Math.Max(0, (int)note.Length.Floor() - 1);
        var silent = (int)note.Rest.Floor();
        return note.Tone.ToLetterString() + string.Concat(Enumerable.Repeat(" ,", more)) + string.Concat(Enumerable.Repeat(" -", silent));
    }
}
