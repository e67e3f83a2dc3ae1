namespace Warmup.TestSupport;

/// <summary>
/// For each public type that is a value: functions that build it, each giving another value. A test builds each twice, separately, so
/// that equality by reference does not pass for equality of content.
/// </summary>
public static class Samples
{
    public static IReadOnlyDictionary<Type, Func<object>[]> ByType { get; } = new Dictionary<Type, Func<object>[]>
    {
        [typeof(Rational)] = [() => new Rational(1, 2), () => new Rational(3), () => default(Rational)],
        [typeof(ValueList<>)] = [() => Numbers(1, 2), () => Numbers(2, 1), () => Numbers()],
        [typeof(TextError)] = [() => new TextError(1, 2, Text("a")), () => new TextError(2, 1, Text("a")), () => new TextError(1, 2, Text("b"))],
        [typeof(Degree)] = [() => new Degree(2, -1), () => new Degree(3), () => default(Degree)],
        [typeof(ScaleTone)] = [() => new ScaleTone(new Degree(2), 1), () => new ScaleTone(new Degree(2)), () => default(ScaleTone)],
        [typeof(PitchBand)] =
        [
            () => Band("a", 55, 76), () => Band("b", 55, 76), () => Band("a", 54, 76), () => Band("a", 55, 77), () => Band("a", 55, 76) with { IsAssumed = true },
        ],
        [typeof(TempoRange)] = [() => new TempoRange(50, 60), () => new TempoRange(51, 60), () => new TempoRange(50, 61)],
        [typeof(NoteName)] = [() => new NoteName('C', 1, 4), () => new NoteName('D', -1, 4), () => default(NoteName)],
        [typeof(Interval)] = [() => Interval.FromRatio(new Rational(3, 2)), () => Interval.FromCents(702), () => default(Interval)],
        [typeof(Tonic)] =
        [
            () => Tonic.FromMidi(60), () => Tonic.FromNote(new NoteName('C', 0, 4)), () => Tonic.FromHz(250), () => Tonic.FromMidi(60, 432),
        ],
        [typeof(Tuning)] = [() => MakeTuning("own", 3), () => MakeTuning("own", 4), () => MakeTuning("other", 3), () => Tuning.Just.With(new Degree(3), Interval.FromRatio(new Rational(81, 64)))],
        [typeof(Scale)] = [() => MakeScale("a", 15), () => MakeScale("a", 16), () => MakeScale("b", 15), () => new Scale(Text("a"), Catalogue.Default.Parent(15).Scale.Ascent, MakeScale("c", 16).Descent)],
        [typeof(ScaleKind)] =
        [
            () => new ScaleKind(LetterCount.Audava, LetterCount.Audava), () => new ScaleKind(LetterCount.Audava, LetterCount.Sampurna),
            () => new ScaleKind(LetterCount.Sampurna, LetterCount.Audava),
        ],
        [typeof(ScalaFile)] =
        [
            () => new ScalaFile(Text("a"), [Interval.FromRatio(2)]), () => new ScalaFile(Text("b"), [Interval.FromRatio(2)]),
            () => new ScalaFile(Text("a"), [Interval.FromCents(701.955), Interval.FromRatio(2)]),
        ],
        [typeof(Pattern)] =
        [
            () => Pattern.Parse("ladder"), () => Pattern.Parse("run.grow"), () => Pattern.Parse("empty"), () => Pattern.Parse("figure(1 2 3)"),
            () => Pattern.Parse("figure(1 3 2)"), () => Pattern.Parse("ladder.reversed"), () => Pattern.Parse("ladder.backwards"),
            () => Pattern.Parse("ladder.there-and-back"), () => Pattern.Parse("ladder.ends"), () => Pattern.Parse("ladder.mirrored"),
            () => Pattern.Parse("ladder.swapped"), () => Pattern.Parse("ladder.up-down"), () => Pattern.Parse("ladder.take(2)"),
            () => Pattern.Parse("ladder.take(3)"), () => Pattern.Parse("ladder.drop(2)"), () => Pattern.Parse("ladder.repeat(2)"),
            () => Pattern.Parse("ladder + empty"), () => Pattern.Parse("empty + ladder"),
        ],
        [typeof(Combinator)] =
        [
            () => MakeCombinator("one", "m"), () => MakeCombinator("two", "m"), () => MakeCombinator("one", "n"),
            () => MakeCombinator("one", "m") with { Laws = CombinatorLaws.EachLine }, () => MakeCombinator("one", "m").WithNumbers(1, 2),
            () => MakeCombinator("one", "m") with { Growth = static _ => 2 }, () => MakeCombinator("one", "m") with { Sentence = static _ => "s" },
            () => new Combinator(Text("one"), Text("m"), static _ => []),
        ],
        [typeof(PatternLanguage)] =
        [
            () => PatternLanguage.Standard, () => PatternLanguage.Standard.With(MakeCombinator("one", "m")),
            () => PatternLanguage.Standard.With(MakeCombinator("one", "n")),
        ],
        [typeof(PatternWord)] =
        [
            () => PatternLanguage.Standard.Words[0] with { }, () => PatternLanguage.Standard.Words[1] with { },
            () => PatternLanguage.Standard.With(MakeCombinator("one", "m")).Words[^1], () => PatternLanguage.Standard.With(MakeCombinator("one", "n")).Words[^1],
        ],
        [typeof(PatternVocabulary)] =
        [
            () => PatternVocabulary.Parse("ladder .ends"), () => PatternVocabulary.Parse("ladder .ends +"), () => PatternVocabulary.Parse("ladder .reversed"),
        ],
        [typeof(DifficultyWeights)] = [() => new DifficultyWeights(), () => new DifficultyWeights { Span = 1 }, () => new DifficultyWeights { Turns = 1 }],
        [typeof(Difficulty)] =
        [
            () => Difficulty.Of(MakeDrill().ToScore()), () => Difficulty.Of((MakeDrill() with { Tempo = 70 }).ToScore()),
        ],
        [typeof(SymmetryLaws)] = [.. ((string[])["ladder", "run", "run.there-and-back"]).Select(p => (Func<object>)(() => SymmetryLaws.Of(Pattern.Parse(p), MakeScale("a", 15))))],
        [typeof(LineNote)] = [() => Note(1), () => Note(2), () => default(LineNote)],
        [typeof(Line)] = [() => new Line(new[] { Note(1), Note(2) }.ToValueList()), () => new Line(new[] { Note(2), Note(1) }.ToValueList())],
        [typeof(Expansion)] = [() => Pattern.Parse("ladder").Expand(MakeScale("a", 15)), () => Pattern.Parse("ladder.ends").Expand(MakeScale("a", 15))],
        [typeof(Speed)] = [() => new Speed(2), () => new Speed(2, 3), () => default(Speed)],
        [typeof(Meter)] =
        [
            () => Meter.Adi, () => Meter.Free, () => Meter.TimeSignature(6, 8), () => Meter.Additive([2, 2, 3], 8), () => Meter.Parse(Text("khanda chapu")),
            () => Meter.Tala(Text("own"), [Anga.Drutam, new Anga([Kriya.Clap, Kriya.Silent])]), () => Meter.Tala(Text("own"), [Anga.Drutam, Anga.Drutam]),
        ],
        [typeof(Anga)] = [() => Anga.Laghu(Jati.Khanda), () => Anga.Laghu(Jati.Misra), () => Anga.Drutam, () => new Anga([Kriya.Clap, Kriya.Silent]), () => default(Anga)],
        [typeof(TempoRamp)] = [() => new TempoRamp(60, 5, 90), () => new TempoRamp(60, 5, 91), () => new TempoRamp(60, 6, 90), () => TempoRamp.Constant(60)],
        [typeof(TempoChange)] = [() => Ramped().TempoChanges[0], () => Ramped().TempoChanges[1], () => default(TempoChange)],
        [typeof(Delivery)] =
        [
            () => Delivery.Continuous, () => Delivery.LineByLine, () => Delivery.LineByLine with { BreathSeconds = 2 }, () => Delivery.LineByLine with { LeastHold = 2 },
        ],
        [typeof(Syllables)] = [() => Syllables.SvaraLetters, () => Syllables.Vowel(Text("o")), () => Syllables.Vowel(), () => Syllables.Custom(Text("own"), d => d.IsSvara ? Text("la") : null), () => Syllables.Solfa.WithOctaveDots()],
        [typeof(Drill)] =
        [
            () => MakeDrill(), () => MakeDrill() with { Tempo = 61 }, () => MakeDrill() with { Title = Text("t") }, () => MakeDrill() with { HasDrone = false },
            () => MakeDrill() with { DroneStyle = DroneStyle.SrutiBox },
            () => MakeDrill() with { Tuning = Tuning.Just }, () => MakeDrill() with { Meter = Meter.Free }, () => MakeDrill() with { Speeds = [Speed.Third] },
            () => MakeDrill() with { Delivery = Delivery.LineByLine }, () => MakeDrill() with { Syllables = Syllables.Vowel("o") },
            () => MakeDrill() with { Tonic = Tonic.FromMidi(61) }, () => MakeDrill() with { Pattern = Pattern.Parse("ladder.ends") },
            () => MakeDrill() with { Expansion = Pattern.Parse("ladder.ends").Expand(MakeScale("a", 15)) },
        ],
        [typeof(ScorePlace)] =
        [
            () => new ScorePlace(1, 2, 3), () => new ScorePlace(1, 2, 4), () => new ScorePlace(1, 2), () => new ScorePlace(2, 2, 3, Text("t")),
            () => new ScorePlace(2, 2, 3, Text("u")), () => default(ScorePlace),
        ],
        [typeof(Score)] = [() => MakeDrill().ToScore(), () => (MakeDrill() with { Tempo = 61 }).ToScore(), () => (MakeDrill() with { HasDrone = false }).ToScore()],
        [typeof(Section)] = [() => MakeDrill().ToScore().Sections[0], () => (MakeDrill() with { Tuning = Tuning.Just }).ToScore().Sections[0]],
        [typeof(ScorePitch)] = [() => Pitch(0), () => Pitch(1)],
        [typeof(ScoreNote)] = [() => MakeDrill().ToScore().Sections[0].Notes[0], () => MakeDrill().ToScore().Sections[0].Notes[1], () => default(ScoreNote)],
        [typeof(ScoreLine)] = [() => MakeDrill().ToScore().Sections[0].Lines[0], () => MakeDrill().ToScore().Sections[0].Lines[1], () => MakeDrill().ToScore().WithAnswers().Sections[0].Lines[0], () => default(ScoreLine)],
        [typeof(Breath)] = [() => new Breath(7, 1, 1), () => new Breath(7, 1, 2), () => default(Breath)],
        [typeof(Measure)] = [() => MakeDrill().ToScore().Sections[0].Measures[0], () => MakeDrill().ToScore().Sections[0].Measures[1], () => default(Measure)],
        [typeof(DroneStroke)] = [() => MakeDrone(15).Strokes(20).First(), () => MakeDrone(15).Strokes(20).Last(), () => default(DroneStroke)],
        [typeof(Drone)] = [() => MakeDrone(15), () => MakeDrone(15) with { RestSeconds = 3 }, () => MakeDrone(15) with { StrokeSeconds = 2 }, () => MakeDrone(15) with { IsHeld = true }],
        [typeof(TunedScale)] = [() => Tuned(15), () => Tuned(16)],
        [typeof(TunedNote)] = [() => Tuned(15).Notes[0], () => Tuned(15).Notes[1]],
        [typeof(Beating)] = [() => Tuned(15).Notes[0].Beating, () => Tuned(15).Notes[1].Beating, () => default(Beating)],
        [typeof(DroneStyle)] =
        [
            () => DroneStyle.Tanpura with { }, () => DroneStyle.SrutiBox with { }, () => DroneStyle.Tanpura with { StringCount = 5 },
            () => DroneStyle.Tanpura with { First = new Degree(4) }, () => DroneStyle.Tanpura with { Second = new Degree(7) },
            () => DroneStyle.Tanpura with { StrokeSeconds = 2 }, () => DroneStyle.Tanpura with { RestSeconds = 3 },
        ],
        [typeof(Finding)] =
        [
            () => new Finding(VoiceFindingCode.AboveRange, Severity.Error, Text("m"), Text("f")), () => new Finding(VoiceFindingCode.AboveRange, Severity.Note, Text("m"), Text("f")),
            () => new Finding(VoiceFindingCode.AboveRange, Severity.Error, Text("m"), Text("f")) { Place = new ScorePlace(1, 2, 3, Text("t")), Measured = 3, Limit = 4, Unit = "s", Singer = Text("a") },
        ],
        [typeof(Singer)] =
        [
            () => MakeSinger("a", 55, 10), () => MakeSinger("b", 55, 10), () => MakeSinger("a", 56, 10), () => MakeSinger("a", 55, 11),
            () => new Singer(Text("a"), NoteName.FromMidi(55), NoteName.FromMidi(74), 10, Experience.Advanced),
            () => MakeSinger("a", 55, 10).With(Measured(1, 55, 10)), () => MakeSinger("a", 55, 10).With(Measured(2, 55, 10)),
        ],
        [typeof(Measurement)] =
        [
            () => Measured(1, 55, 10), () => Measured(2, 55, 10), () => Measured(1, 56, 10), () => Measured(1, 55, 11), () => Measured(1, 55, 10) with { FullLow = NoteName.FromMidi(50) },
            () => new Measurement(new DateOnly(2026, 3, 1), NoteName.FromMidi(55), NoteName.FromMidi(74), [10, 9], TrialRule.Best),
        ],
        [typeof(AgilityLimits)] = [() => AgilityLimits.Of(Experience.Beginner), () => AgilityLimits.Of(Experience.Advanced)],
        [typeof(BreathNeed)] = [() => new BreathNeed(8, 1), () => new BreathNeed(9, 1), () => new BreathNeed(8, new Rational(1, 2))],
        [typeof(TempoRamp)] = [() => new TempoRamp(60, 4, 80), () => new TempoRamp(60, 5, 80), () => TempoRamp.Constant(60)],
    };

    /// <summary>A text that is a new object each time.</summary>
    private static string Text(string text) => new(text.AsSpan());

    private static ValueList<int> Numbers(params int[] numbers) => numbers.ToValueList();

    private static Scale MakeScale(string name, int parent) => new(Text(name), Catalogue.Default.Parent(parent).Scale.Ascent);

    private static Tuning MakeTuning(string name, int third) => new(
        Text(name),
        Enumerable.Range(0, 12).Select(i => i == third ? Interval.FromCents((100 * i) + 7) : Interval.FromCents(100 * i)).ToValueList());

    private static Combinator MakeCombinator(string name, string meaning) => new(Text(name), Text(meaning), static input => input.Lines);

    private static LineNote Note(int length) => new(new ScaleTone(new Degree(2)), ScaleDirection.Ascent, Approach.Leap, length);

    private static Drill MakeDrill() => new() { Scale = MakeScale("a", 15), Pattern = Pattern.Parse("ladder"), Tonic = Tonic.FromMidi(60) };

    private static Section Ramped() => (MakeDrill() with { Tempo = new TempoRamp(60, 10, 80) }).ToScore().Sections[0];

    private static ScorePitch Pitch(int at) => MakeDrill().ToScore().Sections[0].Pitches[at];

    private static TunedScale Tuned(int parent) => TunedScale.Of(MakeScale("a", parent), Tonic.FromMidi(60), Tuning.Just);

    private static Drone MakeDrone(int parent) => DroneStyle.Tanpura.For(MakeScale("a", parent), Tonic.FromMidi(60), Tuning.Equal, new NoteName('C', 0, 4));

    private static PitchBand Band(string name, int low, int high) => new(Text(name), NoteName.FromMidi(low), NoteName.FromMidi(high));

    private static Measurement Measured(int day, int low, int seconds) => new(new DateOnly(2026, 3, day), NoteName.FromMidi(low), NoteName.FromMidi(74), seconds);

    private static Singer MakeSinger(string alias, int low, int seconds) => new(Text(alias), NoteName.FromMidi(low), NoteName.FromMidi(74), seconds);
}
