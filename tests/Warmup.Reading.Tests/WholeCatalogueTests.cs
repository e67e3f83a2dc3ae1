using System.Globalization;
using Warmup.Midi;
using Warmup.MusicXml;

namespace Warmup.Reading.Tests;

/// <summary>
/// Every scale of the catalogue with every exercise in three speeds, the twelve tonics and the usual deliveries in turn, written and read back. Run by
/// hand: <c>Warmup.Reading.Tests -explicit only</c>. docs/reading.md has the result.
/// </summary>
public class WholeCatalogueTests(ITestOutputHelper output)
{
    private const int LowestTonic = 48;

    [Fact(Explicit = true)]
    public void All_of_it_comes_back_from_MusicXML_and_MIDI()
    {
        var (drills, refused, slides, notes) = (0, 0, 0, 0L);
        var faults = new List<string>();
        foreach (var drill in Drills())
        {
            TestContext.Current.CancellationToken.ThrowIfCancellationRequested();
            if (!drill.TryToScore(out var score, out _))
            {
                refused++;
                continue;
            }

            drills++;
            notes += score.NoteCount;

            // A slide is one key that bends, so that MIDI does not hold where it arrives.
            var isSliding = score.Sections[0].Notes.Any(n => n.Joining == Joining.Glide);
            slides += isSliding ? 1 : 0;
            foreach (var (name, holds) in ((string, Action<Score>)[])[("MusicXML", FromNotation), .. isSliding ? ((string, Action<Score>)[])[] : [("MIDI", FromMidi)]])
            {
                try
                {
                    holds(score);
                }
                catch (Exception fault) when (fault is not OperationCanceledException)
                {
                    faults.Add($"{name}: {drill}: {fault.Message.ReplaceLineEndings(" ")}");
                }
            }
        }

        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{drills} drills, {notes} notes, {slides} with slides from MusicXML only; {refused} that their scales refuse; {faults.Count} do not come back"));
        faults.Take(50).ToList().ForEach(output.WriteLine);
        Assert.Empty(faults);
    }

    private static IEnumerable<Drill> Drills()
    {
        ValueList<Exercise> exercises = [.. Repertoire.Traditional, .. Repertoire.Choir, .. Repertoire.Voice, .. Repertoire.Alankaras];
        Delivery[] deliveries = [Delivery.Continuous, Delivery.LineByLine];
        var n = 0;
        foreach (var entry in Catalogue.Default.Entries)
        {
            foreach (var exercise in exercises)
            {
                foreach (var speed in (Speed[])[Speed.First, Speed.Second, Speed.Third])
                {
                    yield return new Drill
                    {
                        Scale = entry.Scale,
                        Pattern = exercise.Pattern,
                        Meter = exercise.Meter,
                        Tonic = Tonic.FromMidi(LowestTonic + (n % 12)),
                        Delivery = deliveries[n / 12 % 2],
                        Speeds = [speed],
                    };
                    n++;
                }
            }
        }
    }

    private static void FromNotation(Score score) => SameMusic.Holds(score, MusicReader.Read(Bytes(score, new MusicXmlFormat())));

    private static void FromMidi(Score score)
    {
        var section = score.Sections[0];
        var read = Assert.Single(MusicReader.Read(Bytes(score, new MidiFormat()), new ReadingOptions { Scale = section.Scale, Tonic = section.Tonic }).Sections);
        Assert.Equal(section.Lines.ConvertAll(l => l.NoteCount), read.Lines.ConvertAll(l => l.Notes.Count));
        Assert.Equal(section.Notes.ConvertAll(n => section.PitchOf(n).Tone.Semitones), read.Lines.SelectMany(l => l.Notes).Select(n => n.Tone.Semitones).ToValueList());
        var (akshara, beat) = (4 * section.Meter.BeatValue, 4 * read.Meter.BeatValue);

        // A short note sounds for half its length, so that MIDI holds the lengths of plain notes only.
        if (section.Notes.All(n => n.Joining == Joining.Plain))
        {
            Assert.Equal(section.Notes.ConvertAll(n => n.Length * akshara), read.Lines.SelectMany(l => l.Notes).Select(n => n.Length * beat).ToValueList());
        }
    }

    private static byte[] Bytes(Score score, IScoreFormat format)
    {
        using var bytes = new MemoryStream();
        format.Write(score, bytes);
        return bytes.ToArray();
    }
}
