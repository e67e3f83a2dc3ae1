namespace Warmup.MusicXml.Tests;

/// <summary>Scores that between them use every element the writer knows.</summary>
internal static class Samples
{
    public static readonly Dictionary<string, Score> All = new(StringComparer.Ordinal)
    {
        ["first speed"] = (Drills.Of() with { Delivery = Delivery.LineByLine }).ToScore(),
        ["third speed"] = (Drills.Of() with { Speeds = [Speed.Third], Tempo = 72, Delivery = Delivery.LineByLine }).ToScore(),
        ["continuous"] = Drills.Of(tonic: "Eb3").ToScore(),
        ["gati 3"] = (Drills.Of(pattern: "ladder.there-and-back") with { Speeds = [new Speed(3, 3)] }).ToScore(),
        ["gati 9, kalam 1"] = (Drills.Of(tonic: "A2") with { Speeds = [new Speed(1, 9)], Meter = Meter.Free }).ToScore(),
        ["just"] = (Drills.Of(tonic: "200Hz") with { Tuning = Tuning.Just }).ToScore(),
        ["free"] = (Drills.Of() with { Meter = Meter.Free, Delivery = Delivery.LineByLine, Speeds = [Speed.Second] }).ToScore(),
        ["kanakangi"] = Drills.Of(Drills.Kanakangi, "ladder.there-and-back", "F#3").ToScore(),
        ["three sections"] = Drills.Join(
        [
            Drills.Of(tonic: "E3") with { Title = "One", Delivery = Delivery.LineByLine },
            Drills.Of(Drills.Kanakangi, "ladder.take(3)", "A2") with { Title = "Two", Tempo = 80 },
            Drills.Of(pattern: "ladder.take(3)", tonic: "C2") with { Title = "Three", Meter = Meter.Free },
        ]),
    };

    /// <summary>Everything at once: two voices, drone, beat, three verses, dynamics.</summary>
    public static MusicXmlOptions Class => new()
    {
        SecondVoiceSemitones = -12,
        HasDrone = true,
        Beat = MusicXmlBeat.Gestures,
        Dynamics = MusicXmlDynamics.MezzoPiano,
        FurtherVerses = [MusicXmlVerse.Of(Syllables.Vowel("la")), MusicXmlVerse.OfWords(["lan-", "tern", "", "glow"])],
    };

    public static readonly MusicXmlOptions[] Options =
    [
        MusicXmlOptions.Default,
        new() { Key = MusicXmlKey.Accidentals, Clef = MusicXmlClef.Bass, Paper = MusicXmlPaper.Letter, StaffMillimetres = 9, HasMicrotones = true },
        new() { Clef = MusicXmlClef.TrebleOctaveDown, Paper = MusicXmlPaper.Unspecified, HasNewSystems = false },
        Class,
        new()
        {
            HasOneSyllableALine = true, LineMarks = MusicXmlLineMarks.None, FreeBars = MusicXmlFreeBars.OneSignature, Date = new DateOnly(2024, 2, 29),
            SecondVoiceSemitones = 7, HasMicrotones = true, Key = MusicXmlKey.NonTraditional,
        },
    ];
}
