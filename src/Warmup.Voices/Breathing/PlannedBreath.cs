using System.Globalization;

namespace Warmup.Voices;

/// <summary>A breath of a plan. Immutable, value equality.</summary>
public sealed record PlannedBreath
{
    internal PlannedBreath(ScorePlace place, int afterNote, int noteInLine, Rational length, bool isAtLineEnd, int cost, int harm) =>
        (Place, AfterNote, NoteInLine, Length, IsAtLineEnd, Cost, Harm) = (place, afterNote, noteInLine, length, isAtLineEnd, cost, harm);

    /// <summary>The section and the line of the note before it, and where the breath begins: that note ends there.</summary>
    public ScorePlace Place { get; }

    /// <summary>The index of the note before it in the section's notes.</summary>
    public int AfterNote { get; }

    /// <summary>The place of that note in its line, counted from 1.</summary>
    public int NoteInLine { get; }

    /// <summary>Its onset in aksharas from the section's beginning.</summary>
    public Rational Onset => Place.Beat ?? Rational.Zero;

    /// <summary>Its length in aksharas.</summary>
    public Rational Length { get; }

    /// <summary>Whether the note before is the last of its line.</summary>
    public bool IsAtLineEnd { get; }

    /// <summary>Its cost.</summary>
    public int Cost { get; }

    /// <summary>Its harm.</summary>
    public int Harm { get; }

    /// <summary>Whether a held note is let go earlier than the shortest breath alone needs.</summary>
    public bool IsEarlyRelease { get; internal init; }

    /// <summary>The place in words: <c>after line 3</c>, <c>in line 4 after note 2</c>.</summary>
    public override string ToString()
    {
        var place = IsAtLineEnd ? $"after {Place}" : string.Create(CultureInfo.InvariantCulture, $"in {Place} after note {NoteInLine}");
        return IsEarlyRelease ? $"{place}, let go early" : place;
    }
}
