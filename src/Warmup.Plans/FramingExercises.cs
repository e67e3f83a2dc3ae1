namespace Warmup.Plans;

/// <summary>The exercises that begin and end a warm-up. They are the project's own settings.</summary>
public static class FramingExercises
{
    /// <summary>Figures of three neighbouring notes in the middle of the octave, counted in the scale's own places.</summary>
    public static ValueList<Exercise> Openings { get; } =
    [
        OwnExercise("opening", 1, "up and back in the middle", "figure(3 4 5 4 3).take(1)"),
        OwnExercise("opening", 2, "down and back in the middle", "figure(5 4 3 4 5).take(1)"),
        OwnExercise("opening", 3, "around a middle note, below first", "figure(4 3 4 5 4).take(1)"),
        OwnExercise("opening", 4, "around a middle note, above first", "figure(4 5 4 3 4).take(1)"),
        OwnExercise("opening", 5, "a step with held ends", "figure(3 4 3).rhythm(2 1 1).take(1)"),
        OwnExercise("opening", 6, "each of three notes twice", "figure(3 3 4 4 5 5).take(1)"),
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

    /// <summary>How often the opening is sung: twice.</summary>
    internal const int OpeningTimes = 2;

    private static Exercise OwnExercise(string group, int number, string title, string pattern) =>
        new(group, number, title, Pattern.Parse(pattern), "the project's own setting");
}
