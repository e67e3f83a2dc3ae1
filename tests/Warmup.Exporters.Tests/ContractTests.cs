using Warmup.Audio;
using Warmup.Drawing;
using Warmup.Midi;
using Warmup.MusicXml;
using Warmup.Sheets;

namespace Warmup.Exporters.Tests;

/// <summary>Source: the contract of <see cref="IScoreFormat"/>, for every format of the library.</summary>
public class ContractTests
{
    private static readonly Drill Ladder = new()
    {
        Scale = Scale.Parse("S R2 G3 P D2 S'"),
        Pattern = Pattern.Ladder,
        Tonic = Tonic.Parse("G3"),
        Delivery = Delivery.LineByLine,
        Tempo = 240,
    };

    public static TheoryData<IScoreFormat> Formats =>
    [
        new MidiFormat(), new MusicXmlFormat(), new MxlFormat(), new TextSheetFormat(), new HtmlFormat(), new SvgFormat(), new PdfFormat(),
        new PngFormat(), new WavFormat(), new SvgFormat(new ContourOptions()),
    ];

    [Theory]
    [MemberData(nameof(Formats), DisableDiscoveryEnumeration = true)]
    public void Equal_scores_give_equal_bytes_and_the_stream_stays_open(IScoreFormat format)
    {
        using var first = new MemoryStream();
        using var second = new MemoryStream();
        format.Write(Ladder.ToScore(), first);
        format.Write(Ladder.ToScore(), second);
        Assert.True(first.CanWrite);
        Assert.True(first.Length > 100);
        Assert.Equal(first.ToArray(), second.ToArray());
    }

    [Theory]
    [MemberData(nameof(Formats), DisableDiscoveryEnumeration = true)]
    public void Sections_at_many_tempi_are_written(IScoreFormat format)
    {
        // The common denominator of the times of twelve prime tempi is beyond 64 bits.
        int[] tempi = [211, 223, 227, 229, 233, 239, 241, 251, 257, 263, 269, 271];
        var score = Score.Join("tempi", tempi.Select(t => (Ladder with { Pattern = Pattern.Ladder.Take(2), Tempo = t, Delivery = Delivery.Continuous }).ToScore()));
        using var stream = new MemoryStream();
        format.Write(score, stream);
        Assert.True(stream.Length > 100);
    }

    [Theory]
    [MemberData(nameof(Formats), DisableDiscoveryEnumeration = true)]
    public void Nothing_is_refused_by_its_name(IScoreFormat format)
    {
        Assert.Equal("score", Assert.Throws<ArgumentNullException>(() => format.Write(null!, new MemoryStream())).ParamName);
        Assert.Equal("destination", Assert.Throws<ArgumentNullException>(() => format.Write(Ladder.ToScore(), null!)).ParamName);
    }

    [Theory]
    [MemberData(nameof(Formats), DisableDiscoveryEnumeration = true)]
    public void A_format_can_be_stopped_before_its_first_byte(IScoreFormat format)
    {
        using var stream = new MemoryStream();
        Assert.ThrowsAny<OperationCanceledException>(() => format.Write(Ladder.ToScore(), stream, new CancellationToken(canceled: true)));
    }

    [Theory]
    [MemberData(nameof(Formats), DisableDiscoveryEnumeration = true)]
    public void It_has_a_name_and_endings_with_a_dot(IScoreFormat format)
    {
        Assert.NotEmpty(format.Name);
        Assert.NotEmpty(format.Extensions);
        Assert.All(format.Extensions, e => Assert.Matches("^\\.[a-z]+$", e));
    }

    [Fact]
    public void Options_outside_their_enumeration_are_refused_with_the_names_that_exist()
    {
        string Message(Action make) => Assert.Throws<ArgumentOutOfRangeException>(make).Message;
        Assert.Contains("EqualOnly", Message(() => _ = new MidiOptions { Tuning = (MidiTuning)9 }), StringComparison.Ordinal);
        Assert.Contains("Utf8", Message(() => _ = new MidiOptions { Text = (MidiTextEncoding)9 }), StringComparison.Ordinal);
        Assert.Contains("Throughout", Message(() => _ = new MidiOptions { Click = (MidiClick)9 }), StringComparison.Ordinal);
        Assert.Contains("Mono", Message(() => _ = new WavOptions { Channels = (WavChannels)9 }), StringComparison.Ordinal);
        Assert.Contains("Held", Message(() => _ = new WavOptions { DroneSound = (DroneSound)9 }), StringComparison.Ordinal);
        Assert.Contains("Accidentals", Message(() => _ = new MusicXmlOptions { Key = (MusicXmlKey)9 }), StringComparison.Ordinal);
        Assert.Contains("Anga", Message(() => _ = new MusicXmlOptions { Measure = (MusicXmlMeasure)9 }), StringComparison.Ordinal);
        Assert.Contains("OneSignature", Message(() => _ = new MusicXmlOptions { FreeBars = (MusicXmlFreeBars)9 }), StringComparison.Ordinal);
        Assert.Contains("Numbers", Message(() => _ = new MusicXmlOptions { LineMarks = (MusicXmlLineMarks)9 }), StringComparison.Ordinal);
        Assert.Contains("Forte", Message(() => _ = new MusicXmlOptions { Dynamics = (MusicXmlDynamics)9 }), StringComparison.Ordinal);
        Assert.Contains("Strokes", Message(() => _ = new MusicXmlOptions { Beat = (MusicXmlBeat)9 }), StringComparison.Ordinal);
        Assert.Contains("Treble", Message(() => _ = new MusicXmlOptions { Clef = (MusicXmlClef)9 }), StringComparison.Ordinal);
        Assert.Contains("Letter", Message(() => _ = new MusicXmlOptions { Paper = (MusicXmlPaper)9 }), StringComparison.Ordinal);
    }

    [Fact]
    public void Options_print_one_short_line()
    {
        object[] options =
        [
            new MidiOptions(), new WavOptions(), new MusicXmlOptions(), new HtmlOptions { Letters = Syllables.Vowel("aaaaaaaaaaaaaaaaaaaa") }, new TextSheetOptions(), new SheetOptions(),
            new ContourOptions(), new RangeChartOptions { Title = new string('x', 200) }, Sheet.Of((Ladder with { Title = new string('x', 300) }).ToScore()),
            MusicXmlVerse.OfWords([.. Enumerable.Repeat("la", 500)]),
        ];
        Assert.All(options, o => Assert.InRange(o.ToString()!.Length, 3, 200));
        Assert.All(options, o => Assert.DoesNotContain('\n', o.ToString()!));
    }
}
