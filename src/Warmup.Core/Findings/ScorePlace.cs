using System.Text.Json.Serialization;
using System.Globalization;

namespace Warmup;

/// <summary>A place in a score as people count: the section and the line from 1; and the time from the section's beginning, from 0.</summary>
/// <remarks>
/// A score gives the place of each of its notes. <c>default</c> is the first line of the first section. Immutable, value equality.
/// </remarks>
[JsonConverter(typeof(UnsupportedJsonConverter<ScorePlace>))]
public readonly record struct ScorePlace
{
    private const int LongestTitle = 60;

    private readonly int _sectionLessOne;
    private readonly int _lineLessOne;

    /// <summary>Names a place.</summary>
    /// <param name="section">The section, counted from 1.</param>
    /// <param name="line">The line of the section, counted from 1.</param>
    /// <param name="beat">Aksharas from the section's beginning, 0 or more; <see langword="null"/> where the line is not in time yet.</param>
    /// <param name="title">The section's title where the score has several sections; <see langword="null"/> where it has one.</param>
    /// <exception cref="ArgumentException">A number lies below its range, or the title holds control characters.</exception>
    public ScorePlace(int section, int line, Rational? beat = null, string? title = null)
    {
        _sectionLessOne = Require.InRange(section, 1, int.MaxValue) - 1;
        _lineLessOne = Require.InRange(line, 1, int.MaxValue) - 1;
        Beat = beat is { Sign: < 0 }
            ? throw new ArgumentOutOfRangeException(nameof(beat), beat, $"beat must be 0 or more, not {beat}")
            : beat;
        Title = title is null ? null : Require.PlainText(title, int.MaxValue);
    }

    /// <summary>The section, counted from 1.</summary>
    public int Section => _sectionLessOne + 1;

    /// <summary>The line of the section, counted from 1.</summary>
    public int Line => _lineLessOne + 1;

    /// <summary>
    /// The time from the section's beginning in aksharas, as in <see cref="ScoreNote.Onset"/>: 0 at its first akshara, which people and sheets call
    /// akshara 1. <see langword="null"/> where the line is not in time yet.
    /// </summary>
    public Rational? Beat { get; }

    /// <summary>The section's title where the score has several sections; <see langword="null"/> where it has one.</summary>
    public string? Title { get; }

    /// <summary><c>line 3</c>; where the score has several sections <c>line 3 of section 2 'Lifts'</c>.</summary>
    public override string ToString()
    {
        var line = string.Create(CultureInfo.InvariantCulture, $"line {Line}");
        var section = Title is null && Section == 1 ? string.Empty : string.Create(CultureInfo.InvariantCulture, $" of section {Section}");
        return line + section + (Title is null ? string.Empty : $" '{OneLine.Cut(Title, LongestTitle)}'");
    }

    /// <summary>The same place where other sections come before its own.</summary>
    internal ScorePlace After(int sections, string title) => new(Section + sections, Line, Beat, title);
}
