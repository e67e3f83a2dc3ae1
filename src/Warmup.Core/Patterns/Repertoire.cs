using System.Globalization;

namespace Warmup;

/// <summary>The exercises of common practice: the traditional groups and what choirs sing.</summary>
/// <remarks>
/// The regular exercises count places and follow any scale; a run that falls short of its units holds its last note. The irregular ones
/// (the long notes, sarali 10 to 14 and the two sthayi groups) are pinned to their letters: a scale without one of them refuses the exercise
/// and names the letter. Any of them can be sung as akara, on a vowel: <see cref="Syllables.Vowel"/>.
/// </remarks>
public static class Repertoire
{
    private static readonly Lazy<ValueList<Exercise>> Read = new(ReadTraditional);

    private static readonly Lazy<ValueList<Exercise>> Talas = new(() => [.. TalaAlankaras.All(Traditional.Where(e => e.Group == "alankara"))]);

    /// <summary>Long notes (karvai), the sarali, janta, datu, melsthayi and mandrasthayi groups and the seven alankaras.</summary>
    public static ValueList<Exercise> Traditional => Read.Value;

    /// <summary>
    /// An alankara in each of the 35 talas, in the order of <see cref="Meter.Talas"/>: <c>triputa-7</c> is that of misra-jati triputa. The seven
    /// known ones are those of <see cref="Traditional"/>; the others follow a rule of the project's own.
    /// </summary>
    public static ValueList<Exercise> Alankaras => Talas.Value;

    /// <summary>
    /// What choirs sing, in 4/4 at two notes a beat; the last note of each line is held to the bar, and a bar of rest follows, in which the
    /// next chord can be played (common practice of choirs, from memory). The vowels are the project's own choice, and any others can be sung.
    /// </summary>
    public static ValueList<Exercise> Choir { get; } =
    [
        OfChoir(1, "five notes up and down, on one vowel after the other", "run.notes(1 5).there-and-back.fill(16).rest(8).each-line(5).sung-by-line(mi me ma mo mu)"),
        OfChoir(2, "nine notes up and down", "run.above(1).there-and-back.fill(8).rest(8).sung(a)"),
        OfChoir(3, "1-3-5-8-5-3-1", "[S G P S' P G S].fill(8).rest(8).sung(i e a o a e i)"),
        OfChoir(4, "thirds up and down", "run.pairs(2).join.up-down.fill(8).rest(8).sung(no)"),
        OfChoir(5, "broken triads from each degree up, then down", "figure(1 3 5).up-down.fill(8).rest(8).sung(ma mo me)"),
        OfChoir(6, "arpeggio up and down with a held top", "[S G P S' , P G S].fill(16).rest(8).sung(a)"),
        OfChoir(7, "five notes down on a lip trill", "run.notes(1 5).reversed.fill(8).rest(8).sung(brr)"),
        OfChoir(8, "five notes down through a straw", "[P M G R S].fill(8).rest(8).sung(straw)"),
        OfChoir(9, "an octave leap and the scale down", "[S S' N D P M G R S].fill(16).rest(8).sung(o)"),
        OfChoir(10, "one held note on five vowels", "[S , , S , , S , , S , , S].fill(16).rest(8).sung(i e a o u)"),
    ];

    /// <summary>
    /// Sirens, swells and short notes, first on svaras in Adi and then on the vowels of choirs in 4/4; each score carries the caution that belongs to it. The
    /// lengths and the vowels are the project's own choice.
    /// </summary>
    public static ValueList<Exercise> Voice { get; } =
    [
        OfVoice(1, "siren to the fifth and back", "[S , P , S , , ,].glide"),
        OfVoice(2, "siren to the octave and back", "[S , S' , S , , ,].glide"),
        OfVoice(3, "one long note, swelling and fading (messa di voce)", "[S , , , , , , ,].swell"),
        OfVoice(4, "1-3-5-3-1 in short notes", "[S G P G S , - -].staccato"),
        OfVoice(5, "siren to the fifth and back on oo", "[S , P , S , , ,].glide.sung(oo)", "4/4"),
        OfVoice(6, "siren to the octave and back on oo", "[S , S' , S , , ,].glide.sung(oo)", "4/4"),
        OfVoice(7, "one long note on a, swelling and fading (messa di voce)", "[S , , , , , , ,].swell.sung(a)", "4/4"),
        OfVoice(8, "1-3-5-3-1 in short notes on ha", "[S G P G S , - -].staccato.sung(ha)", "4/4"),
    ];

    /// <summary>The scale in which the exercises are usually learnt and written: Mayamalavagowla, the 15th parent (common practice).</summary>
    public static Scale UsualScale => Catalogue.Default.Parent(15).Scale;

    /// <summary>An exercise by its name.</summary>
    /// <param name="name">The name: <c>alankara-7</c>, <c>eka-5</c>.</param>
    /// <returns>The exercise, or <see langword="null"/>.</returns>
    public static Exercise? Find(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        foreach (var exercise in (ReadOnlySpan<Exercise>)[.. Traditional, .. Choir, .. Voice, .. Alankaras])
        {
            if (exercise.Name.Equals(name, StringComparison.OrdinalIgnoreCase))
            {
                return exercise;
            }
        }

        return null;
    }

    // The text of a tala begins with its name and goes on with its signs.
    private static string TalaName(string tala) => string.Join(' ', tala.Split(' ').Take(2));

    private static Exercise OfChoir(int number, string title, string pattern) =>
        new("choir", number, title, Pattern.Parse(pattern), "common practice of choirs, from memory", "4/4", Speed.Second);

    private static Exercise OfVoice(int number, string title, string pattern, string meter = "") =>
        new("voice", number, title, Pattern.Parse(pattern), "common practice of voice teachers and choirs, from memory", meter);

    private static ValueList<Exercise> ReadTraditional()
    {
        var exercises = new List<Exercise>();
        foreach (var row in EmbeddedTable.Rows(typeof(Repertoire), "Warmup.Data.exercises.tsv"))
        {
            var number = int.Parse(row[1], NumberStyles.None, CultureInfo.InvariantCulture);
            exercises.Add(new Exercise(row[0], number, ExerciseTitles.Of(row[0], number, TalaName(row[2])), Pattern.Parse(row[4]), row[6].Length == 0 ? row[5] : $"{row[5]}: {row[6]}", row[2]));
        }

        return exercises.ToValueList();
    }
}
