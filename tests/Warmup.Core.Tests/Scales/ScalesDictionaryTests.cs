namespace Warmup.Tests;

/// <summary>
/// The catalogue against two public scale dictionaries, set by set. Sources: tonal-dictionary 2.2.2 (MIT) and @musodojo/music-theory-data
/// 28.0.0 (CC0), their names and semitones copied to Data/scales-dictionaries.tsv.
/// </summary>
public class ScalesDictionaryTests
{
    /// <summary>Names that mean another scale elsewhere, each with the reason.</summary>
    private static readonly Dictionary<string, string> Traps = new()
    {
        ["kafi raga"] = "an eight-note form with both G and both N; the thaat Kafi has seven notes",
        ["purvi raga"] = "an eight-note form with both M; the thaat Purvi has M2 only",
        ["todi raga"] = "the Hindustani Todi, which is the thaat; the Carnatic Todi is parent scale 8",
    };

    /// <summary>What a dictionary calls one of our scales, where the catalogue does not know that name.</summary>
    private static readonly (string Theirs, string Ours)[] Pairs =
    [
        ("egyptian", "Suspended pentatonic"),
        ("blues major pentatonic", "Ritusen pentatonic"),
        ("blues pentatonic", "Minor blues"),
        ("malkos raga", "Hindolam"),
        ("todi raga", "Todi thaat"),
        ("dorian #4", "Hemavati"),
        ("lydian dominant", "Vachaspati"),
        ("dorian flat 2", "Natakapriya"),
        ("lydian sharp 2", "Kosalam"),
    ];

    [Fact]
    public void A_name_that_both_know_means_the_same_pitches()
    {
        var compared = new HashSet<string>();
        foreach (var row in ScalesTables.Dictionaries)
        {
            foreach (var name in row[0].Split(';'))
            {
                var bare = name.Replace(" raga", string.Empty, StringComparison.OrdinalIgnoreCase)
                    .Replace(" Scale", string.Empty, StringComparison.OrdinalIgnoreCase)
                    .Replace(" Mode", string.Empty, StringComparison.OrdinalIgnoreCase);
                if (Catalogue.Default.Find(bare) is not { } entry)
                {
                    continue;
                }

                // A scale that differs up and down stands in the dictionaries by its ascent.
                var ours = entry.Scale.Ascent.Select(t => t.Semitones % 12).Distinct().Order();
                Assert.True(
                    ScalesTables.Wholes(row[1]).SequenceEqual(ours) != Traps.ContainsKey(name),
                    $"{name} of {row[2]} is {row[1]}, {entry.Scale.Name} is {string.Join(',', ours)}");
                compared.Add(entry.Scale.Name);
            }
        }

        // Without its own names a comparison would pass by comparing nothing.
        Assert.Superset(
            new HashSet<string>
            {
                "Major", "Dorian", "Phrygian", "Lydian", "Mixolydian", "Natural minor", "Locrian", "Harmonic minor", "Melodic minor", "Harmonic major",
                "Double harmonic major", "Phrygian dominant", "Hungarian minor", "Major pentatonic", "Minor pentatonic", "Suspended pentatonic",
                "Ritusen pentatonic", "Minor blues", "Whole tone", "Chromatic", "Ascending melodic minor",
            },
            compared);
    }

    [Fact]
    public void Each_trap_is_met() =>
        Assert.All(Traps.Keys, trap => Assert.Contains(ScalesTables.Dictionaries, row => row[0].Split(';').Contains(trap)));

    [Fact]
    public void Other_names_of_our_scales_have_the_same_pitches()
    {
        foreach (var (theirs, ours) in Pairs)
        {
            var rows = ScalesTables.Dictionaries.Where(r => r[0].Split(';').Contains(theirs)).ToList();
            Assert.NotEmpty(rows);
            Assert.All(rows, r => Assert.Equal(ScalesTables.Wholes(r[1]), Catalogue.Default.Find(ours)!.Scale.PitchSet()));
        }
    }

    [Fact]
    public void Whatever_a_dictionary_holds_the_search_by_pitches_finds_all_our_scales_of_that_set()
    {
        foreach (var row in ScalesTables.Dictionaries)
        {
            var semitones = ScalesTables.Wholes(row[1]);
            var degrees = Scale.FromSemitones("theirs", semitones).Degrees;
            var expected = Catalogue.Default.Entries.Where(e => e.Scale.Ascent.Concat(e.Scale.Descent).Select(t => (t.Semitones + 12) % 12).ToHashSet().SetEquals(semitones));
            Assert.Equal(expected, Catalogue.Default.Search(new ScaleQuery { EqualTo = degrees }));
        }
    }
}
