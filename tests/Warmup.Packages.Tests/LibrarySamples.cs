using FsCheck;
using FsCheck.Fluent;
using Warmup.Audio;
using Warmup.Drawing;
using Warmup.Midi;
using Warmup.MusicXml;
using Warmup.Plans;
using Warmup.Sheets;
using Warmup.Reading;
using Warmup.Takes;
using Warmup.Testing;

namespace Warmup.Packages.Tests;

/// <summary>
/// For the values of all libraries: functions that build them, each giving another value. Those not here are positional records, built
/// from their constructors.
/// </summary>
internal static class LibrarySamples
{
    private static readonly Gen<Pattern> SomePatterns = Gen.Constant(Pattern.Ladder);
    private static readonly Gen<Scale> SomeScales = Gen.Constant(new Scale("a", Catalogue.Default.Parent(15).Scale.Ascent));
    private static readonly Func<PatternRule, Pattern, Pattern, Scale, LawVerdict> SomeCheck = (_, _, _, _) => LawVerdict.Holds;
    private static readonly Func<PatternRule, Pattern, Pattern, Scale, LawVerdict> OtherCheck = (_, _, _, _) => LawVerdict.Broken;
    private static readonly Func<Score, Score, LawVerdict> Holding = (_, _) => LawVerdict.Holds;
    private static readonly Func<Score, Score, LawVerdict> Breaking = (_, _) => LawVerdict.Broken;

    public static IReadOnlyDictionary<Type, Func<object>[]> ByType { get; } = new Dictionary<Type, Func<object>[]>(Samples.ByType)
    {
        [typeof(WavOptions)] =
        [
            () => new WavOptions(), () => new WavOptions { Channels = WavChannels.Mono }, () => new WavOptions { HasDrone = false },
            () => new WavOptions { HasBeat = false }, () => new WavOptions { HasVoice = false }, () => new WavOptions { BeatDecibels = -41 },
            () => new WavOptions { CountInBeats = 3 }, () => new WavOptions { DroneSound = DroneSound.Held },
        ],
        [typeof(ReadingOptions)] =
        [
            () => new ReadingOptions(), () => new ReadingOptions { Scale = Catalogue.Default.Parent(15).Scale }, () => new ReadingOptions { Tonic = Tonic.Parse("C4") },
            () => new ReadingOptions { Part = Text("Voice") },
        ],
        [typeof(ReadSection)] = [() => Typed("S R G").Sections[0], () => Typed("S R").Sections[0], () => Typed("Tonic: G3\nS R").Sections[0], () => Typed("Tempo: 80\nS R").Sections[0]],
        [typeof(FoundRule)] =
        [
            () => RuleFinder.Find(Typed("S R G / R G M / G M P / M P D").Sections[0])[0], () => RuleFinder.Find(Typed("S R G / R G M / G M P").Sections[0])[0],
            () => RuleFinder.Find(Typed("S R / S R G / S R G M / S R G M P").Sections[0])[0],
        ],
        [typeof(Remark)] =
        [
            () => Typed("S R G\nplease hum softly\nS R").Remarks[0], () => Typed("S R G\nplease hum loudly\nS R").Remarks[0],
            () => Typed("S R G\nS R\nplease hum softly\nS R").Remarks[0],
        ],
        [typeof(TonicProposal)] =
        [
            () => Typed("S R G").Sections[0].Proposals[0], () => Typed("Tonic: G3\nS R G").Sections[0].Proposals[0], () => Typed("Scale: mohanam\nS R G").Sections[0].Proposals[0],
        ],
        [typeof(ReadMusic)] = [() => Typed("S R G"), () => Typed("S R"), () => Typed("Title: one\nS R"), () => Typed("Tala: adi\nS R")],
        [typeof(TakeNote)] =
        [
            () => Note(0), () => Note(1), () => Note(0) with { Line = 2 }, () => Note(0) with { Round = 2 }, () => Note(0) with { Status = NoteStatus.Unsure },
            () => Note(0) with { Tone = new ScaleTone(default, 1) }, () => Note(0) with { Onset = 1.5 }, () => Note(0) with { End = 2.5 }, () => Note(0) with { Cents = 3 },
            () => Note(0) with { Spread = 2 }, () => Note(0) with { Vibrato = 40 }, () => Note(0) with { Late = 12 }, () => Note(0) with { SungTone = new ScaleTone(default, 1) },
            () => Note(0) with { Why = Text("a") }, () => Note(0) with { Course = [new TakePoint(1, 5)] },
        ],
        [typeof(VoiceRange)] = [() => RangeOf(220), () => RangeOf(330)],
        [typeof(TakeLine)] =
        [
            () => Line(1), () => Line(2), () => Line(1) with { Round = 2 }, () => Line(1) with { Times = 2 }, () => Line(1) with { BrokenOff = 1 },
            () => Line(1) with { Heard = 4 }, () => Line(1) with { InTune = 2 }, () => Line(1) with { Cents = 7 },
        ],
        [typeof(TakeReport)] =
        [
            () => Take(true), () => Take(false), () => Take(false) with { Reason = Text("a") }, () => Take(true) with { OffsetCents = 4 }, () => Take(true) with { Octave = 1 },
            () => Take(true) with { DriftCents = 9 }, () => Take(true) with { Seconds = 9 }, () => Take(true) with { Notes = [Note(0)] }, () => Take(true) with { Lines = [Line(1)] },
            () => Take(true) with { Breaths = [new TakeBreath(1, 0.5, 3, true)] }, () => Take(true) with { Events = [new TakeEvent(TakeEventKind.Skip, 1, 1, 2)] },
            () => Take(true) with { Tempi = [new TakeTempo(1, 60)] }, () => Take(true) with { Doubts = [Text("a")] },
        ],
        [typeof(MidiOptions)] =
        [
            () => new MidiOptions(), () => new MidiOptions { Tuning = MidiTuning.EqualOnly }, () => new MidiOptions { HasDrone = false },
            () => new MidiOptions { VoiceProgram = 1 }, () => new MidiOptions { Text = MidiTextEncoding.Utf8 }, () => new MidiOptions { IsSingleTrack = true },
        ],
        [typeof(MusicXmlOptions)] =
        [
            () => new MusicXmlOptions(), () => new MusicXmlOptions { Clef = MusicXmlClef.Bass }, () => new MusicXmlOptions { Date = new DateOnly(2026, 12, 1) },
            () => new MusicXmlOptions { FurtherVerses = [Words("la", "le")] }, () => new MusicXmlOptions { FurtherVerses = [Words("la", "li")] },
            () => new MusicXmlOptions { SecondVoiceSemitones = 12 },
        ],
        [typeof(MusicXmlVerse)] = [() => Words("la", "le"), () => Words("le", "la"), () => MusicXmlVerse.Of(Syllables.Vowel(Text("o"))), () => MusicXmlVerse.Of(Syllables.Vowel(Text("u")))],
        [typeof(HtmlOptions)] =
        [
            () => new HtmlOptions(), () => new HtmlOptions { HasHiddenNotes = true }, () => new HtmlOptions { Letters = Syllables.Vowel(Text("o")) }, () => new HtmlOptions { CountInBeats = 3 }, () => new HtmlOptions { SlowestPercent = 60 },
            () => new HtmlOptions { Tempi = new TempoRange(50, 60) }, () => new HtmlOptions { Tempi = new TempoRange(50, 61) },
        ],
        [typeof(TextSheetOptions)] =
        [
            () => new TextSheetOptions(), () => new TextSheetOptions { HasHiddenNotes = true }, () => new TextSheetOptions { Letters = Syllables.Vowel(Text("o")) }, () => new TextSheetOptions { Letters = Syllables.Vowel(Text("u")) },
        ],
        [typeof(RangeChartOptions)] = [() => new RangeChartOptions(), () => new RangeChartOptions { Title = Text("a") }, () => new RangeChartOptions { MostBars = 2 }],
        [typeof(RangeBar)] =
        [
            () => Bar("a"), () => Bar("b"), () => Bar("a") with { Octaves = -1 }, () => Bar("a") with { Verdict = [Text("fits")] },
            () => Bar("a") with { IsTooHigh = true }, () => Bar("a") with { IsTooLow = true }, () => Bar("a") with { FullLow = NoteName.FromMidi(40) },
        ],
        [typeof(Sheet)] = [() => SheetOf("a"), () => SheetOf("b"), () => Sheet.Of(SheetOf("a").Score, Syllables.Solfa)],
        [typeof(SheetSection)] = [() => SheetOf("a").Sections[0], () => SheetOf("b").Sections[0]],
        [typeof(SheetBlock)] = [() => SheetOf("a").Sections[0].Blocks[0], () => SheetOf("a").Sections[0].Blocks[1]],
        [typeof(SheetLine)] = [() => SheetOf("a").Sections[0].Blocks[0].Lines[0], () => SheetOf("a").Sections[0].Blocks[0].Lines[1]],
        [typeof(SheetSign)] = [() => SheetOf("a").Sections[0].Blocks[0].Lines[0].Signs[0], () => SheetOf("a").Sections[0].Blocks[0].Lines[0].Signs[1]],
        [typeof(SheetTone)] = [() => SheetOf("a").ToneOf(new ScaleTone(default)), () => SheetOf("a").ToneOf(new ScaleTone(default, 1))],
        [typeof(SheetRow)] = [() => Rows(Meter.Adi, 8).RowsOf(SheetOf("a").Sections[0].Blocks[0].Lines)[0], () => Rows(Meter.Adi, 4).RowsOf(SheetOf("a").Sections[0].Blocks[0].Lines)[0]],
        [typeof(SheetSigns)] = [() => SheetOf("a").Signs, () => Sheet.Of(SheetOf("a").Score.WithAnswers()).Signs],
        [typeof(AvartanaRows)] = [() => Rows(Meter.Adi, 8), () => Rows(Meter.Adi, 4), () => Rows(Meter.Free, 8)],
        [typeof(FontFile)] = [() => Font(0, "a"), () => Font(1, "a"), () => Font(0, "b")],
        [typeof(SheetOptions)] =
        [
            () => new SheetOptions(), () => new SheetOptions { HasHiddenNotes = true }, () => new SheetOptions { Letters = Syllables.Vowel(Text("o")) }, () => new SheetOptions { Page = 1 },
            () => new SheetOptions { DotsPerInch = 72 }, () => new SheetOptions { Fonts = [Font(0, "a")] }, () => new SheetOptions { Fonts = [Font(1, "a")] },
        ],
        [typeof(FormPart)] = [() => new FormPart(Text("a"), [Text("s")]), () => new FormPart(Text("b"), [Text("s")]), () => new FormPart(Text("a"), [Text("s"), Text("t")])],
        [typeof(PrintedForm)] =
        [
            () => new PrintedForm(Text("a"), [Text("c")]), () => new PrintedForm(Text("b"), [Text("c")]), () => new PrintedForm(Text("a"), [Text("c"), Text("d")]),
            () => new PrintedForm(Text("a"), [Text("c")]) { Rows = [[Text("r")]] }, () => new PrintedForm(Text("a"), [Text("c")]) { Parts = [new FormPart(Text("a"), [])] },
            () => new PrintedForm(Text("a"), [Text("c"), Text("d")]) { WideColumn = 1 }, () => new PrintedForm(Text("a"), [Text("c")]) { Sung = [new SungNote(Text("S"), 0, 1, 0, SungMark.High)] },
        ],
        [typeof(SungPoint)] = [() => new SungPoint(1, 2), () => new SungPoint(2, 2), () => new SungPoint(1, 3)],
        [typeof(SungNote)] =
        [
            () => new SungNote(Text("S"), 0, 1, 0, SungMark.High), () => new SungNote(Text("R"), 0, 1, 0, SungMark.High), () => new SungNote(Text("S"), 1, 1, 0, SungMark.High), () => new SungNote(Text("S"), 0, 2, 0, SungMark.High),
            () => new SungNote(Text("S"), 0, 1, 2, SungMark.High), () => new SungNote(Text("S"), 0, 1, 0, SungMark.Low), () => new SungNote(Text("S"), 0, 1, 0, SungMark.High) { Course = [new SungPoint(0, 0)] },
        ],
        [typeof(MeasuredPoint)] =
        [
            () => Measured(1, 60, 72, 10), () => Measured(2, 60, 72, 10), () => Measured(1, 59, 72, 10), () => Measured(1, 60, 73, 10), () => Measured(1, 60, 72, 11),
            () => Measured(1, 60, 72, 10) with { FullLow = NoteName.FromMidi(58) }, () => Measured(1, 60, 72, 10) with { FullHigh = NoteName.FromMidi(75) }, () => Measured(1, 60, 72, 10) with { IsAssumed = true },
        ],
        [typeof(MeasuredVoice)] =
        [
            () => new MeasuredVoice(Text("a"), [Measured(1, 60, 72, 10)]), () => new MeasuredVoice(Text("b"), [Measured(1, 60, 72, 10)]), () => new MeasuredVoice(Text("a"), [Measured(2, 60, 72, 10)]),
        ],
        [typeof(HistoryChart)] =
        [
            () => new HistoryChart([new MeasuredVoice(Text("a"), [Measured(1, 60, 72, 10)])]), () => new HistoryChart([new MeasuredVoice(Text("b"), [Measured(1, 60, 72, 10)])]),
            () => new HistoryChart([new MeasuredVoice(Text("a"), [Measured(1, 60, 72, 10)])]) { Title = Text("t") },
        ],
        [typeof(OnePageOptions)] =
        [
            () => new OnePageOptions(), () => new OnePageOptions { Letters = Syllables.Vowel(Text("o")) }, () => new OnePageOptions { Page = 1 },
            () => new OnePageOptions { DotsPerInch = 72 }, () => new OnePageOptions { Fonts = [Font(0, "a")] },
        ],
        [typeof(ContourOptions)] = [() => new ContourOptions(), () => new ContourOptions { Band = MakeSinger("a").Band }, () => new ContourOptions { Band = MakeSinger("b").Band }],
        [typeof(ScoreChecks)] = [() => ScoreChecks.Standard, () => ScoreChecks.Standard.With(OwnCheck), () => ScoreChecks.Standard.Without(ScoreChecks.Agility)],
        [typeof(MeasuringStep)] = [() => MeasuringSteps.All[0], () => MeasuringSteps.All[1]],
        [typeof(VoiceType)] = [() => VoiceTypes.All[0], () => VoiceTypes.All[1]],
        [typeof(BreathSpan)] = [() => BreathSpan.Of(Sung(60), 1).First(), () => BreathSpan.Of(Sung(70), 1).First(), () => default(BreathSpan)],
        [typeof(IntervalCounts)] = [() => Facts("ladder").Intervals, () => Facts("run.ends").Intervals, () => Facts("figure(1 3)").Intervals],
        [typeof(PatternFacts)] = [() => Facts("ladder"), () => Facts("run"), () => Facts("ladder.ends")],
        [typeof(RangeUse)] = [() => RangeUse.Of(Sung(60), Narrow()), () => RangeUse.Of(Sung(70), Narrow())],
        [typeof(LineRangeUse)] = [() => RangeUse.Of(Sung(60), Narrow()).Lines[0], () => RangeUse.Of(Sung(60), Narrow()).Lines[1]],
        [typeof(NoteOutside)] = [() => RangeUse.Of(Sung(60), Narrow()).Outside[0], () => RangeUse.Of(Sung(60), Narrow()).Outside[1]],
        [typeof(BreathPlan)] = [() => Breathing(60), () => Breathing(70)],
        [typeof(SungTime)] = [() => SungTime.Of(Sung(60)), () => SungTime.Of(Sung(70)), () => SungTime.None],
        [typeof(ClassBreath)] = [() => ClassBreath.Of([Sung(60)], [MakeSinger("a"), Narrow()])[0], () => ClassBreath.Of([Sung(60)], [MakeSinger("a"), Narrow()])[1]],
        [typeof(PlanSinging)] = [() => PlanSinging.Of(Result(7).Plan, Result(7).Plan.Days, [MakeSinger("a")]), () => PlanSinging.Of(Result(7).Plan, Result(7).Plan.Days.Take(1), [MakeSinger("a")])],
        [typeof(PlannedBreath)] = [() => Breathing(60).Breaths[0], () => Breathing(60).Breaths[1]],
        [typeof(ScoreNeeds)] = [() => ScoreNeeds.Of(Sung(60), [1], []), () => ScoreNeeds.Of(Sung(60), [2], []), () => ScoreNeeds.Of(Sung(60), [], [])],
        [typeof(TonicFit)] = [() => Sung(60).RankTonics([Narrow()])[0], () => Sung(60).RankTonics([Narrow()])[1]],
        [typeof(SingerFit)] = [() => Sung(60).RankTonics([Narrow()])[0].Singers[0], () => Sung(60).RankTonics([Narrow()])[1].Singers[0]],
        [typeof(RangeChange)] = [() => RangeChange.Smallest(Ladder(60), Narrow())[0], () => RangeChange.Smallest(Ladder(60), Narrow())[1]],
        [typeof(TempoWindow)] = [() => TempoWindow.OfSpeeds(Ladder(60), [Narrow()])[0], () => TempoWindow.OfSpeeds(Ladder(60), [Narrow()])[1]],
        [typeof(TempoInterval)] = [() => new TempoInterval(50, 60, Text("a"), Text("b")), () => new TempoInterval(50, 61, Text("a"), Text("b"))],
        [typeof(ClassReport)] = [() => Report(60), () => Report(70)],
        [typeof(ClassRow)] = [() => Report(60).Rows[0], () => Report(60).Rows[1]],
        [typeof(ClassCell)] = [() => Report(60).Rows[0].Cells[0], () => Report(60).Rows[1].Cells[0]],
        [typeof(Advice)] = [() => Ladder(60).Advise([Narrow()])[0], () => Ladder(60).Advise([Narrow()])[^1]],
        [typeof(OtherTonic)] = [() => new OtherTonic(Tonic.FromMidi(60)), () => new OtherTonic(Tonic.FromMidi(61))],
        [typeof(OtherTempo)] = [() => new OtherTempo(60), () => new OtherTempo(61)],
        [typeof(OtherSpeeds)] = [() => new OtherSpeeds([Speed.First]), () => new OtherSpeeds([Speed.First, Speed.Second])],
        [typeof(OtherScale)] = [() => new OtherScale(new Scale(Text("a"), Catalogue.Default.Parent(28).Scale.Ascent)), () => new OtherScale(new Scale(Text("b"), Catalogue.Default.Parent(28).Scale.Ascent))],
        [typeof(OtherFill)] = [() => new OtherFill(Fill.Anga), () => new OtherFill(Fill.Avartana)],
        [typeof(OtherDelivery)] = [() => new OtherDelivery(true), () => new OtherDelivery(false)],
        [typeof(OtherFillBy)] = [() => new OtherFillBy(FillBy.Hold), () => new OtherFillBy(FillBy.Rest)],
        [typeof(Remedy)] = [() => new OtherTempo(60), () => new LongerBreath(2)],
        [typeof(LongerBreath)] = [() => new LongerBreath(2), () => new LongerBreath(3)],
        [typeof(PlannedBreaths)] = [() => new PlannedBreaths(new BreathNeed(8, 1)), () => new PlannedBreaths(new BreathNeed(9, 1))],
        [typeof(FewerLines)] = [() => new FewerLines([1, 2]), () => new FewerLines([1, 3])],
        [typeof(TwoRemedies)] = [() => new TwoRemedies(new OtherDelivery(true), new OtherTempo(60)), () => new TwoRemedies(new OtherDelivery(true), new OtherTempo(61))],
        [typeof(PlanRequest)] = [() => Request(7), () => Request(8), () => Request(7) with { Days = 4 }, () => Request(7) with { RestDays = [DayOfWeek.Monday] }, () => Request(7) with { HasRetries = false }],
        [typeof(MonthPage)] = [() => MonthPage.Of(Result(7).Plan).First(), () => MonthPage.Of(Result(8).Plan).First()],
        [typeof(WarmupPlan)] = [() => Result(7).Plan, () => Result(8).Plan],
        [typeof(PlanResult)] = [() => Result(7), () => Result(8)],
        [typeof(PlanDay)] = [() => Result(7).Plan.Days[0], () => Result(7).Plan.Days[1]],
        [typeof(PlanDrill)] = [() => Result(7).Plan.Drills[0], () => Result(7).Plan.Drills[1]],
        [typeof(DayDrill)] = [() => Result(7).Plan.Days[0].Drills[0], () => Result(7).Plan.Days[0].Drills[1]],
        [typeof(Level)] = [() => Level.Beginner with { }, () => Level.Advanced with { }, () => Level.Beginner with { Name = Text("own") }],
        [typeof(LogEntry)] = [() => Log("a", 60), () => Log("b", 60), () => Log("a", 61), () => Log("a", 60) with { Singers = [new SungBy(Text("w"), null)] }, () => Log("a", 60) with { OffLines = [2, 5] }],
        [typeof(SungBy)] = [() => new SungBy(Text("a"), 60), () => new SungBy(Text("a"), null), () => new SungBy(Text("b"), 60), () => new SungBy(Text("a"), 61)],
        [typeof(PlanRenewal)] = [() => Renewed(7), () => Renewed(8)],
        [typeof(RenewedDay)] = [() => RenewedDay(0), () => RenewedDay(1)],
        [typeof(LogReading)] = [() => Read(Log("a", 60)), () => Read(Log("a", 61)), () => Read("a")],
        [typeof(PlanChange)] = [() => Changed(20), () => Changed(21)],
        [typeof(PlanRule)] = [() => Refused(20), () => Refused(21)],
        [typeof(Shortfall)] = [() => Short(20), () => Short(60)],

        // What a law checks and a generator draws are functions, which compare as what they are: the same one.
        [typeof(LawOptions)] =
        [
            () => new LawOptions { Patterns = SomePatterns, Scales = SomeScales }, () => new LawOptions { Patterns = SomePatterns, Scales = SomeScales, Cases = 7 },
            () => new LawOptions { Patterns = SomePatterns, Scales = SomeScales, Seed = Text("1,3") },
        ],
        [typeof(PatternLaw)] = [() => Law("a"), () => Law("b"), () => new PatternLaw(Text("a"), Text("f"), Text("e"), OtherCheck)],
        [typeof(LawFailure)] = [() => Report("a", OtherCheck).Failure!, () => Report("a", OtherCheck, "7,9").Failure!],
        [typeof(LawReport)] = [() => Report("a", SomeCheck), () => Report("a", OtherCheck), () => Report("b", SomeCheck)],
        [typeof(CaseCoverage)] = [() => Report("a", SomeCheck).Coverage, () => Sung("a", Holding).Coverage],
        [typeof(CoverageShare)] = [() => Report("a", SomeCheck).Coverage.Shares[0], () => Report("a", SomeCheck).Coverage.Shares[1]],
        [typeof(ScoreLaw)] = [() => new ScoreLaw(Text("a"), Text("f"), Text("e"), Holding), () => new ScoreLaw(Text("b"), Text("f"), Text("e"), Holding), () => new ScoreLaw(Text("a"), Text("f"), Text("e"), Breaking)],
        [typeof(ScoreLawFailure)] = [() => Sung("a", Breaking).Failure!, () => Sung("a", Breaking, "7,9").Failure!],
        [typeof(ScoreLawReport)] = [() => Sung("a", Holding), () => Sung("a", Breaking), () => Sung("b", Holding)],
    };

    /// <summary>A text that is a new object each time.</summary>
    private static string Text(string text) => new(text.AsSpan());

    private static MusicXmlVerse Words(params string[] words) => MusicXmlVerse.OfWords(words.Select(Text).ToValueList());

    private static MeasuredPoint Measured(int day, int low, int high, int seconds) => new(new DateOnly(2026, 12, day), NoteName.FromMidi(low), NoteName.FromMidi(high), seconds);

    private static FontFile Font(int at, string name) => FontFile.FromBytes(Text(name), DrawingFonts.Noto[at].Content.Span);

    private static RangeBar Bar(string name) => new(MakeSinger(name).Band);

    private static Sheet SheetOf(string title) => Sheet.Of(new Drill
    {
        Scale = new Scale("a", Catalogue.Default.Parent(15).Scale.Ascent),
        Pattern = Pattern.Ladder,
        Tonic = Tonic.FromMidi(57),
        Title = Text(title),
        Speeds = [Speed.First, Speed.Second],
        Delivery = Delivery.LineByLine,
    }.ToScore());

    private static AvartanaRows Rows(Meter meter, int most) => new(meter, most, (aksharas, _) => aksharas <= most);

    private static Singer MakeSinger(string alias) => new(Text(alias), NoteName.FromMidi(55), NoteName.FromMidi(76), 14);

    private static IEnumerable<Finding> OwnCheck(Score score, Singer singer) => [];

    private static Singer Narrow() => new(Text("n"), NoteName.FromMidi(55), NoteName.FromMidi(69), 20);

    private static Drill Ladder(int tempo) => new()
    {
        Scale = new Scale(Text("a"), Catalogue.Default.Parent(28).Scale.Ascent), Pattern = Pattern.Parse("ladder"), Tonic = Tonic.FromMidi(60), Tempo = tempo,
    };

    private static Score Sung(int tempo) => Ladder(tempo).ToScore();

    private static BreathPlan Breathing(int tempo) =>
        BreathPlan.TryMake(Sung(tempo), new BreathNeed(8, new Rational(1, 2)), out var plan, out var refusal) ? plan : throw new InvalidOperationException(refusal.Describe());

    private static ClassReport Report(int tempo) => ClassReport.Of([Ladder(tempo)], [Narrow(), MakeSinger("a")]);

    private static PlanRequest Request(ulong seed) => new()
    {
        Singers = [MakeSinger("a")],
        Scales = [new Scale(Text("a"), Catalogue.Default.Parent(15).Scale.Ascent), new Scale(Text("b"), Catalogue.Default.Parent(28).Scale.Ascent)],
        Start = new DateOnly(2026, 12, 1),
        Days = 5,
        Seed = seed,
    };

    private static PlanResult Result(ulong seed) => WarmupPlan.Make(Request(seed));

    private static PlanRenewal Renewed(ulong seed) => WarmupPlan.Make(Request(seed)).Plan.Renew([MakeSinger("a")]);

    // Nothing fits this voice, which takes long to find.
    private static RenewedDay RenewedDay(int day) => WarmupPlan.Make(Request(7) with { Days = 2 }).Plan.Renew([new Singer(Text("a"), NoteName.FromMidi(60), NoteName.FromMidi(62), 14)]).Days[day];

    private static LogEntry Log(string scale, int tempo) => new() { Date = new DateOnly(2026, 12, 1), ScaleName = Text(scale), ExerciseName = Text("e"), Tempo = tempo, IsTicked = true };

    private static PlanRule Refused(int wait) => Impossible(wait).Clash[0];

    private static PlanChange Changed(int wait) => Impossible(wait).Change!;

    private static PlanImpossibleException Impossible(int wait)
    {
        try
        {
            WarmupPlan.Make(Request(7) with { NoRepeatDays = wait, Days = 28 });
            throw new InvalidOperationException("no rule was refused");
        }
        catch (PlanImpossibleException refused)
        {
            return refused;
        }
    }

    private static Shortfall Short(int ceiling) =>
        WarmupPlan.Make(Request(7) with { Level = Level.Beginner with { Groups = [Text("choir")], StartCeiling = ceiling }, Minutes = 20, LeastFillPercent = 0 }).Plan.Days
            .Select(d => d.Shortfall).First(s => s is not null)!;

    private static LogReading Read(object line) => PlanLog.Read(System.Text.Encoding.UTF8.GetBytes($"{line}\n"));

    private static ScoreLawReport Sung(string law, Func<Score, Score, LawVerdict> check, string seed = "1,3") =>
        LawSuite.CheckSung(PatternRule.Of("r", p => p), new LawOptions { Seed = seed, Cases = 2 }, new ScoreLaw(Text(law), Text("f"), Text("e"), check))[0];

    private static PatternFacts Facts(string pattern) =>
        PatternFacts.TryMeasure(Pattern.Parse(pattern), new Scale("a", Catalogue.Default.Parent(15).Scale.Ascent), out var facts, out _) ? facts : throw new InvalidOperationException("the sample was refused");

    private static PatternLaw Law(string name) => new(Text(name), Text("f"), Text("e"), SomeCheck);

    private static LawReport Report(string law, Func<PatternRule, Pattern, Pattern, Scale, LawVerdict> check, string seed = "1,3") =>
        LawSuite.Check(PatternRule.Of("r", p => p), new LawOptions { Seed = seed, Cases = 2, Patterns = SomePatterns, Scales = SomeScales }, new PatternLaw(Text(law), Text("f"), Text("e"), check))[0];

    /// <summary>The range of a tone that lasts a second between two silences.</summary>
    private static VoiceRange RangeOf(double hz) => VoiceMeasuring.Range(SoundSource.FromSamples(
        Array.ConvertAll(Enumerable.Range(0, 32_000).ToArray(), i => i is < 8_000 or > 24_000 ? 0 : (float)(0.4 * Math.Sin(2 * Math.PI * hz * i / 16_000) + 0.2 * Math.Sin(4 * Math.PI * hz * i / 16_000))), 16_000));

    private static ReadMusic Typed(string text) => MusicReader.Read(System.Text.Encoding.UTF8.GetBytes(text));

    private static TakeNote Note(int index) => new() { Index = index, Line = 1, Round = 1, Status = NoteStatus.Sung, Tone = default };

    private static TakeLine Line(int line) => new() { Line = line, Round = 1, Times = 1, BrokenOff = 0, Heard = 3, InTune = 3 };

    private static TakeReport Take(bool isDrill) => new() { IsDrill = isDrill };
}
