using System.Globalization;

namespace Warmup;

/// <summary>
/// An alankara in each of the 35 talas: the seven known ones, and for the other jatis a rule that is the project's own. The rule fills one
/// avartana with S R G M at its end and before it the angas in cells, as a jati is spoken: 3; 4; 5 = 2 + 3; 7 = 3 + 4; 9 = 4 + 2 + 3. A cell
/// of two is S R, of three S R G, of four S R G R; a single akshara that is left over holds the last M. In jhampa the last M is held for
/// both aksharas of the drutam. Five of the seven known ones follow this rule; dhruva and ata have lines of their own.
/// </summary>
internal static class TalaAlankaras
{
    private const string OwnRule = "own setting: a rule of this project for the jatis without a known alankara";

    private static readonly int[] Goal = [0, 1, 2, 3];

    // The figure of one cell, by its number of aksharas.
    private static readonly Dictionary<int, int[]> Cells = new() { [2] = [0, 1], [3] = [0, 1, 2], [4] = [0, 1, 2, 1] };

    /// <summary>The 35 exercises; a group is a family's name, the number the aksharas of its laghu.</summary>
    /// <param name="known">The seven known alankaras.</param>
    public static IEnumerable<Exercise> All(IEnumerable<Exercise> known)
    {
        var usual = known.ToDictionary(e => e.Meter);
        foreach (var family in TalaFamilies.All)
        {
            foreach (var jati in Jatis.All)
            {
                var meter = Meter.Tala(family, jati);
                var old = usual.GetValueOrDefault(meter);
                yield return new Exercise(
                    family.ToString().ToLowerInvariant(),
                    jati.Aksharas(),
                    $"alankara in {meter.Name}",
                    old?.Pattern ?? Rule(family, meter),
                    old?.Source ?? OwnRule,
                    string.Create(CultureInfo.InvariantCulture, $"{meter.Name} {string.Join(' ', meter.Angas)} = {meter.Beats}"));
            }
        }
    }

    /// <summary>The line that the rule makes for a tala, sung from each degree up and down.</summary>
    /// <param name="family">The tala's family.</param>
    /// <param name="meter">The tala.</param>
    public static Pattern Rule(TalaFamily family, Meter meter)
    {
        // Jhampa ends in an anudrutam and a drutam: G, and M for both aksharas.
        var held = family == TalaFamily.Jhampa ? 1 : 0;
        var goal = Goal[..Math.Min(Goal.Length, meter.Beats)];
        var left = meter.Beats - goal.Length - held;
        var figure = new List<int>();
        foreach (var cell in meter.Angas.SelectMany(a => Spoken(a.Aksharas)))
        {
            if (left >= 2)
            {
                figure.AddRange(Cells[Math.Min(cell, left)]);
                left -= Math.Min(cell, left);
            }
        }

        held += left;
        var pattern = Pattern.Figure([.. figure, .. goal]);
        return (held == 0 ? pattern : pattern.Hold(held)).UpDown();
    }

    private static int[] Spoken(int aksharas) => aksharas switch
    {
        5 => [2, 3],
        7 => [3, 4],
        9 => [4, 2, 3],
        _ => [aksharas],
    };
}
