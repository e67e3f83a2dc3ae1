namespace Warmup.Tests;

/// <summary>
/// Source: the rule that every melakarta chart prints (i = (n - 1) mod 36; the R and G pair is i div 6 and the D and N pair i mod 6 of
/// R1G1 R1G2 R1G3 R2G2 R2G3 R3G3; M1 up to 36, M2 above), written here a second time, and the rows of the table (names: common practice).
/// </summary>
public class MelakartaTests
{
    private static readonly string[] LowerPairs = ["R1 G1", "R1 G2", "R1 G3", "R2 G2", "R2 G3", "R3 G3"];

    private static readonly Dictionary<string, int> Place = Tables.Svaras.ToDictionary(r => r["svara"], r => r.Whole("semitone"));

    public static TheoryData<int> Numbers => [.. Enumerable.Range(1, 72)];

    private static string ByRule(int number)
    {
        var i = (number - 1) % 36;
        var upper = LowerPairs[i % 6].Replace('R', 'D').Replace('G', 'N');
        return $"S {LowerPairs[i / 6]} {(number <= 36 ? "M1" : "M2")} P {upper} S'";
    }

    [Theory]
    [MemberData(nameof(Numbers))]
    public void Each_parent_follows_the_published_rule_and_its_row(int number)
    {
        var row = Tables.Melakarta[number - 1];
        Assert.Equal(number, row.Whole("number"));
        var entry = Catalogue.Default.Parent(number);
        var scale = entry.Scale;

        Assert.Equal(ByRule(number), string.Join(' ', scale.Ascent));
        Assert.Equal(row["arohana"], string.Join(' ', scale.Ascent));
        Assert.Equal(string.Join(' ', Enumerable.Reverse(row["arohana"].Split(' '))), string.Join(' ', scale.Descent));
        Assert.Equal(row.Wholes("semitones").Append(12), scale.Ascent.Select(t => t.Semitones));
        Assert.Equal(ByRule(number).Split(' ').SkipLast(1).Select(s => Place[s]), scale.Degrees.Select(d => d.Semitones));

        Assert.Equal((row["name"], ScaleFamily.Parent, (int?)number), (scale.Name, entry.Family, entry.Parent));
        Assert.Equal((true, false, true, 7, 7, "7"), (scale.IsSymmetric, scale.IsVakra, scale.HasUpperTonic, scale.StepsUp(), scale.StepsDown(), entry.NoteCounts));
        Assert.NotEmpty(entry.Source);
    }

    [Theory]
    [MemberData(nameof(Numbers))]
    public void Each_parent_is_found_by_number_and_by_every_way_of_writing_its_name(int number)
    {
        var row = Tables.Melakarta[number - 1];
        var name = row["name"];
        var scale = Catalogue.Default.Parent(number).Scale;
        var number2 = number.ToString(System.Globalization.CultureInfo.InvariantCulture);
        foreach (var text in new[]
        {
            number2, $" {number2} ", name, name.ToUpperInvariant(), name.ToLowerInvariant(), $"  {name} ", row["iast"],
            row["iast"].ToUpperInvariant(), row["iast"].Normalize(System.Text.NormalizationForm.FormD),
        })
        {
            Assert.True(Catalogue.Default.TryRead(text, out var read, out var error), $"{text}: {error}");
            Assert.Equal(scale, read);
        }

        Assert.Same(Catalogue.Default.Parent(number), Catalogue.Default.Find(name));
    }

    [Fact]
    public void All_72_differ_in_notes_and_in_name()
    {
        var parents = Enumerable.Range(1, 72).Select(n => Catalogue.Default.Parent(n).Scale).ToList();
        Assert.Equal(72, parents.Select(s => string.Join(' ', s.Ascent)).Distinct().Count());
        Assert.Equal(72, parents.Select(s => s.Name).Distinct(StringComparer.OrdinalIgnoreCase).Count());
        Assert.Equal(72, Catalogue.Default.Entries.Count(e => e.Family == ScaleFamily.Parent));
    }

    // The same seven notes sound alike in pairs of scales only by another spelling; counting: 6 places of R and G, 2 of M, 6 of D and N.
    [Fact]
    public void All_72_differ_in_sound() =>
        Assert.Equal(72, Enumerable.Range(1, 72).Select(n => string.Join(',', Catalogue.Default.Parent(n).Scale.Ascent.Select(t => t.Semitones))).Distinct().Count());

    [Theory]
    [InlineData(0)]
    [InlineData(73)]
    [InlineData(-1)]
    [InlineData(int.MinValue)]
    public void A_number_out_of_range_is_refused_with_the_range(int number)
    {
        var message = Assert.Throws<ArgumentOutOfRangeException>(() => Catalogue.Default.Parent(number)).Message;
        Assert.Contains("72", message, StringComparison.Ordinal);
        Assert.Contains(number.ToString(System.Globalization.CultureInfo.InvariantCulture), message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0")]
    [InlineData("73")]
    [InlineData("-1")]
    public void A_typed_number_out_of_range_says_the_range(string text)
    {
        Assert.False(Catalogue.Default.TryRead(text, out var scale, out var error));
        Assert.Null(scale);
        Assert.Contains("72", error!.Message, StringComparison.Ordinal);
    }
}
