using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.Midi.Tests;

/// <summary>
/// The frequency that the bytes make sound, from note, bend range and bend or from the tuning messages as independent readers find them,
/// is the score's: within 0.02 cents by bends (half a step is 0.0122) and 0.01 by the tuning standard (half a step is 0.0031). The score's
/// own is held to the definition: the tonic's frequency times the tuning's interval.
/// </summary>
public class FrequencyTests
{
    private static readonly MidiOptions Standard = new() { Tuning = MidiTuning.TuningStandard };

    // The five-limit ratios of the twelve places above the tonic (published; the same as in the trade's table).
    private static readonly double[] Just = Ratios(1, 1, 16, 15, 9, 8, 6, 5, 5, 4, 4, 3, 45, 32, 3, 2, 8, 5, 5, 3, 9, 5, 15, 8);

    // The parents whose R-G and D-N pairs are the same of the six: together they have all sixteen svaras.
    private static readonly int[] Parents = [1, 8, 15, 22, 29, 36, 37, 44, 51, 58, 65, 72];

    [Fact]
    public void Every_svara_on_every_tonic_at_several_A4_in_every_tuning_sounds_as_the_score_says()
    {
        var svaras = new HashSet<Degree>();
        foreach (var parent in Parents)
        {
            for (var midi = 50; midi < 62; midi++)
            {
                foreach (var a4 in (double[])[440, 415.3, 452])
                {
                    foreach (var tuning in Tuning.All)
                    {
                        var drill = Octave(parent, Tonic.FromMidi(midi, a4), tuning);
                        AssertInTune(drill);
                        svaras.UnionWith(drill.Scale.Degrees);
                    }
                }
            }
        }

        Assert.Equal(16, svaras.Count(d => d.IsSvara));
        Assert.Equal(16, svaras.Count);
    }

    [Property(MaxTest = 300)]
    public Property Any_tonic_A4_and_tuning_sounds_as_the_score_says() => Prop.ForAll(
        (from parent in Gen.Choose(1, 72)
         from a4 in Gen.Choose(38_000, 50_000)
         from hertz in Gen.Choose(6_000, 80_000)
         from midi in Gen.Choose(30, 84)
         from byHertz in Gen.Elements(true, false)
         from off in Gen.ArrayOf(Gen.Choose(-4_999, 4_999), 11)
         select (parent, a4: a4 / 100.0, hertz: hertz / 100.0, midi, byHertz, off: off.Select(o => o / 100.0).ToArray())).ToArbitrary(),
        made =>
        {
            double[] cents = [0, .. made.off.Select((off, i) => (100 * (i + 1)) + off)];
            var tonic = made.byHertz ? Tonic.FromHz(made.hertz, made.a4) : Tonic.FromMidi(made.midi, made.a4);
            var drill = Octave(made.parent, tonic, new Tuning("made up", cents.Select(Interval.FromCents).ToValueList()));
            var tonicHertz = made.byHertz ? made.hertz : made.a4 * Math.Pow(2, (made.midi - 69) / 12.0);
            AssertDefined(drill, tonicHertz, cents.Select(c => Math.Pow(2, c / 1200)).ToArray());
            AssertInTune(drill);
        });

    [Fact]
    public void Just_intervals_are_their_ratios_on_every_tonic()
    {
        foreach (var parent in Parents)
        {
            for (var midi = 50; midi < 62; midi++)
            {
                AssertDefined(Octave(parent, Tonic.FromMidi(midi, 442), Tuning.Just), 442 * Math.Pow(2, (midi - 69) / 12.0), Just);
            }
        }
    }

    [Theory]
    [InlineData(199.98, 62, 16383)] // 8191.2 of 8192 steps
    [InlineData(199.99, 64, 8192)] // 8191.6, rounded up, would be one step too many: the nearest key takes over
    [InlineData(200, 64, 8192)]
    [InlineData(250, 65, 6144)] // three keys up, since halves are rounded away from none, and a quarter of the range down
    [InlineData(-200, 62, 0)] // the whole range
    [InlineData(-201, 60, 8151)] // two keys down, and one cent of 40.96 steps
    public void A_pitch_beyond_the_bends_range_is_played_by_the_key_nearest_to_it(double cents, int key, int bend)
    {
        // Above D4: 150 cents by the reference, the rest by the tuning.
        var reference = 150 * Math.Sign(cents);
        var drill = Files.Drill(pattern: "[R]") with
        {
            Tonic = Tonic.FromMidi(60, 440 * Math.Pow(2, reference / 1200.0)),
            Tuning = Tuning.Equal.With(Degree.Parse("R2"), Interval.FromCents(200 + cents - reference)),
            HasDrone = false,
        };
        var track = RawFile.Of(drill.ToScore()).Tracks[1];
        Assert.Equal(key, Assert.Single(track, e => e.IsNoteOn).Data[0]);
        var data = Assert.Single(track, e => e.Kind == 0xE0).Data;
        Assert.Equal(bend, data[0] | (data[1] << 7));
    }

    private static Drill Octave(int parent, Tonic tonic, Tuning tuning) => Files.Drill() with
    {
        Scale = new Scale("parent", Catalogue.Default.Parent(parent).Scale.Ascent),
        Pattern = Pattern.Parse("ladder.drop(6)"),
        Tonic = tonic,
        Tuning = tuning,
    };

    private static void AssertInTune(Drill drill)
    {
        var score = drill.ToScore();
        ReadBackTests.AssertSame(score, Heard.From(score));
        TuningStandardTests.AssertInTune(score, RawFile.Of(score, Standard));
    }

    private static void AssertDefined(Drill drill, double tonic, double[] ratios)
    {
        var section = drill.ToScore().Sections[0];
        Assert.Equal(8, section.Notes.Count);
        foreach (var note in section.Notes)
        {
            var tone = section.PitchOf(note).Tone;
            var hertz = tonic * ratios[tone.Degree.Semitones] * Math.Pow(2, tone.Octave);
            Assert.Equal(hertz, section.PitchOf(note).Hz, hertz * 1e-9);
        }
    }

    private static double[] Ratios(params int[] pairs) => [.. Enumerable.Range(0, 12).Select(i => (double)pairs[2 * i] / pairs[(2 * i) + 1])];
}
