using FsCheck.Xunit;

namespace Warmup.Tests;

/// <summary>
/// Scales written out, and built from others. Sources: the svaras of the 72 parents (published rule), movable-do solfa, and well-known
/// scales that are others with a note added or left out (common practice).
/// </summary>
public class ScalesCustomTests
{
    [Theory]
    [InlineData("do re mi sol la do'", "S R2 G3 P D2 S'")]
    [InlineData("Do Re Mi Fa Sol La Ti Do'", "S R2 G3 M1 P D2 N3 S'")]
    [InlineData("do ra me fa sol le te do'", "S R1 G2 M1 P D1 N2 S'")]
    [InlineData("do ri mi fi so li ti do'", "S R3 G3 M2 P D3 N3 S'")]
    [InlineData("do me fa se sol te do'", "1 b3 4 b5 5 b7 1'")]
    [InlineData("do re me fa sol la ti do' / do' te le sol fa me re do", "1 2 b3 4 5 6 7 1' / 1' b7 b6 5 4 b3 2 1")]
    [InlineData("semitones: 0 2 4 7 9", "S R2 G3 P D2 S'")]
    [InlineData("semitones: 0,2,4,7,9,12", "S R2 G3 P D2 S'")]
    [InlineData("semitones: 0 1 2 5 7 8 9", "S R1 G1 M1 P D1 N1 S'")]
    [InlineData("1 2 3 #4 5 6 7 1'", "S R2 G3 M2 P D2 N3 S'")]
    public void A_scale_is_read_in_solfa_numbers_and_semitones(string text, string svaras)
    {
        var expected = Scale.Parse(svaras);
        var read = Catalogue.Default.Read(text);
        Assert.Equal((expected.Ascent, expected.Descent), (read.Ascent, read.Descent));
    }

    [Fact]
    public void The_semitones_of_each_parent_give_its_svaras()
    {
        foreach (var row in Catalogue.Default.Entries.Take(72))
        {
            Assert.Equal(row.Scale.Ascent, Scale.FromSemitones("own", row.Scale.PitchSet().AsSpan()).Ascent);
        }
    }

    [Property]
    public bool Any_semitones_give_their_own_pitches_back_in_svaras(ushort bits)
    {
        int[] semitones = [0, .. Enumerable.Range(1, 11).Where(i => (bits & (1 << i)) != 0)];
        if (semitones.Length < 2)
        {
            return true;
        }

        var scale = Scale.FromSemitones("own", semitones);
        return scale.Ascent.SkipLast(1).Select(t => t.Semitones).SequenceEqual(semitones)
            && scale.Degrees.All(d => d.IsSvara)
            && scale.Degrees.Select(d => d.Letter).SequenceEqual(scale.Degrees.Select(d => d.Letter).Order());
    }

    [Theory]
    [InlineData("Dhirashankarabharanam", "S R2 G3 P D2", "Mohanam")]
    [InlineData("Kharaharapriya", "R2 G2 M1 D2", "Abhogi")] // the tonic is always kept
    [InlineData("Mayamalavagowla", "S R1 M1 P D1", "Karnataka Suddha Saveri")]
    public void Five_notes_of_a_parent_are_a_derived_scale(string parent, string notes, string derived)
    {
        var scale = Find(parent).Only("five", Degrees(notes).AsSpan());
        Assert.Equal((Find(derived).Ascent, Find(derived).Descent), (scale.Ascent, scale.Descent));
    }

    [Theory]
    [InlineData("Kharaharapriya", "P", "Sriranjani")]
    [InlineData("Gamanashrama", "P", "Hamsanandi")]
    [InlineData("Chakravakam", "M1", "Malayamarutam")]
    public void A_parent_without_one_note_is_a_derived_scale(string parent, string note, string derived)
    {
        var scale = Find(parent).Without("six", Degrees(note)[0]);
        Assert.Equal((Find(derived).Ascent, Find(derived).Descent), (scale.Ascent, scale.Descent));
    }

    [Fact]
    public void The_union_has_the_notes_of_both_in_order_of_pitch()
    {
        // Bilahari goes up like Mohanam and comes down like its parent, so the union with the parent is the parent.
        var union = Find("Mohanam").Union("both", Find("Dhirashankarabharanam"));
        Assert.Equal("S R2 G3 M1 P D2 N3 S'", union.ToNotesText());
        Assert.Equal("S R2 G3 P D2 N3 S'", Find("Mohanam").Union("both", Find("Hamsadhwani")).ToNotesText());
        Assert.Equal("S R2 G3 P D2 S' / S' N3 D2 P M2 M1 G3 R2 S", Find("Bilahari").Union("both", Find("Mohanakalyani")).ToNotesText());
    }

    [Fact]
    public void Choosing_keeps_a_bend_where_its_notes_are_kept()
    {
        Assert.Equal("vakra: S M1 G3 M1 P S' / S' P M1 G3 R2 S", Find("Kedaram").Without("own", Degrees("N3")[0]).ToNotesText());
    }

    [Fact]
    public void What_cannot_be_built_is_refused_with_the_reason()
    {
        var mohanam = Find("Mohanam");
        Assert.Contains("M1", Assert.Throws<ArgumentException>(() => mohanam.Only("x", Degrees("S M1").AsSpan())).Message, StringComparison.Ordinal);
        Assert.Contains("tonic", Assert.Throws<ArgumentException>(() => mohanam.Without("x", default)).Message, StringComparison.Ordinal);
        Assert.Contains("no M1", Assert.Throws<ArgumentException>(() => mohanam.Without("x", Degrees("M1")[0])).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => mohanam.Only("x"));
        Assert.Contains("Nadanamakriya", Assert.Throws<ArgumentException>(() => mohanam.Union("x", Find("Nadanamakriya"))).Message, StringComparison.Ordinal);
        Assert.Contains("descent", Assert.Throws<ArgumentException>(() => Find("Garudadhvani").Rotated("x", Degrees("M1")[0])).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => Scale.FromSemitones("x", 0, 4, 4));
        Assert.Throws<ArgumentException>(() => Scale.FromSemitones("x", 1, 4));
        Assert.Throws<ArgumentException>(() => Scale.FromSemitones("x", 0, 13));
        Assert.Throws<ArgumentException>(() => Scale.FromSemitones("x", 0));
    }

    [Theory]
    [InlineData("do re S", 7, "mixes")]
    [InlineData("S R2 mi P S'", 6, "mixes")]
    [InlineData("do re mo sol do'", 7, "'mo'")]
    [InlineData("do mi re sol do'", 7, "out of order")]
    [InlineData("semitones: 0 2 2 5", 16, "between 3 and 12")]
    [InlineData("semitones: 1 2", 12, "must be 0")]
    [InlineData("semitones: 0 99999999999", 14, "between 1 and 12")]
    [InlineData("semitones:", 11, "0 2 4 7 9")]
    [InlineData("S R2 G4 P S'", 6, "'G4'")]
    [InlineData("S R M1 P S'", 3, "R1, R2 or R3")]
    [InlineData("S R2 g P S'", 6, "lower case")]
    [InlineData("S S'", 1, "2 to 12 different notes")]
    [InlineData("S R2 P G3 S'", 8, "vakra:")]
    [InlineData("S R2 G3 R2 P S' /", 9, "vakra:")]
    [InlineData("vakra: S R1 S R1 S R1 S R1 S R1 S R1 S R1 S R1 S R1 S R1 S R1 S R1 S R1 S'", 68, "2 to 24 entries")]
    [InlineData("S R2 P S' / S' P / R2 S", 18, "one '/'")]
    [InlineData("S R2 P", 6, "upper tonic")]
    [InlineData("0", 1, "between 1 and 72, not 0")]
    [InlineData("73", 1, "between 1 and 72, not 73")]
    [InlineData("-1", 1, "between 1 and 72, not -1")]
    public void Bad_scales_are_refused_with_column_and_reason(string text, int column, string reason)
    {
        Assert.False(Catalogue.Default.TryRead(text, out _, out var error));
        Assert.Equal((1, column), (error!.Line, error.Column));
        Assert.Contains(reason, error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", 1)]
    [InlineData("S R2 x", 6)]
    public void A_list_of_notes_is_refused_with_its_column(string text, int column)
    {
        Assert.False(Degree.TryParseList(text, out _, out var error));
        Assert.Equal(column, error!.Column);
    }

    private static Scale Find(string name) => Catalogue.Default.Find(name)!.Scale;

    private static ValueList<Degree> Degrees(string text) =>
        Degree.TryParseList(text, out var degrees, out var error) ? degrees : throw error!.ToException();
}
