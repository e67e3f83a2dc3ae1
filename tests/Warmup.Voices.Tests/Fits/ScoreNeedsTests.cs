using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.Voices.Tests;

/// <summary>Source: the checks themselves, made for every singer on every score.</summary>
public class ScoreNeedsTests
{
    private static readonly Gen<(Drill Drill, Singer Singer)> Any =
        from scale in Gen.Elements("mohanam", "15", "kalyani", "major")
        from pattern in Gen.Elements("ladder", "run.there-and-back", "figure(1 3 2 4).up-down", "[S G P S' P G S]", "run.pairs(2).join")
        from tonic in Gen.Choose(48, 66)
        from hz in Gen.Elements(0, 0, 3)
        from tuning in Gen.Elements(Tuning.Equal, Tuning.Just)
        from tempo in Gen.Choose(40, 200)
        from line in Gen.Elements(Delivery.LineByLine, Delivery.Continuous)
        from low in Gen.Choose(41, 60)
        from width in Gen.Choose(5, 26)
        from seconds in Gen.Choose(4, 30)
        from experience in Gen.Elements(Experience.Beginner, Experience.Intermediate, Experience.Advanced)
        select (
            new Drill
            {
                Scale = Catalogue.Default.Read(scale),
                Pattern = Pattern.Parse(pattern),
                Tonic = hz == 0 ? Tonic.FromMidi(tonic) : Tonic.FromHz(Tonic.FromMidi(tonic).Hz * 1.02),
                Tuning = tuning,
                Tempo = tempo,
                Delivery = line,
            },
            new Singer("Robin", NoteName.FromMidi(low), NoteName.FromMidi(low + width), seconds, experience));

    [Property(MaxTest = 200)]
    public Property Needs_say_what_the_checks_say() => Prop.ForAll(Any.ToArbitrary(), both =>
    {
        var score = both.Drill.ToScore();
        var needs = ScoreNeeds.Of(score, [both.Singer.ShortestBreathSeconds], [both.Singer.Experience]);
        var codes = score.Check(both.Singer).Select(f => f.Code).ToHashSet();
        Assert.Equal(!codes.Overlaps([VoiceFindingCode.AboveRange, VoiceFindingCode.BelowRange]), needs.IsInRange(both.Singer, both.Drill.Tonic.Midi));
        Assert.Equal(!codes.Contains(VoiceFindingCode.BreathTooLong), needs.IsInBreath(both.Singer));
        Assert.Equal(codes.Contains(VoiceFindingCode.TooFast), needs.TooFastFor.Contains(both.Singer.Experience));
        return (codes.Count == 0).ToProperty().Or(true).Classify(codes.Count == 0, "fits");
    });

    [Property(MaxTest = 50)]
    public Property Needs_move_with_the_tonic() => Prop.ForAll(Any.ToArbitrary(), Gen.Choose(-12, 12).ToArbitrary(), (both, semitones) =>
    {
        var (here, there) = (both.Drill.ToScore(), (both.Drill with { Tonic = both.Drill.Tonic.Transposed(semitones) }).ToScore());
        Assert.Equal(ScoreNeeds.Of(here, [1], [Experience.Advanced]), ScoreNeeds.Of(there, [1], [Experience.Advanced]));
    });

    [Fact]
    public void Breaths_that_were_not_measured_are_refused() =>
        Assert.Throws<ArgumentException>(() => ScoreNeeds.Of(new Drill { Scale = Catalogue.Default.Read("mohanam"), Pattern = Pattern.Ladder, Tonic = Tonic.Parse("G3") }.ToScore(), [], [])
            .IsInBreath(new Singer("Robin", NoteName.FromMidi(50), NoteName.FromMidi(70), 10)));
}
