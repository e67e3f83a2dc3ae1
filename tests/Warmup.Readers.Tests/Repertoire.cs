using Warmup.Cli;
using Warmup.Midi;
using Warmup.MusicXml;

namespace Warmup.Readers.Tests;

/// <summary>A score to be opened, under a name that can be a file's.</summary>
internal sealed record NamedScore(string Name, Score Score)
{
    public MusicXmlOptions Options { get; init; } = MusicXmlOptions.Default;

    /// <summary>Writes it into a folder.</summary>
    public string Save(string folder)
    {
        var path = Path.Combine(folder, Name + ".musicxml");
        new MusicXmlFormat(Options).Save(Score, path);
        return path;
    }

    /// <summary>Writes it into a folder as MIDI.</summary>
    public string SaveMidi(string folder, string ending = ".mid")
    {
        var path = Path.Combine(folder, Name + ending);
        using var file = File.Create(path);
        new MidiFormat().Write(Score, file);
        return path;
    }
}

/// <summary>What is given to the readers.</summary>
internal static class Repertoire
{
    private const string Major = "S R2 G3 M1 P D2 N3 S'";

    /// <summary>The drills of the demo.</summary>
    public static IEnumerable<NamedScore> Demo => Studio.Drills.Select(d => new NamedScore(d.FileName, d.ToDrill().ToScore()));

    /// <summary>The 72 parent scales with the ladder.</summary>
    public static IEnumerable<NamedScore> Parents => Enumerable.Range(1, 72).Select(n => new NamedScore(
        $"parent-{n:00}",
        (Of(Major, "ladder", "G3") with { Scale = Catalogue.Default.Read($"{n}"), Delivery = Delivery.LineByLine }).ToScore()));

    /// <summary>A scale whose R1 G1 and D1 N1 need double accidentals on many tonics, on all twelve.</summary>
    public static IEnumerable<NamedScore> Tonics => Enumerable.Range(55, 12).Select(midi => new NamedScore(
        $"tonic-{midi}",
        (Of("S R1 G1 M1 P D1 N1 S'", "ladder.there-and-back", "C4") with { Tonic = Tonic.FromMidi(midi) }).ToScore()));

    /// <summary>One drill in every tala and chapu the library offers, in free rhythm, and in time signatures.</summary>
    public static IEnumerable<NamedScore> Meters => new[] { Meter.Free, Meter.Parse("6/8"), Meter.Parse("7/8"), Meter.Parse("3/2"), Meter.Parse("2+2+3/8") }
        .Concat(Meter.Talas).Concat(Meter.Chapus).Select((m, i) => new NamedScore(
            $"meter-{i:00}",
            (Of(Major, "ladder", "A3") with { Meter = m, Speeds = [Speed.Second], Delivery = Delivery.LineByLine }).ToScore()));

    /// <summary>What the notation of time is hard for: tuplets of each gati, and a breath that is no simple part of a beat.</summary>
    public static IEnumerable<NamedScore> Speeds =>
    [
        .. from gati in new[] { 3, 4, 5, 7, 9 }
           from kalam in new[] { 1, 2, 3 }
           select new NamedScore($"gati-{gati}-{kalam}", (Of(Major, "ladder", "C4") with { Speeds = [new Speed(kalam, gati)], Delivery = Delivery.LineByLine, Tempo = 80 }).ToScore()),
    ];

    /// <summary>Each option that changes what a reader makes of the file.</summary>
    public static IEnumerable<NamedScore> Choices
    {
        get
        {
            var plain = (Of(Major, "ladder", "C4") with { Delivery = Delivery.LineByLine, Title = "Seven lines" }).ToScore();
            var free = (Of(Major, "ladder", "G3") with { Delivery = Delivery.LineByLine, Meter = Meter.Free, Title = "Free" }).ToScore();
            var second = (Of("S R1 G3 M1 P D1 N3 S'", "ladder.there-and-back", "A3") with { Tempo = 80, Title = "There and back" }).ToScore();
            var ramp = (Of(Major, "ladder", "D4") with { Tempo = new TempoRamp(60, 10, 80), Speeds = [Speed.First, Speed.Second], Title = "Faster" }).ToScore();
            var warmUp = Score.Join("A warm-up <&> \u05E9\u05DC\u05D5\u05DD", [plain, free, second]);
            return
            [
                new("warm-up", warmUp),
                new("ramp", ramp),
                new("class", plain) { Options = new() { SecondVoiceSemitones = -12, HasDrone = true, Beat = MusicXmlBeat.Gestures, Dynamics = MusicXmlDynamics.MezzoPiano } },
                new("class-warm-up", warmUp) { Options = new() { SecondVoiceSemitones = -5, HasDrone = true } },
                new("vowel", plain) { Options = new() { HasOneSyllableALine = true, FurtherVerses = [MusicXmlVerse.OfWords(["lan-", "tern", "", "glow"])] } },
                new("verses", plain) { Options = new() { FurtherVerses = [MusicXmlVerse.Of(Syllables.Vowel("la")), MusicXmlVerse.OfWords(["one", "two"])] } },
                new("free-one-signature", free) { Options = new() { FreeBars = MusicXmlFreeBars.OneSignature } },
                new("angas", plain) { Options = new() { Measure = MusicXmlMeasure.Anga } },
                new("letter", plain) { Options = new() { Paper = MusicXmlPaper.Letter, StaffMillimetres = 9 } },
            ];
        }
    }

    /// <summary>The sounding parts of a piece that sing: semitones above the score, in the order of the file.</summary>
    public static int[] Voices(NamedScore piece) => piece.Options.SecondVoiceSemitones is 0 and var none
        ? [none]
        : [Math.Max(piece.Options.SecondVoiceSemitones, 0), Math.Min(piece.Options.SecondVoiceSemitones, 0)];

    public static Drill Of(string scale, string pattern, string tonic) =>
        new() { Scale = Scale.Parse(scale), Pattern = Pattern.Parse(pattern), Tonic = Tonic.Parse(tonic) };
}
