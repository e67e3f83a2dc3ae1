using System.Globalization;

namespace Warmup.Tests;

/// <summary>
/// The katapayadi code. Sources: the code's published table of consonants and the order of the 72 names (common practice). The numbers of
/// the irregular names under the general rule are worked out by hand, consonant by consonant; each is also
/// written as it is counted, with the first consonant of the cluster alone.
/// </summary>
public class ScalesKatapayadiTests
{
    private static readonly int[] IrregularNumbers = [16, 48, 54, 55, 57, 62, 66, 68];

    [Theory]
    [MemberData(nameof(ScalesTables.Chakras), MemberType = typeof(ScalesTables))]
    public void The_first_two_syllables_give_the_number_but_for_eight_names(string[] row)
    {
        var number = int.Parse(row[0], CultureInfo.InvariantCulture);
        var irregular = IrregularNumbers.Contains(number);
        Assert.Equal(irregular, Katapayadi.NumberOf(row[1]) != number);
        Assert.Equal(irregular, Catalogue.Default.Parent(number).CodeException is not null);
    }

    [Theory]
    [InlineData("Cakravākam", "Cakavākam", 26, 16, "k of kr")] // ca 6, kra: r is 2, k would be 1
    [InlineData("Divyamaṇi", "Divamaṇi", 18, 48, "v of vy")] // di 8, vya: y is 1, v would be 4
    [InlineData("Viśvāmbarī", "Viśāmbarī", 44, 54, "ś of śv")] // vi 4, śva: v is 4, ś would be 5
    [InlineData("Śyāmaḷāṅgī", "Śāmaḷāṅgī", 51, 55, "ś of śy")] // śya: y is 1, ś would be 5; ma 5
    [InlineData("Siṃhēndramadhyamam", "Siṃēndramadhyamam", 87, 57, "anusvara")] // si 7, mhe: h is 8, m would be 5
    [InlineData("Ṛṣabhapriyā", "Riṣabhapriyā", 60, 62, "syllabic r")] // a vowel is 0, r would be 2; sha 6
    [InlineData("Citrāmbarī", "Citāmbarī", 26, 66, "t of tr")] // ci 6, tra: r is 2, t would be 6
    [InlineData("Jyōtisvarūpiṇī", "Jōtisvarūpiṇī", 61, 68, "j of jy")] // jyo: y is 1, j would be 8; ti 6
    public void An_irregular_name_counts_the_first_consonant(string name, string asCounted, int byRule, int number, string reason)
    {
        Assert.Equal(byRule, Katapayadi.NumberOf(name));
        Assert.Equal(number, Katapayadi.NumberOf(asCounted));
        var entry = Catalogue.Default.Parent(number);
        Assert.Equal(name, entry.IastName);
        Assert.Contains(reason, entry.CodeException, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", 1)]
    [InlineData("ka", 3)]
    [InlineData("k", 2)]
    [InlineData("ka9", 3)]
    [InlineData("kafa", 3)]
    public void A_name_without_two_syllables_of_IAST_is_refused_with_its_column(string name, int column)
    {
        var refused = Assert.Throws<WarmupFormatException>(() => Katapayadi.NumberOf(name));
        Assert.Equal(column, refused.Error.Column);
    }

    [Theory]
    [InlineData("SHANKARABHARANAM", 29)]
    [InlineData("Śaṅkarābharaṇam", 29)]
    [InlineData("māyāmāḷavagauḷa", 15)]
    [InlineData("kalyani", 65)]
    [InlineData("todi", 8)]
    public void A_number_is_found_by_name_whatever_its_spelling(string name, int number) =>
        Assert.Equal(number, Catalogue.Default.Find(name)!.Parent);
}
