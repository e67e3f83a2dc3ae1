using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.Tests;

/// <summary>Source: the promise that a carried drill's score equals the one that is made anew, or is refused with the same words.</summary>
public class CarriedDrillTests
{
    private static Gen<Drill> Drills { get; } = ScoreGenerators.InTime(Generators.Drills).Where(d => d.TryToScore(out var score, out _) && score.NoteCount <= 300);

    private static Gen<TempoRamp> Tempi { get; } = Gen.OneOf(
        Gen.Choose(10, 400).Select(t => TempoRamp.Constant(t)),
        from start in Gen.Choose(20, 200) from step in Gen.Choose(1, 30) from rounds in Gen.Choose(1, 3) select new TempoRamp(start, step, start + (step * rounds)));

    // From C1 to C7, so that notes leave MIDI's range too.
    private static Gen<Tonic> Tonics { get; } = Gen.OneOf(
        Gen.Choose(Tonic.LowestMidi, Tonic.HighestMidi).Select(m => Tonic.FromMidi(m)),
        Generators.Tonics,
        from letter in Gen.Elements('C', 'F', 'B') from alteration in Gen.Choose(-2, 2) from octave in Gen.Choose(2, 5) select Tonic.FromNote(new NoteName(letter, alteration, octave)));

    public static Arbitrary<Pair> Pairs() => (
        from drill in Drills
        from tonic in Tonics
        from tempo in Gen.OneOf(Tempi, Gen.Constant(drill.Tempo))
        from tuning in Gen.Elements(Tuning.Equal, Tuning.Just, Tuning.Pythagorean)
        from scale in Gen.OneOf(Generators.Scales, Gen.Constant(drill.Scale))
        from simpler in Gen.Elements(true, false)
        from drone in Gen.Elements<DroneStyle?>(DroneStyle.SrutiBox, DroneStyle.Tanpura with { StringCount = 5 }, null)
        from title in Gen.Elements("Carried", null)
        from keepsTonic in Gen.Elements(true, false)
        select new Pair(drill, Titled(title, drill with
        {
            Tonic = keepsTonic ? drill.Tonic : tonic, Tempo = tempo, Tuning = tuning, Scale = scale, HasSimplerSpelling = simpler, HasDrone = drone is not null,
            DroneStyle = drone ?? drill.DroneStyle,
        }))).ToArbitrary();

    [Property(Arbitrary = [typeof(CarriedDrillTests)], MaxTest = 400)]
    public void A_sibling_is_what_is_made_anew(Pair pair)
    {
        var (drill, sibling) = pair;
        var carried = new CarriedDrill(drill);
        Same(() => drill.ToScore(), carried.ToScore, pair);
        Same(() => sibling.ToScore(carried.Lines), () => carried.ToScore(sibling), pair);
        Same(() => (drill with { Tonic = sibling.Tonic }).ToScore(carried.Lines), () => carried.On(sibling.Tonic), pair);
        Same(() => (drill with { Tempo = sibling.Tempo }).ToScore(carried.Lines), () => carried.At(sibling.Tempo), pair);
        Same(() => (drill with { Tuning = sibling.Tuning }).ToScore(carried.Lines), () => carried.In(sibling.Tuning), pair);
        Same(
            () => (sibling with { Delivery = Delivery.Continuous, CountIn = 0, Speeds = [Speed.Second] }).ToScore(carried.Lines),
            () => carried.ToScore(sibling with { Delivery = Delivery.Continuous, CountIn = 0, Speeds = [Speed.Second] }),
            pair);
    }

    [Fact]
    public void The_exercises_in_other_scales_on_the_tonics_of_two_octaves_are_what_is_made_anew()
    {
        // Parts of the whole catalogue, another part for each exercise.
        var number = 0;
        foreach (var exercise in (Exercise[])[.. Repertoire.Traditional, .. Repertoire.Choir, .. Repertoire.Voice])
        {
            number++;
            var drill = new Drill
            {
                Scale = Catalogue.Default.Parent(1 + (number % 72)).Scale, Pattern = exercise.Pattern, Tonic = Tonic.Parse("C4"), Meter = exercise.Meter,
                Delivery = number % 2 == 0 ? Delivery.LineByLine : Delivery.Continuous,
            };
            if (!drill.Pattern.TryExpand(drill.Scale, out _, out _))
            {
                continue;
            }

            var carried = new CarriedDrill(drill);
            for (var midi = 48 + (number % 5); midi < 72; midi += 5)
            {
                var (tonic, tempo) = (Tonic.FromMidi(midi), 40 + (midi * number % 120));
                Assert.Equal((drill with { Tonic = tonic }).ToScore(), carried.On(tonic));
                Assert.Equal((drill with { Tempo = tempo, Tonic = tonic }).ToScore(), carried.ToScore(drill with { Tempo = tempo, Tonic = tonic }));
            }
        }
    }

    [Theory]
    [InlineData(false, true)]
    [InlineData(true, true)]
    public void The_lines_in_time_are_the_same_in_memory(bool isLineByLine, bool isShared)
    {
        var drill = new Drill
        {
            Scale = Catalogue.Default.Read("mohanam"), Pattern = Pattern.Ladder, Tonic = Tonic.Parse("C4"), Delivery = isLineByLine ? Delivery.LineByLine : Delivery.Continuous,
        };
        var carried = new CarriedDrill(drill);
        var own = carried.ToScore();
        Assert.Equal(isShared, Shares(own, carried.On(Tonic.Parse("D4"))));
        Assert.True(Shares(own, carried.In(Tuning.Just)));

        // At 60 a breath of a second is one akshara, at 55 rounded up to as much; at 90 it is one and a half.
        Assert.True(Shares(own, carried.At(55)));
        Assert.Equal(!isLineByLine, Shares(own, carried.At(90)));
    }

    [Fact]
    public void A_tonic_is_refused_with_the_words_of_making_anew()
    {
        // 24 steps of a five-note scale are nearly five octaves: within MIDI's range below C6, not below C1 (24).
        var drill = new Drill { Scale = Catalogue.Default.Read("mohanam"), Pattern = Pattern.Figure(-24, 0), Tonic = Tonic.Parse("C6") };
        var low = Tonic.Parse("C1");
        var anew = Assert.Throws<PatternException>(() => (drill with { Tonic = low }).ToScore());
        var carried = Assert.Throws<PatternException>(() => new CarriedDrill(drill).On(low));
        Assert.Equal(anew.Finding, carried.Finding);
        Assert.Equal(FindingCode.OutsideMidi, carried.Finding.Code);
    }

    private static bool Shares(Score one, Score other) =>
        Unsafe.AreSame(ref MemoryMarshal.GetReference(one.Sections[0].Notes.AsSpan()), ref MemoryMarshal.GetReference(other.Sections[0].Notes.AsSpan()));

    private static Drill Titled(string? title, Drill drill) => title is null ? drill : drill with { Title = title };

    private static void Same(Func<Score> anew, Func<Score> carried, Pair pair)
    {
        var (expected, found) = (Made(anew), Made(carried));
        Assert.True(expected.Equals(found), $"{pair}: {expected} and {found}");
    }

    private static (Score? Score, string Refusal) Made(Func<Score> make)
    {
        try
        {
            return (make(), string.Empty);
        }
        catch (Exception refused) when (refused is PatternException or ArgumentOutOfRangeException)
        {
            return (null, refused.Message);
        }
    }

    /// <summary>A drill, and another one with the same lines.</summary>
    public sealed record Pair(Drill Drill, Drill Sibling);
}
