namespace Warmup.Plans;

/// <summary>The exercises that begin and end a warm-up. They are the project's own settings.</summary>
public static class FramingExercises
{
    /// <summary>
    /// One to three neighbouring notes in the middle of the octave, counted in the scale's own places, on a lip trill or through a straw: sounds with
    /// the mouth half closed come first (common practice). Portillo et al. 2018, J Voice 32(2), found no difference between them and open vowels in what 30
    /// singers felt; after the open ones alone there were changes that could be an early tiring.
    /// </summary>
    public static ValueList<Exercise> Openings { get; } =
    [
        OwnExercise("opening", 1, "one held note on a lip trill", "figure(3).take(1).hold(6).sung(brr)"),
        OwnExercise("opening", 2, "one held note through a straw", "figure(3).take(1).hold(6).sung(straw)"),
        OwnExercise("opening", 3, "two notes down on a lip trill, each three times", "figure(4 4 4 3 3 3).take(1).sung(brr)"),
        OwnExercise("opening", 4, "two notes up through a straw, each three times", "figure(3 3 3 4 4 4).take(1).sung(straw)"),
        OwnExercise("opening", 5, "three notes down on a lip trill, each twice", "figure(5 5 4 4 3 3).take(1).sung(brr)"),
        OwnExercise("opening", 6, "three notes up through a straw, each twice", "figure(3 3 4 4 5 5).take(1).sung(straw)"),
    ];

    /// <summary>Lines that fall to the tonic.</summary>
    public static ValueList<Exercise> Descents { get; } =
    [
        OwnExercise("descent", 1, "the whole scale down", "run.mirrored"),
        OwnExercise("descent", 2, "five notes down", "run.notes(1 5).reversed"),
        OwnExercise("descent", 3, "the scale down in held notes", "run.mirrored.stretch(2)"),
        OwnExercise("descent", 4, "three, then five notes down", "run.notes(1 3).reversed + run.notes(1 5).reversed"),
        OwnExercise("descent", 5, "five notes down, then the whole scale", "run.notes(1 5).reversed + run.mirrored"),
        OwnExercise("descent", 6, "five notes down with a held last note", "run.notes(1 5).reversed.hold(3)"),
    ];

    /// <summary>
    /// Line by line as a warm-up has it: a hold to the end of the anga and a breath out of it. To the avartana's end, lines would be filled with
    /// silence, since no breath holds the last note so long.
    /// </summary>
    internal static Delivery LineByLine => Delivery.LineByLine with { Fill = Fill.Anga, FillBy = FillBy.Hold, BreathSeconds = new Rational(4, 5) };

    /// <summary>The cautions of every plan: the usual ones, and that of the sounds with which each warm-up begins.</summary>
    internal static ValueList<Caution> Cautions => [.. Warmup.Cautions.All, Warmup.Cautions.HalfClosed];

    /// <summary>How often the opening is sung: twice.</summary>
    internal const int OpeningTimes = 2;

    private static Exercise OwnExercise(string group, int number, string title, string pattern) =>
        new(group, number, title, Pattern.Parse(pattern), "the project's own setting");
}
