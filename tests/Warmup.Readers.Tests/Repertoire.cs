using Warmup.Cli;
using Warmup.MusicXml;

namespace Warmup.Readers.Tests;

/// <summary>A score to be opened, under a name that can be a file's.</summary>
internal sealed record Piece(string Name, Score Score)
{
    public MusicXmlOptions Options { get; init; } = MusicXmlOptions.Default;

    /// <summary>Writes it into a folder.</summary>
    public string Save(string folder)
    {
        var path = Path.Combine(folder, Name + ".musicxml");
        new MusicXmlFormat(Options).Save(Score, path);
        return path;
    }
}

/// <summary>What is given to the readers.</summary>
internal static class Repertoire
{
    private const string Major = "S R2 G3 M1 P D2 N3 S'";

    /// <summary>The drills of the demo.</summary>
    public static IEnumerable<Piece> Demo => ((IEnumerable<StudioDrill>)Studio.Drills).Select(d => new Piece(d.FileName, d.ToDrill().ToScore()));

    /// <summary>The 72 parent scales with the ladder.</summary>
    public static IEnumerable<Piece> Parents => Enumerable.Range(1, 72).Select(n => new Piece(
        $"parent-{n:00}",
        (Of(Major, "ladder", "G3") with { Scale = Catalogue.Default.Read($"{n}"), Delivery = Delivery.LineByLine }).ToScore()));

    /// <summary>A scale whose R1 G1 and D1 N1 need double accidentals on many tonics, on all twelve.</summary>
    public static IEnumerable<Piece> Tonics => Enumerable.Range(55, 12).Select(midi => new Piece(
        $"tonic-{midi}",
        (Of("S R1 G1 M1 P D1 N1 S'", "ladder.there-and-back", "C4") with { Tonic = Tonic.FromMidi(midi) }).ToScore()));

    /// <summary>One drill in each meter.</summary>
    public static IEnumerable<Piece> Meters => new[] { Meter.Adi, Meter.Free }.Select((m, i) => new Piece(
        $"meter-{i:00}",
        (Of(Major, "ladder", "A3") with { Meter = m, Speed = Speed.Second, Delivery = Delivery.LineByLine }).ToScore()));

    /// <summary>What the notation of time is hard for: tuplets of each gati, and a breath that is no simple part of a beat.</summary>
    public static IEnumerable<Piece> Speeds =>
    [
        .. from gati in new[] { 3, 4, 5, 7, 9 }
           from kalam in new[] { 1, 2, 3 }
           select new Piece($"gati-{gati}-{kalam}", (Of(Major, "ladder", "C4") with { Speed = new Speed(kalam, gati), Delivery = Delivery.LineByLine, Tempo = 80 }).ToScore()),
    ];

    public static Drill Of(string scale, string pattern, string tonic) =>
        new() { Scale = Scale.Parse(scale), Pattern = Pattern.Parse(pattern), Tonic = Tonic.Parse(tonic) };
}
