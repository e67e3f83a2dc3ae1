namespace Warmup.Plans;

/// <summary>
/// Short figures that are sung again a semitone higher each time, up and back, as choirs warm up (common practice, from memory). The figures'
/// lengths and vowels are the project's own choice.
/// </summary>
/// <remarks>Each lies from the tonic up, and its last note fills the bar; between the rounds the new tonic is heard for a bar (<see cref="Cue"/>).</remarks>
public static class ClimbingExercises
{
    /// <summary>The group's name.</summary>
    internal const string Group = "climb";

    /// <summary>The figures; they belong to the group <c>climb</c>.</summary>
    public static ValueList<Exercise> All { get; } =
    [
        OwnExercise(1, "three notes up and back", "run.notes(1 3).there-and-back.sung(no)"),
        OwnExercise(2, "five notes down on a lip trill", "run.notes(1 5).reversed.sung(brr)"),
        OwnExercise(3, "five notes down through a straw", "run.notes(1 5).reversed.sung(straw)"),
        OwnExercise(4, "five notes up and back", "run.notes(1 5).there-and-back.sung(mi)"),
        OwnExercise(5, "1-3-5-3-1", "[S G P G S].sung(ma)"),
        OwnExercise(6, "1-3-5-8-5-3-1", "[S G P S' P G S].sung(i e a o a e i)"),
    ];

    /// <summary>Each round's last note is held to the end of its bar, and the breath is taken out of it.</summary>
    internal static Delivery LineByLine => Delivery.LineByLine with { BreathSeconds = new Rational(4, 5) };

    /// <summary>The new tonic, held for half a bar; the other half is for breathing in.</summary>
    internal static Pattern Cue => Climb.TonicNote;

    /// <summary>The title of a figure that climbs.</summary>
    internal static string TitleOf(Exercise exercise, int semitones) =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{exercise.Title}, climbing {semitones} {(semitones == 1 ? "semitone" : "semitones")} and back");

    private static Exercise OwnExercise(int number, string title, string pattern) =>
        new(Group, number, title, Pattern.Parse(pattern), "common practice of choirs, from memory", "4/4", Speed.Second);
}
