using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Warmup.Research;

namespace Warmup.Voices;

/// <summary>What is counted and measured of a pattern in a scale, for those who compare many.</summary>
/// <remarks>
/// The difficulty is that of the lines alone, always sung in the same way: on C4, in equal tuning, without a tala, one note a second, line after line
/// (the project's own choice, <see cref="SungAs"/>). Immutable, value equality.
/// </remarks>
public sealed record PatternFacts
{
    private PatternFacts(Pattern pattern, Scale scale, Difficulty difficulty, IntervalCounts intervals, SymmetryLaws laws) =>
        (Pattern, Scale, Difficulty, Intervals, Laws) = (pattern, scale, difficulty, intervals, laws);

    /// <summary>The pattern.</summary>
    public Pattern Pattern { get; }

    /// <summary>The scale.</summary>
    public Scale Scale { get; }

    /// <summary>The number of lines, at least 1.</summary>
    public int Lines { get; private init; }

    /// <summary>The number of notes in all lines.</summary>
    public int Notes { get; private init; }

    /// <summary>The number of notes of the longest line.</summary>
    public int LongestLine { get; private init; }

    /// <summary>The lowest note, in semitones above the tonic; below it the number is negative.</summary>
    public int Lowest { get; private init; }

    /// <summary>The highest note, in semitones above the tonic.</summary>
    public int Highest { get; private init; }

    /// <summary>The intervals between neighbouring notes of a line, by kind.</summary>
    public IntervalCounts Intervals { get; }

    /// <summary>What makes the lines hard to sing; <see cref="Difficulty.DirectionChanges"/> are their turns.</summary>
    public Difficulty Difficulty { get; }

    /// <summary>The laws of symmetry that hold.</summary>
    public SymmetryLaws Laws { get; }

    /// <summary>The drill whose difficulty is measured: on C4, in equal tuning, without a tala, one note a second, line after line.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="scale">The scale.</param>
    public static Drill SungAs(Pattern pattern, Scale scale)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        ArgumentNullException.ThrowIfNull(scale);

        // The usual title would describe the pattern, which takes longer than everything else.
        return new() { Pattern = pattern, Scale = scale, Tonic = Tonic.FromMidi(60), Meter = Meter.Free, Title = scale.Name };
    }

    /// <summary>Counts and measures a pattern in a scale, or says why there is nothing to measure.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="scale">The scale.</param>
    /// <param name="facts">What was found, or <see langword="null"/>.</param>
    /// <param name="refusal">Why the scale gives no such lines or nobody could sing them, and what would clear it; or <see langword="null"/>.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <returns>Whether there are lines to sing.</returns>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static bool TryMeasure(
        Pattern pattern, Scale scale, [NotNullWhen(true)] out PatternFacts? facts, [NotNullWhen(false)] out Finding? refusal, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        ArgumentNullException.ThrowIfNull(scale);
        facts = null;
        if (!pattern.TryExpand(scale, out var expansion, out refusal, cancellationToken)
            || !(SungAs(pattern, scale) with { Expansion = expansion }).TryToScore(out var score, out refusal, cancellationToken))
        {
            return false;
        }

        var (longest, lowest, highest) = (0, int.MaxValue, int.MinValue);
        foreach (var line in expansion.Lines)
        {
            longest = Math.Max(longest, line.Notes.Count);
            foreach (var note in line.Notes)
            {
                lowest = Math.Min(lowest, note.Tone.Semitones);
                highest = Math.Max(highest, note.Tone.Semitones);
            }
        }

        refusal = null;
        facts = new PatternFacts(pattern, scale, Difficulty.Of(score), IntervalCounts.Of(expansion.Lines), SymmetryLaws.Of(pattern, scale, cancellationToken))
        {
            Lines = expansion.Lines.Count,
            Notes = expansion.NoteCount,
            LongestLine = longest,
            Lowest = lowest,
            Highest = highest,
        };
        return true;
    }

    /// <summary>The pattern, the scale and the counts in one line.</summary>
    public override string ToString() => OneLine.Of(string.Create(
        CultureInfo.InvariantCulture, $"{Lines} lines, {Notes} notes from {Lowest} to {Highest}, difficulty {Difficulty.Score()}: {OneLine.Cut(Pattern.ToString(), 80)} in {OneLine.Cut(Scale.Name, 40)}"));
}
