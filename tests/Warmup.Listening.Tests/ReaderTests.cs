using Warmup.Cli;
using Warmup.Midi;

namespace Warmup.Listening.Tests;

/// <summary>
/// Files read by mido (python3-mido, strict: no byte is repaired) give the score back: onsets and lengths exactly, pitches within 0.02
/// cents, every syllable, marker and measure.
/// </summary>
public class ReaderTests
{
    private static readonly Drill Kalyani = new()
    {
        Scale = Scale.Parse("S R2 G3 M2 P D2 N3 S'"),
        Pattern = Pattern.Parse("ladder.there-and-back"),
        Tonic = Tonic.FromHz(196.5, 442),
        Tuning = Tuning.Just,
        Title = "There and back",
    };

    public static TheoryData<string, MidiOptions, bool> Written { get; } = new()
    {
        { "the defaults", new MidiOptions(), false },
        { "one track", new MidiOptions { IsSingleTrack = true }, false },
        { "running status", new MidiOptions { HasRunningStatus = true }, false },
        { "one track, running status, a click", new MidiOptions { IsSingleTrack = true, HasRunningStatus = true, Click = MidiClick.Throughout }, true },
        { "the voice alone", new MidiOptions { HasDrone = false }, false },
        { "call and response", new MidiOptions { Click = MidiClick.Throughout }, true },
        { "UTF-8", new MidiOptions { Text = MidiTextEncoding.Utf8 }, false },
    };

    [Fact]
    public void Every_file_of_the_demo_is_its_score()
    {
        using var folder = new Folder();
        using var output = new StringWriter();
        using var error = new StringWriter();
        Assert.True(Program.Run(["demo", "--out", folder.At("demo")], output, error) == ExitCode.Fine, error.ToString());
        var paths = Directory.GetFiles(folder.At("demo"), "*.mid").Order(StringComparer.Ordinal).ToArray();
        Assert.Equal(
            Studio.Drills.ConvertAll(d => d.FileName + ".mid").Order(StringComparer.Ordinal),
            paths.Select(p => Path.GetFileName(p)!));
        var files = MidoFile.Read(paths);
        Assert.Equal(paths.Length, files.Length);
        foreach (var drill in Studio.Drills)
        {
            AssertSame(drill.ToDrill().ToScore(), files[Array.FindIndex(paths, p => Path.GetFileName(p) == drill.FileName + ".mid")]);
        }
    }

    [Theory]
    [MemberData(nameof(Written), DisableDiscoveryEnumeration = true)]
    public void Every_way_of_writing_is_the_score(string name, MidiOptions options, bool answers)
    {
        Assert.NotEmpty(name);
        var drill = Kalyani with { CountIn = 1, Speeds = [Speed.First, Speed.Second], Tempo = new TempoRamp(60, 15, 90), Delivery = Delivery.LineByLine };
        var score = answers ? drill.ToScore().WithAnswers() : drill.ToScore();
        var file = Read(score, options);
        Assert.Equal(options.IsSingleTrack ? 0 : 1, file.Type);
        AssertSame(score, file, options);
    }

    [Fact]
    public void A_held_drone_is_one_long_note_a_reed()
    {
        var score = (Kalyani with { DroneStyle = DroneStyle.SrutiBox }).ToScore();
        var file = Read(score, new MidiOptions());
        Assert.Equal(3, file.Drone.Length);
        Assert.All(file.Drone, n => Assert.Equal((0L, file.Ends[0], 21 - 1), (n.Tick, n.Length, n.Program)));
        AssertSame(score, file);
    }

    [Fact]
    public void A_file_with_tuning_messages_is_read_whole()
    {
        // mido keeps system exclusive events as bytes; that they are refused nowhere and all notes are there is what it can tell.
        var score = Kalyani.ToScore();
        var file = Read(score, new MidiOptions { Tuning = MidiTuning.TuningStandard });
        Assert.Equal(score.NoteCount, file.Voice.Length);
        Assert.Equal(score.Drone!.Strokes(score.Seconds).Count(), file.Drone.Length);
    }

    private static MidoFile Read(Score score, MidiOptions options)
    {
        using var folder = new Folder();
        new MidiFormat(options).Save(score, folder.At("a.mid"));
        return Assert.Single(MidoFile.Read(folder.At("a.mid")));
    }

    private static void AssertSame(Score score, MidoFile file, MidiOptions? options = null)
    {
        options ??= MidiOptions.Default;
        var section = Assert.Single(score.Sections);
        Rational Aksharas(long tick) => new(tick, file.Ticks);

        var notes = section.Notes;
        Assert.Equal(notes.ConvertAll(n => (n.Onset, n.Length)), file.Voice.Select(n => (Aksharas(n.Tick), Aksharas(n.Length))).ToValueList());
        AssertNear(notes.ConvertAll(n => section.PitchOf(n).Hz), file.Voice);
        Assert.Equal(section.Sung(), file.Lyrics.Select(l => l.Text.TrimEnd(' ', '\r')).ToValueList());
        Assert.Equal(file.Voice.Select(n => n.Tick), file.Lyrics.Select(l => l.Tick));
        Assert.Equal(section.Lines.Count, file.Lyrics.Count(l => l.Text.EndsWith('\r')));

        var markers = section.Lines.SelectMany(
            l => (Rational[])[l.Onset, .. l.Answer.Sign > 0 ? (Rational[])[l.Onset + l.Answer] : []]);
        Assert.Equal(markers, file.Markers.Select(m => Aksharas(m.Tick)));
        Assert.Equal(section.Tempo, new Rational(60_000_000, file.Tempos[0].Microseconds));
        Assert.Equal(section.TempoChanges.Count + 1, file.Tempos.Length);
        Assert.Equal((0L, section.Meter.Beats, 4), (file.Signatures[0].Tick, file.Signatures[0].Numerator, file.Signatures[0].Denominator));
        Assert.All(file.Ends, end => Assert.Equal(section.Length, Aksharas(end)));

        // mido's own reckoning of the tempo map; each tempo is rounded to a microsecond a quarter.
        Assert.InRange(file.Seconds - score.Seconds.ToDouble(), -0.001, 0.001);

        var strokes = options.HasDrone && score.Drone is { } drone ? drone.Strokes(score.Seconds).ToArray() : [];
        var heard = file.Drone.OrderBy(n => n.Tick).ThenBy(n => n.Cents).ToArray();
        var expected = strokes.Select(s => score.Drone!.Strings[s.StringIndex].Hz).ToArray();
        Assert.Equal(expected.Length, heard.Length);
        AssertNear(score.Drone is { IsHeld: true } ? expected.Order().ToValueList() : expected.ToValueList(), heard);
    }

    private static void AssertNear(ValueList<double> hertz, MidoNote[] notes)
    {
        Assert.Equal(hertz.Count, notes.Length);
        foreach (var (hz, note) in hertz.Zip(notes))
        {
            Assert.InRange(note.Cents - (6900 + (1200 * Math.Log2(hz / 440))), -0.02, 0.02);
        }
    }
}
