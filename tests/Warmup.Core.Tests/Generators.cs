using FsCheck;
using FsCheck.Fluent;

namespace Warmup.Tests;

/// <summary>
/// Scales, patterns, drills and singers for the laws. Shares are kept so that no law passes empty: a good part of the scales differ up
/// and down, and a good part zigzag.
/// </summary>
public static class Generators
{
    // First, since the others are made of it.
    private static Gen<ScaleTone[]> Rising { get; } =
        from kept in Gen.Choose(1, 62)
        from variants in Gen.ArrayOf(Gen.Choose(0, 2), 6)
        select (ScaleTone[])[
            default,
            .. Enumerable.Range(0, 6)
                .Where(i => (kept & (1 << i)) != 0)
                .Select(i => new ScaleTone(Variant("RGMPDN"[i], variants[i]))),
            new ScaleTone(default, 1)];

    public static Gen<Scale> Scales { get; } = Gen.Frequency(
        (3, Gen.Elements(Catalogue.Default.Entries.AsSpan().ToArray()).Select(e => e.Scale)),
        (2, Written(false, true)),
        (3, Written(false, false)),
        (3, Written(true, false)));

    public static Gen<Pattern> Patterns { get; } = PatternOf(3);

    public static Gen<Tonic> Tonics { get; } = Gen.Frequency(
        (3, Gen.Choose(40, 64).Select(m => Tonic.FromMidi(m))),
        (1, from midi in Gen.Choose(40, 64) from a4 in Gen.Choose(415, 466) select Tonic.FromMidi(midi, a4)),
        (1, from hz in Gen.Choose(8200, 32900) select Tonic.FromHz(hz / 100.0)),
        (1, from letter in Gen.Elements('C', 'D', 'E', 'F', 'G', 'A', 'B')
            from alteration in Gen.Choose(-1, 1)
            select Tonic.FromNote(new NoteName(letter, alteration, 3))));

    public static Gen<Delivery> Deliveries { get; } = Gen.Frequency(
        (2, Gen.Constant(Delivery.Continuous)),
        (1, Gen.Constant(Delivery.LineByLine)),
        (1, from tenths in Gen.Choose(2, 100)
            from quarters in Gen.Choose(1, 12)
            from grid in Gen.Elements(1, 2, 3, 4, 24)
            select Delivery.LineByLine with { BreathSeconds = new Rational(tenths, 10), LeastHold = new Rational(quarters, 4), BreathGrid = grid }));

    public static Gen<Drill> Drills { get; } =
        from scale in Scales
        from pattern in Patterns
        from tonic in Tonics
        from tuning in Gen.Elements(Tuning.Equal, Tuning.Just)
        from meter in Gen.Elements(Meter.Adi, Meter.Adi, Meter.Free)
        from kalam in Gen.Choose(1, 3)
        from gati in Gen.Frequency((3, Gen.Constant(4)), (1, Gen.Elements(3, 5, 7, 9)))
        from tempo in Gen.Choose(20, 300)
        from halves in Gen.Choose(1, 2)
        from delivery in Deliveries
        select new Drill
        {
            Scale = scale,
            Pattern = pattern,
            Tonic = tonic,
            Tuning = tuning,
            Meter = meter,
            Speeds = [new Speed(kalam, gati)],
            Tempo = new Rational(tempo, halves),
            Delivery = delivery,
        };

    /// <summary>Drills that can be sung: what a scale refuses is left out.</summary>
    public static Gen<Sung> Scores { get; } = Drills
        .Select(d => d.TryToScore(out var score, out _) ? new Sung(d, score!) : null)
        .Where(s => s is not null && s.Score.NoteCount <= 2_000)
        .Select(s => s!);

    public static Gen<Singer> Singers { get; } =
        from low in Gen.Choose(36, 66)
        from span in Gen.Choose(0, 30)
        from tenths in Gen.Choose(10, 400)
        from experience in Gen.Elements(Experience.Beginner, Experience.Intermediate, Experience.Advanced)
        select new Singer("voice", NoteName.FromMidi(low), NoteName.FromMidi(low + span), new Rational(tenths, 10), experience);

    private static Degree Variant(char letter, int choice)
    {
        var variant = letter switch { 'P' => 0, 'M' => 1 + (choice % 2), _ => 1 + choice };
        return Degree.Parse(variant == 0 ? "P" : $"{letter}{variant}");
    }

    private static Gen<Scale> Written(bool bent, bool alike) =>
        from up in bent ? Rising.SelectMany(Bend) : Rising
        from down in Rising
        select new Scale("generated", up.ToValueList(), alike ? null : Enumerable.Reverse(down).ToValueList());

    /// <summary>Puts a bend into a list: x y becomes x y x y.</summary>
    private static Gen<ScaleTone[]> Bend(ScaleTone[] tones) =>
        from at in Gen.Choose(0, tones.Length - 3)
        select (ScaleTone[])[.. tones[..(at + 2)], tones[at], .. tones[(at + 1)..]];

    private static Gen<Pattern> PatternOf(int depth)
    {
        var primitive = Gen.Frequency(
            (4, Gen.Constant(Pattern.Ladder)),
            (1, Gen.Constant(Pattern.Run.Grow())),
            (3, from first in Gen.Choose(-1, 2) from rest in Gen.ArrayOf(Gen.Choose(-2, 5), 3) select Pattern.Figure([first, .. rest])));
        if (depth == 0)
        {
            return primitive;
        }

        var inner = PatternOf(depth - 1);
        return Gen.Frequency(
            (3, primitive),
            (1, inner.Select(p => p.Reversed())),
            (1, inner.Select(p => p.Backwards())),
            (1, inner.Select(p => p.ThereAndBack())),
            (1, inner.Select(p => p.Ends())),
            (1, inner.Select(p => p.Mirrored())),
            (1, inner.Select(p => p.Swapped())),
            (1, inner.Select(p => p.UpDown())),
            (1, from p in inner from q in inner select p + q),
            (1, from p in inner from n in Gen.Choose(1, 3) select p.Take(n)),
            (1, from p in inner from n in Gen.Choose(1, 3) select p.Repeat(n)));
    }
}

/// <summary>A drill and its score; a failing test prints the drill, which is short.</summary>
public sealed record Sung(Drill Drill, Score Score)
{
    public override string ToString() => Drill.ToString();
}

/// <summary>What the generators give by type, for properties that name them.</summary>
public static class Arbitraries
{
    public static Arbitrary<Scale> Scales() => Generators.Scales.ToArbitrary();

    public static Arbitrary<Pattern> Patterns() => Generators.Patterns.ToArbitrary();

    public static Arbitrary<Drill> Drills() => Generators.Drills.ToArbitrary();

    public static Arbitrary<Sung> Scores() => Generators.Scores.ToArbitrary();

    public static Arbitrary<Singer> Singers() => Generators.Singers.ToArbitrary();
}

/// <summary>The generators' own shares: at least 30 % of scales that differ up and down, 20 % that zigzag, and enough drills that can be sung.</summary>
public class GeneratorTests
{
    [Fact]
    public void Enough_scales_differ_up_and_down_and_enough_zigzag()
    {
        var scales = Gen.Sample(Generators.Scales, 2_000, 50).ToList();
        Assert.True(scales.Count(s => !s.IsSymmetric) >= 600, scales.Count(s => !s.IsSymmetric).ToString(System.Globalization.CultureInfo.InvariantCulture));
        Assert.True(scales.Count(s => s.IsVakra) >= 400, scales.Count(s => s.IsVakra).ToString(System.Globalization.CultureInfo.InvariantCulture));
    }

    [Fact]
    public void Most_drills_can_be_sung()
    {
        var drills = Gen.Sample(Generators.Drills, 300, 50).ToList();
        var sung = drills.Count(d => d.TryToScore(out _, out _));
        Assert.True(sung >= 150, sung.ToString(System.Globalization.CultureInfo.InvariantCulture));
    }
}
