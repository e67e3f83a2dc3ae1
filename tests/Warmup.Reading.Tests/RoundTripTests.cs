using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Warmup.Midi;
using Warmup.MusicXml;
using Warmup.Testing;

namespace Warmup.Reading.Tests;

/// <summary>What the project writes reads back equal: the scores are the expectation, not files.</summary>
public class RoundTripTests
{
    private static Gen<Score> Scores(IEnumerable<Syllables> kinds) =>
        from scale in ScaleGenerators.Named
        from drill in DrillGenerators.Drills
        from speed in Gen.Elements(Speed.First, Speed.Second, Speed.OfGati(3), Speed.OfGati(5))
        from meter in Gen.Elements(Meter.Adi, Meter.Free, Meter.TimeSignature(3, 4), Meter.TimeSignature(6, 8), Meter.Tala(TalaFamily.Rupaka), Meter.Parse("2+2+3/8"), Meter.Parse("khanda chapu"))
        from syllables in Gen.Elements(kinds)
        from countIn in Gen.Elements(0, 0, 2)
        let wanted = drill with { Scale = scale, Speeds = [speed], Meter = meter, Syllables = syllables, CountIn = meter.IsFree ? 0 : countIn }
        let made = wanted.TryToScore(out var score, out _) ? score : null
        where made is { NoteCount: < 1_000 }
        select made;

    [Property(MaxTest = 200)]
    public Property What_is_written_as_MusicXML_reads_back_equal() => Prop.ForAll(Scores(Syllables.All).ToArbitrary(), score =>
    {
        SameMusic.Holds(score, Read(score, new MusicXmlFormat()));
    });

    [Fact]
    public void The_compressed_file_reads_as_the_plain_one()
    {
        var score = Drill("ladder.up-down").ToScore();
        Assert.Equal(Read(score, new MusicXmlFormat()), Read(score, new MxlFormat()));
    }

    /// <summary>MIDI has no scale, tonic or tala: the scale is that of the title, the others are given. Slides are one key.</summary>
    [Property(MaxTest = 100)]
    public Property What_is_written_as_MIDI_reads_back_with_its_lines_pitches_times_and_syllables() => Prop.ForAll(
        Scores([Syllables.SvaraLetters, Syllables.Solfa, Syllables.SungSvaras]).Where(IsPlain).ToArbitrary(), score =>
        {
            var section = score.Sections[0];
            var read = Assert.Single(MusicReader.Read(Bytes(score, new MidiFormat()), new ReadingOptions { Scale = section.Scale, Tonic = section.Tonic }).Sections);
            Assert.Equal(section.Lines.ConvertAll(l => l.NoteCount), read.Lines.ConvertAll(l => l.Notes.Count));
            Assert.Equal(section.Notes.ConvertAll(n => section.PitchOf(n).Tone.Semitones), read.Lines.SelectMany(l => l.Notes).Select(n => n.Tone.Semitones).ToValueList());

            // A file has quarter notes; what counts as an akshara its time signature says, which free rhythm has not.
            var (akshara, beat) = (4 * section.Meter.BeatValue, 4 * read.Meter.BeatValue);
            Assert.Equal(section.Notes.ConvertAll(n => n.Length * akshara), read.Lines.SelectMany(l => l.Notes).Select(n => n.Length * beat).ToValueList());
            Assert.Equal(Rational.Max(10, Rational.Min(400, section.Tempo * akshara / beat)), read.Tempo);

            // A key may have one name up and another down; where each note comes back under its own name, so does what is sung.
            if (section.Notes.Select(n => section.PitchOf(n).Tone).SequenceEqual(read.Lines.SelectMany(l => l.Notes).Select(n => n.Tone)))
            {
                Assert.Equal(section.IsSungIn(Syllables.SvaraLetters), read.Syllables == Syllables.SvaraLetters);
            }
        });

    public static TheoryData<MusicXmlOptions> Ways =>
    [
        new MusicXmlOptions { HasDrone = true, Beat = MusicXmlBeat.Gestures },
        new MusicXmlOptions { SecondVoiceSemitones = -12 },
        new MusicXmlOptions { Measure = MusicXmlMeasure.Anga },
        new MusicXmlOptions { Key = MusicXmlKey.NonTraditional, LineMarks = MusicXmlLineMarks.Numbers },
        new MusicXmlOptions { HasMicrotones = true, Date = new DateOnly(2026, 12, 1), Paper = MusicXmlPaper.Letter },
    ];

    [Theory]
    [MemberData(nameof(Ways))]
    public void However_the_notation_is_written_it_reads_back(MusicXmlOptions options)
    {
        foreach (var pattern in (string[])["ladder", "run.up-down", "alankara-2"])
        {
            var score = (Drill(Repertoire.Find(pattern)?.Pattern.ToString() ?? pattern) with { Tuning = Tuning.Just, Delivery = Delivery.LineByLine }).ToScore();
            SameMusic.Holds(score, Read(score, new MusicXmlFormat(options)));
        }
    }

    [Property(MaxTest = 500)]
    public Property Damaged_files_are_read_or_refused() => Prop.ForAll(
        (from format in Gen.Elements<IScoreFormat>(new MusicXmlFormat(), new MxlFormat(), new MidiFormat())
         from at in Gen.Choose(0, int.MaxValue).ListOf(4)
         from value in Gen.Choose(0, 255)
         from cut in Gen.Choose(0, 10)
         select (format, at, value, cut)).ToArbitrary(),
        damage =>
        {
            var bytes = Bytes(Damaged, damage.format);
            foreach (var at in damage.at)
            {
                bytes[at % bytes.Length] = (byte)((damage.value ^ at) & 0xFF);
            }

            try
            {
                var read = MusicReader.Read(bytes.AsMemory(0, damage.cut == 0 ? damage.at.First() % bytes.Length : bytes.Length));
                Assert.NotEmpty(read.Sections);
            }
            catch (ReadingException refused)
            {
                Assert.NotEmpty(refused.Message);
            }
        });

    private static Score Damaged { get; } = Drill("ladder.up-down").ToScore();

    [Fact]
    public void A_scale_of_ones_own_is_given_with_the_file()
    {
        var own = Scale.Parse("Lantern = S R1 G3 M2 P D1 N3 S'");
        var score = (Drill("ladder") with { Scale = own }).ToScore();
        SameMusic.Holds(score, MusicReader.Read(Bytes(score, new MusicXmlFormat()), new ReadingOptions { Scale = own }));
    }

    [Theory]
    [InlineData("ladder.glide")]
    [InlineData("run.up-down.swell")]
    [InlineData("ladder.staccato")]
    [InlineData("[S R G , / R G P - P / G_ S' S' , ,]")]
    public void Slides_swells_short_notes_and_silences_read_back(string pattern)
    {
        var score = Drill(pattern).ToScore();
        SameMusic.Holds(score, Read(score, new MusicXmlFormat()));
    }

    [Fact]
    public void Breaths_tempi_rounds_eduppu_and_several_sections_read_back()
    {
        var ramp = (Drill("ladder") with { Tempo = TempoRamp.Parse("60 to 90 by 10"), Delivery = Delivery.LineByLine, CountIn = 1 }).ToScore();
        var late = (Drill("ladder") with { CountIn = 1, Eduppu = new Rational(1, 2), Delivery = Delivery.LineByLine }).ToScore();
        var other = (Drill("run.up-down") with { Meter = Meter.TimeSignature(3, 4), Tonic = Tonic.Parse("F#3"), Title = "the second" }).ToScore();
        var same = (Drill("run.up-down") with { Delivery = Delivery.LineByLine, Title = "the third" }).ToScore();
        var score = Score.Join("all", [ramp, other, same, same, late]);
        SameMusic.Holds(score, Read(score, new MusicXmlFormat()));
        Assert.Contains(ramp.Sections[0].Breaths, b => b.Length.Sign > 0);
    }

    private static bool IsPlain(Score score) => score.Sections[0].Notes.All(n => n is { Joining: Joining.Plain });

    private static Drill Drill(string pattern) => new()
    {
        Scale = Catalogue.Default.Read("Mohanam"),
        Pattern = Pattern.Parse(pattern),
        Tonic = Tonic.Parse("D3"),
    };

    private static ReadMusic Read(Score score, IScoreFormat format) => MusicReader.Read(Bytes(score, format));

    private static byte[] Bytes(Score score, IScoreFormat format)
    {
        var bytes = new MemoryStream();
        format.Write(score, bytes);
        return bytes.ToArray();
    }
}
