namespace Warmup.Plans;

/// <summary>Exercises on three to five neighbouring notes, for voices too narrow for an octave. They are the project's own settings.</summary>
/// <remarks>A child's or a changing voice is often no wider than a fifth. All of these lie from the tonic up.</remarks>
public static class NarrowExercises
{
    /// <summary>Middle drills; they belong to the group <c>neighbours</c>.</summary>
    public static ValueList<Exercise> Middle { get; } =
    [
        OwnExercise("neighbours", 1, "three notes up and back", "run.notes(1 3).there-and-back.each-line(4)"),
        OwnExercise("neighbours", 2, "three notes, each twice", "figure(1 1 2 2 3 3 2 2).take(1).each-line(4)"),
        OwnExercise("neighbours", 3, "four notes up and back", "run.notes(1 4).there-and-back.each-line(4)"),
        OwnExercise("neighbours", 4, "four notes down and back", "figure(4 3 2 1 2 3 4).take(1).each-line(4)"),
        OwnExercise("neighbours", 5, "four notes with a turn", "figure(1 2 1 2 3 4 3 2).take(1).each-line(4)"),
        OwnExercise("neighbours", 6, "four notes with a held top", "figure(1 2 3 4 3 2 1).rhythm(1 1 1 2 1 1 1).take(1).each-line(4)"),
        OwnExercise("neighbours", 7, "three notes from each of two places", "figure(1 2 3 2 1).take(1).each-line(2) + figure(2 3 4 3 2).take(1).each-line(2)"),
        OwnExercise("neighbours", 8, "five notes down and back", "figure(5 4 3 2 1 2 3 4 5).take(1).each-line(4)"),
        OwnExercise("neighbours", 9, "three notes from each of three places", "figure(1 2 3 2 1).take(1) + figure(2 3 4 3 2).take(1) + figure(3 4 5 4 3).take(1)"),
        OwnExercise("neighbours", 10, "thirds within five notes", "figure(1 3 2 4 3 5 4 2 1).take(1).each-line(4)"),
    ];

    /// <summary>What an opening becomes where the middle of the octave lies too high: the first by the first, and so on.</summary>
    public static ValueList<Exercise> Openings { get; } =
    [
        OwnExercise("opening", 1, "the tonic held on a lip trill", "figure(1).take(1).hold(6).sung(brr)"),
        OwnExercise("opening", 2, "the tonic held through a straw", "figure(1).take(1).hold(6).sung(straw)"),
        OwnExercise("opening", 3, "two notes down to the tonic on a lip trill, each three times", "figure(2 2 2 1 1 1).take(1).sung(brr)"),
        OwnExercise("opening", 4, "two notes up from the tonic through a straw, each three times", "figure(1 1 1 2 2 2).take(1).sung(straw)"),
        OwnExercise("opening", 5, "three notes down to the tonic on a lip trill, each twice", "figure(3 3 2 2 1 1).take(1).sung(brr)"),
        OwnExercise("opening", 6, "three notes up from the tonic through a straw, each twice", "figure(1 1 2 2 3 3).take(1).sung(straw)"),
    ];

    /// <summary>What a descent becomes where its top lies too high: the first by the first, and so on.</summary>
    public static ValueList<Exercise> Descents { get; } =
    [
        OwnExercise("descent", 1, "four notes down", "run.notes(1 4).reversed"),
        OwnExercise("descent", 2, "three notes down", "run.notes(1 3).reversed"),
        OwnExercise("descent", 3, "three notes down in held notes", "run.notes(1 3).reversed.stretch(2)"),
        OwnExercise("descent", 4, "two, then three notes down", "run.notes(1 2).reversed + run.notes(1 3).reversed"),
        OwnExercise("descent", 5, "three notes down, then four", "run.notes(1 3).reversed + run.notes(1 4).reversed"),
        OwnExercise("descent", 6, "three notes down with a held last note", "run.notes(1 3).reversed.hold(3)"),
    ];

    private static Exercise OwnExercise(string group, int number, string title, string pattern) =>
        new(group, number, title, Pattern.Parse(pattern), "the project's own setting");
}
