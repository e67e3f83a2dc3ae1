using Warmup.Research;

namespace Warmup.Samples;

/// <summary>The columns of the table of patterns, in order. docs/table.md shows them, and a test keeps the two in step.</summary>
internal static class TableColumns
{
    private const string Semitones = "semitones";
    private const string Share = "0 to 1";

    public static IReadOnlyList<TableColumn> All { get; } =
    [
        new TextColumn("source", $"Where the pattern comes from: {TableRow.Enumerated}, or a file and the place in it", r => r.Source),
        new LongColumn("index", "from 0", "The index of the normal form in the enumeration over the vocabulary; empty where that does not list it", r => r.Index),
        new TextColumn("pattern", "The pattern's text, which the program and the library read back; empty where none could be made of what was read", r => r.Pattern?.ToString()),
        new TextColumn("normal_form", "The text of the normal form; two patterns with equal normal forms sing the same in every scale", r => r.NormalForm?.ToString()),
        new WholeColumn("size", "parts", "The number of parts of the pattern: primitives and combinators together", r => r.Pattern?.Nodes),
        new TextColumn("scale", "The name of the scale", r => r.Scale.Name),
        new TextColumn("scale_notes", "The scale written out: the ascent, and after / the descent where it is not the ascent in reverse", r => r.Scale.ToNotesText()),
        new TruthColumn("scale_same_both_ways", "Whether the descent is the ascent in reverse", r => r.Scale.IsSymmetric),
        new TruthColumn("scale_zigzags", "Whether the ascent or the descent zigzags (vakra)", r => r.Scale.IsVakra),
        new TextColumn("refused", "The code of the refusal where the scale gives no such lines or nobody could sing them; empty where the row was measured, and then all cells that follow refusal are filled but some laws", r => r.Refusal?.Code),
        new TextColumn("refusal", "Why the row was refused, and what would clear it", r => r.Refusal?.Describe()),
        OfFacts("lines", "lines", "The number of lines", f => f.Lines),
        OfFacts("notes", "notes", "The number of notes in all lines", f => f.Notes),
        OfFacts("longest_line", "notes", "The number of notes of the longest line", f => f.LongestLine),
        OfFacts("lowest", Semitones, "The lowest note above the tonic; negative below it", f => f.Lowest),
        OfFacts("highest", Semitones, "The highest note above the tonic", f => f.Highest),
        OfFacts("unisons", "intervals", "Intervals of 0 semitones between neighbouring notes of a line, as all intervals here", f => f.Intervals.Unisons),
        OfFacts("steps", "intervals", "Intervals of 1 or 2 semitones", f => f.Intervals.Steps),
        OfFacts("thirds", "intervals", "Intervals of 3 or 4 semitones", f => f.Intervals.Thirds),
        OfFacts("fourths", "intervals", "Intervals of 5 semitones", f => f.Intervals.Fourths),
        OfFacts("tritones", "intervals", "Intervals of 6 semitones", f => f.Intervals.Tritones),
        OfFacts("fifths", "intervals", "Intervals of 7 semitones", f => f.Intervals.Fifths),
        OfFacts("sixths", "intervals", "Intervals of 8 or 9 semitones", f => f.Intervals.Sixths),
        OfFacts("sevenths", "intervals", "Intervals of 10 or 11 semitones", f => f.Intervals.Sevenths),
        OfFacts("octaves", "intervals", "Intervals of 12 semitones", f => f.Intervals.Octaves),
        OfFacts("beyond_octave", "intervals", "Intervals of 13 semitones and more", f => f.Intervals.BeyondOctave),
        OfFacts("turns", "notes", "The notes within lines at which the direction changes", f => f.Difficulty.DirectionChanges),
        OfFacts("difficulty", "points", "The weighed sum of the eight measures marked with a weight, rounded; the weights are the project's own", f => f.Difficulty.Score()),
        OfFacts("span", Semitones, $"From the lowest to the highest note; weight {W.Span}", f => f.Difficulty.SpanSemitones),
        OfFacts("largest_leap", Semitones, "The largest interval; without a weight", f => f.Difficulty.LargestLeapSemitones),
        OfFacts("mean_leap", Semitones, "The mean interval; without a weight", f => f.Difficulty.MeanLeapSemitones),
        OfFacts("hardest_leap_rank", "rank", $"The rank of the hardest interval: 0 unison, 1 step, 2 third, 3 fifth and octave, 4 fourth and sixth, 5 seventh, 6 tritone, more beyond the octave; weight {W.HardestLeap}", f => f.Difficulty.HardestLeapRank),
        OfFacts("mean_leap_rank", "rank", $"The mean rank of the intervals; weight {W.MeanLeap}", f => f.Difficulty.MeanLeapRank),
        OfFacts("turn_share", Share, $"The share of notes at which the direction changes, among those at which it could; weight {W.Turns}", f => f.Difficulty.TurnShare),
        OfFacts("rising_share", Share, $"The share of intervals that rise, among those that are not unisons; weight {W.Rising}", f => f.Difficulty.RisingShare),
        OfFacts("starts_away_share", Share, $"The share of lines that do not start on the tonic of some octave; weight {W.StartsAway}", f => f.Difficulty.StartsAwayShare),
        OfFacts("far_landing_share", Share, $"The share of leaps (a third or more) that land more than 25 cents from every partial up to the eighth of a tanpura's strings; weight {W.FarLandings}", f => f.Difficulty.FarLandingShare),
        OfFacts("notes_per_second", "notes/s", $"How fast notes follow each other within lines, with one unit a second; weight {W.NotesPerSecond}", f => f.Difficulty.NotesPerSecond),
        OfLaws("is_palindrome", "Whether each line reads the same in both directions", l => l.IsPalindrome),
        OfLaws("is_last_first", "Whether last-first(p) = p", l => l.IsLastFirst),
        OfLaws("is_reversed", "Whether reversed(p) = p", l => l.IsReversed),
        OfLaws("is_mirrored", "Whether mirrored(p) = p", l => l.IsMirrored),
        OfLaws("is_swapped", "Whether swapped(p) = p", l => l.IsSwapped),
        OfLaws("is_backwards", "Whether backwards(p) = p", l => l.IsBackwards),
        OfLaws("is_turned_alike", "Whether backwards(p) = reversed(p)", l => l.IsTurnedAlike),
        OfLaws("is_undone_backwards", "Whether backwards(backwards(p)) = p", l => l.IsUndoneBackwards),
    ];

    private static DifficultyWeights W => DifficultyWeights.Default;

    private static WholeColumn OfFacts(string name, string unit, string meaning, Func<PatternFacts, int> of) => new(name, unit, meaning, r => r.Facts is { } facts ? of(facts) : null);

    private static NumberColumn OfFacts(string name, string unit, string meaning, Func<PatternFacts, Rational> of) => new(name, unit, meaning, r => r.Facts is { } facts ? of(facts).ToDouble() : null);

    // Empty, too, where the scale refuses one of a law's sides.
    private static TruthColumn OfLaws(string name, string meaning, Func<SymmetryLaws, bool?> of) => new(name, $"{meaning}; empty where the scale refuses one of the two", r => r.Facts is { } facts ? of(facts.Laws) : null);
}
