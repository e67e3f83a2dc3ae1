namespace Warmup.Testing;

/// <summary>Laws about how a rule's lines are sung that rules often claim.</summary>
public static class ScoreLaws
{
    /// <summary>The last line of each section ends at the same akshara as before.</summary>
    public static ScoreLaw KeepsLength { get; } = new("keeps the length", "end(f(d)) = end(d)", "The last line of each section ends at the same akshara as before.", (before, after) =>
        EachSection(before, after, static (one, other) => one.End == other.End));

    /// <summary>Each line begins at the same akshara as before.</summary>
    public static ScoreLaw KeepsLineStarts { get; } = new("keeps the starts of lines", "onsets of lines(f(d)) = onsets of lines(d)", "Each line begins at the same akshara as before.", (before, after) =>
        EachSection(before, after, static (one, other) => one.Lines.Select(l => l.Onset).SequenceEqual(other.Lines.Select(l => l.Onset))));

    /// <summary>No note is higher or lower than the highest and the lowest one before.</summary>
    public static ScoreLaw StaysInRange { get; } = new("stays in the range", "range(f(d)) lies in range(d)", "No note is higher or lower than those before.", (before, after) =>
        EachSection(before, after, static (one, other) =>
            other.Pitches.Max(p => p.Tone.Semitones) <= one.Pitches.Max(p => p.Tone.Semitones) && other.Pitches.Min(p => p.Tone.Semitones) >= one.Pitches.Min(p => p.Tone.Semitones)));

    /// <summary>Where a section ended with an avartana, it still does.</summary>
    public static ScoreLaw KeepsWholeAvartanas { get; } = new("keeps whole avartanas", "d fills its avartanas => f(d) fills its avartanas", "A section that ended with an avartana still ends with one.", (before, after) =>
    {
        var verdict = LawVerdict.SaysNothing;
        for (var s = 0; s < before.Sections.Count; s++)
        {
            if (EndsWhole(before.Sections[s]))
            {
                if (!EndsWhole(after.Sections[s]))
                {
                    return LawVerdict.Broken;
                }

                verdict = LawVerdict.Holds;
            }
        }

        return verdict;
    });

    /// <summary>The laws that need no argument.</summary>
    public static ValueList<ScoreLaw> All { get; } = [KeepsLength, KeepsLineStarts, StaysInRange, KeepsWholeAvartanas];

    private static bool EndsWhole(Section section) => !section.Meter.IsFree && section.IsLastAvartanaFull;

    private static LawVerdict EachSection(Score before, Score after, Func<Section, Section, bool> holds)
    {
        for (var s = 0; s < before.Sections.Count; s++)
        {
            if (!holds(before.Sections[s], after.Sections[s]))
            {
                return LawVerdict.Broken;
            }
        }

        return LawVerdict.Holds;
    }
}
