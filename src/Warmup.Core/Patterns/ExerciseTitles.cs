namespace Warmup;

/// <summary>What each traditional exercise is, in a few words: what its lines show.</summary>
internal static class ExerciseTitles
{
    private static readonly string[] Sarali =
    [
        "the scale up and down",
        "two notes three times, then the scale",
        "three notes again and again, then the scale",
        "four notes twice, then the scale",
        "up to a held fifth and on from the tonic, then the scale",
        "up to the sixth and on from the tonic, then the scale",
        "up to a held seventh, then the scale",
        "up to the fifth and back by step, then the scale",
        "up to the fifth and turns around it, then the scale",
        "up to a held P, then turns above and below it",
        "down from the upper S with held notes",
        "down from the upper S with doubled notes",
        "turns with held notes that climb from S to N",
        "a held P with doubled notes around it, then up to the upper S and down",
    ];

    private static readonly string[] Janta =
    [
        "each note of the scale twice",
        "four doubled notes from each degree",
        "two doubled notes and four single ones, then four doubled notes",
        "two doubled notes with the first of each held, then doubled notes",
        "three notes three times each with the last twice, then four doubled notes",
        "three steps with a doubled middle, then four doubled notes",
        "each note three times, the first time held",
        "each note four times",
        "doubled notes three up and two back, then four doubled notes",
        "a doubled note and its upper neighbour, then four doubled notes",
        "two doubled notes with the second of each held, then doubled notes",
    ];

    private static readonly string[] Datu =
    [
        "a leap of a fourth and back by step",
        "a leap of a third and a turn",
        "fourths and thirds, then a leap of a fourth and back by step",
        "leaps that grow from a step to a third, then a third and a turn",
        "a step, thirds and fourths, then a leap of a fourth and back by step",
        "fourths and thirds, then a leap of a third and a turn",
    ];

    private static readonly string[] Melsthayi = ["as far as R", "as far as R, with turns", "as far as G", "as far as M", "as far as P"];

    private static readonly string[] Mandrasthayi = ["as far as N", "as far as N, with turns", "as far as D", "as far as P"];

    private static readonly string[] Karvai = ["long notes on S, P and the upper S", "akara: the long notes on the vowel a"];

    /// <summary>The title of an exercise.</summary>
    /// <param name="group">Its group.</param>
    /// <param name="number">Its number in the group, from 1.</param>
    /// <param name="tala">The name of its tala.</param>
    public static string Of(string group, int number, string tala) => group switch
    {
        "sarali" => $"sarali varisai {number}: {Sarali[number - 1]}",
        "janta" => $"janta varisai {number}: {Janta[number - 1]}",
        "datu" => $"datu varisai {number}: {Datu[number - 1]}",
        "melsthayi" => $"melsthayi varisai {number}: into the upper octave, {Melsthayi[number - 1]}",
        "mandrasthayi" => $"mandrasthayi varisai {number}: into the lower octave, {Mandrasthayi[number - 1]}",
        "karvai" => Karvai[number - 1],
        _ => $"alankara {number}: a figure from each degree in {tala}",
    };
}
