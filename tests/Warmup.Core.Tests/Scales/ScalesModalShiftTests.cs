using FsCheck.Xunit;

namespace Warmup.Tests;

/// <summary>
/// Modal shift of the tonic (graha bheda). Sources: the well-known families of Mohanam, Shankarabharanam and Mayamalavagowla and the order
/// of the church modes (common practice).
/// </summary>
public class ScalesModalShiftTests
{
    [Theory]
    [InlineData("Mohanam", "R2", "Madhyamavati")]
    [InlineData("Mohanam", "G3", "Hindolam")]
    [InlineData("Mohanam", "P", "Suddha Saveri")]
    [InlineData("Mohanam", "D2", "Suddha Dhanyasi")]
    [InlineData("Dhirashankarabharanam", "R2", "Kharaharapriya")]
    [InlineData("Dhirashankarabharanam", "G3", "Hanumatodi")]
    [InlineData("Dhirashankarabharanam", "M1", "Mechakalyani")]
    [InlineData("Dhirashankarabharanam", "P", "Harikambhoji")]
    [InlineData("Dhirashankarabharanam", "D2", "Natabhairavi")]
    [InlineData("Mayamalavagowla", "R1", "Rasikapriya")]
    [InlineData("Mayamalavagowla", "M1", "Simhendramadhyamam")]
    [InlineData("Major", "2", "Dorian")]
    [InlineData("Major", "3", "Phrygian")]
    [InlineData("Major", "4", "Lydian")]
    [InlineData("Major", "5", "Mixolydian")]
    [InlineData("Major", "6", "Natural minor")]
    [InlineData("Major", "7", "Locrian")]
    [InlineData("Harmonic minor", "5", "Phrygian dominant")]
    public void A_scale_turns_into_another_with_its_own_spelling(string scale, string home, string other)
    {
        Assert.True(Degree.TryParse(home, out var degree, out _));
        var rotated = Find(scale).Rotated(other, degree);
        Assert.Equal(Find(other), rotated);
        var shift = Assert.Single(Catalogue.Default.ShiftsOf(Find(scale)).ToArray(), s => s.Home == degree);
        Assert.Contains(other, shift.Matches.Select(m => m.Scale.Name));
    }

    [Fact]
    public void The_leading_note_of_the_major_scale_makes_no_Carnatic_scale()
    {
        // It would need a lowered P, which no parent has (common practice).
        var shift = Catalogue.Default.ShiftsOf(Find("Dhirashankarabharanam")).ToArray()[^1];
        Assert.Equal("N3", shift.Home.ToString());
        Assert.Equal(["Locrian"], shift.Matches.Select(m => m.Scale.Name));
    }

    [Fact]
    public void Both_lists_must_agree_and_only_notes_of_both_become_tonics()
    {
        var shifts = Catalogue.Default.ShiftsOf(Find("Bilahari"));
        Assert.Equal(["S", "R2", "G3", "P", "D2"], shifts.Select(s => s.Home.ToString()));
        Assert.Equal(["Bilahari"], shifts[0].Matches.Select(m => m.Scale.Name));
        Assert.DoesNotContain(shifts.SelectMany(s => s.Matches), m => m.Scale.IsSymmetric);
    }

    [Fact]
    public void The_whole_tone_scale_turns_into_itself_on_each_note() =>
        Assert.All(Catalogue.Default.ShiftsOf(Find("Whole tone")).ToArray(), s => Assert.Equal(["Whole tone"], s.Matches.Select(m => m.Scale.Name)));

    [Fact]
    public void A_scale_that_ends_below_the_upper_tonic_turns_into_none() =>
        Assert.Empty(Catalogue.Default.ShiftsOf(Find("Nadanamakriya")).ToArray());

    [Fact]
    public void Every_parent_turns_into_each_of_its_shifts_and_back()
    {
        var parents = Catalogue.Default.Entries.Take(72).ToList();
        foreach (var parent in parents)
        {
            foreach (var shift in Catalogue.Default.ShiftsOf(parent.Scale))
            {
                // By plain counting: the pitches seen from the new tonic.
                var seen = parent.Scale.PitchSet().Select(p => (p - shift.Home.Semitones + 12) % 12).Order();
                Assert.Equal(seen, shift.Shifted.PitchSet());
                Assert.Equal(
                    parents.Where(p => p.Scale.PitchSet().SequenceEqual(seen)).Select(p => p.Parent),
                    shift.Matches.Where(m => m.Family == ScaleFamily.Parent).Select(m => m.Parent));
            }
        }
    }

    [Property]
    public bool Shifting_back_gives_the_same_pitches(int seed, byte pick)
    {
        var scale = ScalesSample.FromSeed(seed);
        var homes = scale.Ascent.Where(t => t.Octave == 0).Select(t => t.Degree).Where(d => scale.Descent.Any(t => t.Degree == d)).Distinct().ToList();
        var home = homes[pick % homes.Count];
        var there = scale.Rotated("there", home);
        var back = there.Ascent.Select(t => t.Degree).FirstOrDefault(d => ((d.Semitones % 12) + 12) % 12 == (12 - home.Semitones) % 12);
        return there.Rotated("back", back).PitchSet() == scale.PitchSet()
            && there.StepsUp() == scale.StepsUp()
            && there.StepsDown() == scale.StepsDown();
    }

    private static Scale Find(string name) => Catalogue.Default.Find(name)!.Scale;
}
