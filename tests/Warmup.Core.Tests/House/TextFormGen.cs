using FsCheck;
using FsCheck.Fluent;

namespace Warmup.Tests;

/// <summary>Values of every type with a text form, to the ends of their ranges.</summary>
public static class TextFormGen
{
    // Names that try a reader: separators of the text forms, and what other forms begin with.
    private static readonly string[] AwkwardNames =
    [
        "own", "just", "just: 10/9", "vakra: a", "a = b", "=", "Adi", "free", "6/8", "x (4+2)", "a: b", "S R2 G3 S'", "two  spaces", "é", "midi 60", "equal, R2 10/9", "😀",
    ];

    private static Gen<string> Names { get; } = Gen.Frequency(
        (2, Gen.Elements(AwkwardNames)),
        (1, from text in Gen.Choose(0x21, 0x7E).Select(c => (char)c).NonEmptyListOf() select string.Concat(text.Take(100))));

    private static Gen<Degree> Letters { get; } = from letter in Gen.Choose(1, 7) from alteration in Gen.Choose(-2, 2) select new Degree(letter, alteration);

    private static Gen<double> Cents { get; } = Gen.Frequency(
        (3, Gen.Choose(-1_200_000, 1_200_000).Select(c => c / 1000.0)),
        (2, from high in Gen.Choose(0, int.MaxValue - 1) from scale in Gen.Choose(-300, 4) select (high + 0.1) * Math.Pow(10, scale - 9)),
        (1, Gen.Elements(0, -0.0, double.Epsilon, -double.Epsilon, 1e-5, 120_000, -120_000, 0.1 + 0.2)));

    private static Gen<Interval> AnyIntervals { get; } = Gen.OneOf(
        Cents.Select(Interval.FromCents),
        RationalGen.Any.Where(r => r.Sign > 0).Select(Interval.FromRatio));

    private static Gen<ScaleTone> AnyTones { get; } = from degree in Letters from octave in Gen.Choose(-9, 9) select new ScaleTone(degree, octave);

    private static Gen<Anga> AnyAngas { get; } = Gen.OneOf(
        Gen.Elements(Enum.GetValues<Jati>()).Select(Anga.Laghu),
        Gen.Elements(Anga.Drutam, Anga.Anudrutam),
        from gestures in Gen.Choose(0, 7).NonEmptyListOf() select new Anga(gestures.Take(9).Select(g => (Kriya)g).ToValueList()));

    public static Arbitrary<Rational> Rationals() => RationalGen.Rationals();

    public static Arbitrary<PatternVocabulary> Vocabularies() =>
        (from words in Gen.SubListOf("figure(1 2 3)", "run", ".ends", ".take(3)", ".each-note(2)", ".alternate", "+") select PatternVocabulary.Parse(string.Join(' ', words.Prepend("ladder")))).ToArbitrary();

    public static Arbitrary<Degree> Degrees() => Letters.ToArbitrary();

    public static Arbitrary<ScaleTone> Tones() => AnyTones.ToArbitrary();

    public static Arbitrary<NoteName> Notes() =>
        (from letter in Gen.Elements("ABCDEFG".ToCharArray()) from alteration in Gen.Choose(-3, 3) from octave in Gen.Choose(-2, 10) select new NoteName(letter, alteration, octave))
        .ToArbitrary();

    public static Arbitrary<Interval> Intervals() => AnyIntervals.ToArbitrary();

    public static Arbitrary<Tonic> Tonics() => Gen.Frequency(
        (2, from midi in Gen.Choose(24, 96) from a4 in References select Tonic.FromMidi(midi, a4)),
        (2, from midi in Gen.Choose(25, 95) from a4 in References select Tonic.FromNote(NoteName.FromMidi(midi), a4)),
        (1, from octave in Gen.Choose(1, 6) from triple in Gen.Elements(-3, 3) from a4 in References select Tonic.FromNote(new NoteName('F', triple, octave), a4)),
        (3, from hz in Gen.Choose(4_400_000, 170_000_000) from a4 in References select Tonic.FromHz(hz / 100_000.0, a4))).ToArbitrary();

    public static Arbitrary<Speed> Speeds() => (from kalam in Gen.Choose(1, 4) from gati in Gen.Elements(3, 4, 5, 7, 9) select new Speed(kalam, gati)).ToArbitrary();

    public static Arbitrary<TempoRamp> Ramps() => Gen.OneOf(
        from n in Gen.Choose(10_000, 400_000) from d in Gen.Elements(1000, 7, 9) select TempoRamp.Constant(Rational.Min(400, Rational.Max(10, new Rational(n, d)))),
        from start in Gen.Choose(10, 399) from step in Gen.Choose(1, 1000) from more in Gen.Choose(0, 30) select new TempoRamp(start, new Rational(step + 3, 12), Math.Min(400, start + more))).ToArbitrary();

    public static Arbitrary<Anga> Angas() => AnyAngas.ToArbitrary();

    public static Arbitrary<Meter> Meters() => Gen.OneOf(
        Gen.Elements((Meter[])[.. Meter.Talas, .. Meter.Chapus, Meter.Free]),
        from number in Gen.Choose(1, 64) from type in Gen.Elements(1, 2, 4, 8, 16, 32) select Meter.TimeSignature(number, type),
        from groups in Gen.Choose(1, 8).NonEmptyListOf() from type in Gen.Elements(1, 2, 4, 8, 16, 32) select Meter.Additive(groups.Take(8).ToValueList(), type),
        from name in Names from angas in AnyAngas.NonEmptyListOf() select Meter.Tala(name, angas.Take(7).ToValueList())).ToArbitrary();

    public static Arbitrary<ScaleKind> Kinds() => (from up in Gen.Choose(4, 7) from down in Gen.Choose(4, 7) select new ScaleKind((LetterCount)up, (LetterCount)down)).ToArbitrary();

    public static Arbitrary<Scale> Scales() => Gen.Frequency(
        (2, Generators.Scales),
        (2, from scale in Generators.Scales from name in Names select new Scale(name, scale.Ascent, scale.Descent)),
        (1, from name in Names
            from up in AnyTones.ListOf()
            from down in AnyTones.ListOf()
            from tops in Gen.Elements(true, false)
            select AsScale(name, up, down, tops))).ToArbitrary();

    public static Arbitrary<Tuning> Tunings() => Overridden(Gen.OneOf(
        Gen.Elements(Tuning.Equal, Tuning.Just, Tuning.Pythagorean),
        from r2 in Gen.Elements(new Rational(9, 8), new(10, 9))
        from d2 in Gen.Elements(new Rational(5, 3), new(27, 16))
        from n2 in Gen.Elements(new Rational(9, 5), new(16, 9))
        select Tuning.JustWith(r2: r2, d2: d2, n2: n2),
        from name in Names from others in AnyIntervals.ListOf(11) select new Tuning(name, [Interval.FromRatio(1), .. others]))).ToArbitrary();

    public static Arbitrary<Syllables> AllSyllables() => Gen.OneOf(
        Gen.Elements(Syllables.All.AsSpan().ToArray()),
        Gen.Elements("oo", "la", "lip trill", "a, b: c=d").Select(Syllables.Vowel),
        from name in Gen.Elements("own", "svara", "a=b", "two words")
        from texts in Gen.Elements("", "", "sa", "r2", "c=d", "e: f", "स", "two words").ListOf(35)
        where texts.Any(t => t.Length > 0)
        select Syllables.Custom(name, d => texts[(5 * (d.Letter - 1)) + d.Alteration + 2] is { Length: > 0 } text ? text : null),
        from name in Gen.Elements("own", "letters") from texts in Gen.Elements("sa", "ri", "x").ListOf(7) select Syllables.Custom(name, texts.ToValueList()))
        .SelectMany(s => Gen.Elements(s, s, s.WithOctaveDots())).ToArbitrary();

    public static Arbitrary<ScalaFile> Files() =>
        (from name in Gen.OneOf(Gen.Constant(string.Empty), Names.Where(n => n[0] != '!')) from pitches in AnyIntervals.ListOf() select new ScalaFile(name, pitches.ToValueList())).ToArbitrary();

    public static Arbitrary<Pattern> Patterns() => Generators.Patterns.ToArbitrary();

    private static Gen<double> References { get; } = Gen.OneOf(Gen.Constant(440.0), Gen.Choose(380_000, 500_000).Select(a => a / 1000.0), Gen.Constant(440.1 + 0.2));

    private static Gen<Tuning> Overridden(Gen<Tuning> tunings) =>
        from tuning in tunings
        from degrees in Letters.ListOf()
        from cents in Gen.Choose(-100_000, 100_000)
        from ratio in Gen.Elements(true, false)
        select degrees.Where(d => d != default).Take(3).Aggregate(tuning, (t, d) => t.With(d, Near(d, ratio ? 0 : cents / 1000.0, ratio)));

    private static Interval Near(Degree degree, double cents, bool asRatio)
    {
        var place = 100 * (((degree.Semitones % 12) + 12) % 12);
        return asRatio ? Interval.FromRatio(new Rational((long)Math.Round(1_000_000 * Math.Pow(2, place / 1200.0)), 1_000_000)) : Interval.FromCents(place + cents);
    }

    private static Scale AsScale(string name, IEnumerable<ScaleTone> up, IEnumerable<ScaleTone> down, bool reachesTop)
    {
        var top = new ScaleTone(default, 1);
        var second = new ScaleTone(new Degree(2));
        ScaleTone[] ends = reachesTop ? [default, second, top] : [default, second];
        return new Scale(name, Some(up, ends), Some(down, ends));

        ValueList<ScaleTone> Some(IEnumerable<ScaleTone> tones, ScaleTone[] also) => also.Concat(tones.Where(t => t != top || reachesTop).Take(10)).ToValueList();
    }
}
