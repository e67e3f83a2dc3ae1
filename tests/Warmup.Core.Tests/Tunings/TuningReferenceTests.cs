namespace Warmup.Tests;

/// <summary>The reference and the tonic. Source: equal temperament from A4 (ISO 16 and the definition of the cent), worked out in the test.</summary>
public class TuningReferenceTests
{
    [Theory]
    [InlineData(220.0, 440.0, "A3", 0.0, "6")]
    [InlineData(222.0, 440.0, "A3", 15.7, "6")] // 1200 log2(222/220) = 15.667
    [InlineData(138.0, 440.0, "C#3", -7.4, "1.5")] // 1200 log2(138/138.591) = -7.402
    [InlineData(220.0, 432.0, "A3", 31.8, "6")] // 1200 log2(440/432) = 31.767
    public void A_tonic_in_Hz_reports_the_nearest_note_and_the_rest_in_cents(double hz, double a4, string note, double cents, string kattai)
    {
        var tonic = Tonic.FromHz(hz, a4);
        Assert.Equal(NoteName.TryParse(note, out var name, out _) ? name.Midi : -1, tonic.Midi);
        Assert.Equal(cents, tonic.OffsetCents, 0.05);
        Assert.Equal(hz, tonic.Hz, 1e-9);
        var report = tonic.ToReport();
        Assert.StartsWith(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{hz} Hz: {note}"), report, StringComparison.Ordinal);
        Assert.EndsWith(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"kattai {kattai}, at A4 = {a4} Hz"), report, StringComparison.Ordinal);
        Assert.Equal(cents != 0, report.Contains("cents", StringComparison.Ordinal));
    }

    [Fact]
    public void Another_reference_moves_every_tone_by_the_same_ratio()
    {
        var (low, usual) = (Tonic.FromMidi(57, 432), Tonic.FromMidi(57));
        foreach (var degree in Catalogue.Default.Parent(15).Scale.Degrees)
        {
            Assert.Equal(432.0 / 440, Tuning.Just.Hz(new ScaleTone(degree), low) / Tuning.Just.Hz(new ScaleTone(degree), usual), 1e-12);
        }
    }
}
