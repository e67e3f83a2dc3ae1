using System.Runtime.CompilerServices;
using System.Text.Json.Serialization;

namespace Warmup;

/// <summary>Notes sung as one phrase, at least one.</summary>
/// <remarks><c>default</c> is the middle S alone. Immutable, compared by value, safe to share between threads.</remarks>
[JsonConverter(typeof(UnsupportedJsonConverter<Line>))]
public readonly record struct Line
{
    private static readonly ValueList<LineNote> MiddleTonic = [default];

    private readonly ValueList<LineNote> _notes;

    /// <summary>Makes a line.</summary>
    /// <param name="notes">The notes, at least one.</param>
    /// <exception cref="ArgumentException">There are no notes.</exception>
    public Line(ValueList<LineNote> notes) =>
        _notes = notes.IsEmpty ? throw new ArgumentException("a line must have at least one note", nameof(notes)) : notes;

    /// <summary>The notes, at least one.</summary>
    public ValueList<LineNote> Notes => _notes.IsEmpty ? MiddleTonic : _notes;

    /// <summary>The number of notes.</summary>
    internal int Count => _notes.IsEmpty ? 1 : _notes.Count;

    /// <summary>The length in units, silences included.</summary>
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

    /// <summary>Whether every note sounds as the other line's does.</summary>
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

    /// <summary>The notes as a span.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal ReadOnlySpan<LineNote> AsSpan() => _notes.IsEmpty ? MiddleTonic.AsSpan() : _notes.AsSpan();

    /// <summary>Equality of the notes.</summary>
    /// <param name="other">The other line.</param>
    public bool Equals(Line other) => Notes == other.Notes;

    /// <inheritdoc/>
    public override int GetHashCode() => Notes.GetHashCode();

    /// <summary>The notes of several lines together.</summary>
    internal static long CountNotes(ReadOnlySpan<Line> lines)
    {
        var count = 0L;
        foreach (ref readonly var line in lines)
        {
            count += line.Count;
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

    /// <summary>The line with its last note changed.</summary>
    internal Line WithLast(Func<LineNote, LineNote> change)
    {
        var notes = Notes.AsSpan().ToArray();
        notes[^1] = change(notes[^1]);
        return new Line(ValueList.Adopt(notes));
    }

    /// <summary>The tones, separated by spaces: <c>S R2 G3</c>; at most 200 characters.</summary>
    public override string ToString() => OneLine.Of(ToTones());

    /// <summary>The tones, separated by spaces: <c>S R2 G3</c>.</summary>
    public string ToTones() => string.Join(' ', Notes);

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
