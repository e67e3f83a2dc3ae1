using System.Buffers;
using System.Globalization;
using System.Text.RegularExpressions;
using Warmup.Midi;
using Warmup.MusicXml;
using Warmup.WholeCatalogue;

namespace Warmup.WholeCatalogue.Tests;

/// <summary>
/// Sources: the plain loop over the same drills, written here once more; RFC 3720, appendix B.4, for the checksum's values. Speed is not
/// tested.
/// </summary>
public class CatalogueTests
{
    // A prime, so that a portion has of everything.
    private const int Portion = 487;

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(5)]
    public void The_sums_are_those_of_a_plain_loop_for_every_number_of_workers(int workers)
    {
        var (made, notes, midi, xml) = (0, 0L, 0L, 0L);
        foreach (var drill in CatalogueDrills.Each(Portion))
        {
            var score = drill.ToScore();
            using var file = new MemoryStream();
            new MidiFormat().Write(score, file);
            midi += file.Length;
            file.SetLength(0);
            new MusicXmlFormat().Write(score, file);
            xml += file.Length;
            notes += score.NoteCount;
            made++;
        }

        var totals = DrillFiles.Make(new OrderedParallel { Workers = workers }, CatalogueDrills.Each(Portion), CancellationToken.None);
        Assert.True(made > 200);
        Assert.Equal((made, notes, midi, xml), (totals.Made, totals.Notes, totals.MidiBytes, totals.XmlBytes));
        Assert.Equal(DrillFiles.Make(new OrderedParallel { Workers = 1 }, CatalogueDrills.Each(Portion), CancellationToken.None), totals);
    }

    [Fact]
    public void The_catalogue_is_every_scale_on_every_tonic_in_every_pattern_and_speed_once()
    {
        var all = CatalogueDrills.Each(1).Select(d => (d.Scale, d.Tonic, d.Pattern, d.Speeds[0], d.Meter)).ToHashSet();
        var patterns = Repertoire.Traditional.Count + Repertoire.Choir.Count;
        Assert.Equal(72 * 12 * patterns * 3, all.Count);
        Assert.Equal(all.Count, CatalogueDrills.Count);
        Assert.Equal(72, all.Select(d => d.Scale).Distinct().Count());
        Assert.Equal(12, all.Select(d => d.Tonic.Midi % 12).Distinct().Count());
        Assert.Equal(3, all.Select(d => d.Item4).Distinct().Count());
        Assert.All(Repertoire.Traditional.Where(e => e.Tala.Contains('=')), e =>
            Assert.Equal(e.Tala[(e.Tala.IndexOf('=') + 2)..], all.First(d => d.Pattern == e.Pattern).Meter.Beats.ToString(CultureInfo.InvariantCulture)));
    }

    [Fact]
    public void What_a_scale_refuses_is_counted_by_its_reason()
    {
        // Sarali 10 is pinned to seven letters; Mohanam has five.
        var refused = new Drill { Scale = Catalogue.Default.Read("Mohanam"), Pattern = Repertoire.Find("sarali-10")!.Pattern, Tonic = Tonic.Parse("C4") };
        Assert.False(refused.TryToScore(out _, out var why));
        var made = refused with { Pattern = Pattern.Ladder };
        var totals = DrillFiles.Make(new OrderedParallel { Workers = 2 }, [refused, made, refused], CancellationToken.None);
        Assert.Equal((1, 2), (totals.Made, totals.Refused));
        Assert.Equal(2, totals.Refusals[why!.Code]);
        Assert.Equal(made.ToScore().NoteCount, totals.Notes);
    }

    [Fact]
    public void Drills_that_share_their_lines_have_the_bytes_of_drills_made_alone()
    {
        // The last tonics of one pattern and speed, and the first of the next.
        var drills = CatalogueDrills.Each(1).Skip(CatalogueDrills.Tonics - 3).Take(6).ToList();
        Assert.Equal(2, drills.Select(d => d.Speeds).Distinct().Count());
        var files = new DrillFiles();
        Assert.All(drills, d => Assert.Equal(new DrillFiles().Make(d, CancellationToken.None), files.Make(d, CancellationToken.None)));
        Assert.Equal(6, drills.Select(d => files.Make(d, CancellationToken.None).Checksum).Distinct().Count());
    }

    [Fact]
    public void The_checksum_tells_another_order_and_other_bytes()
    {
        var drills = CatalogueDrills.Each(Portion).Take(3).ToList();
        ulong Of(params Drill[] some) => DrillFiles.Make(new OrderedParallel { Workers = 2 }, some, CancellationToken.None).Checksum;
        Assert.NotEqual(Of(drills[0], drills[1]), Of(drills[1], drills[0]));
        Assert.NotEqual(Of(drills[0], drills[1]), Of(drills[0], drills[2]));
        var buffer = new ArrayBufferWriter<byte>();
        new MidiFormat().Write(drills[0].ToScore(), buffer);
        new MusicXmlFormat().Write(drills[0].ToScore(), buffer);
        Assert.Equal(Crc32C.Of(buffer.WrittenSpan), new DrillFiles().Make(drills[0], CancellationToken.None).Checksum);
    }

    [Fact]
    public void The_checksum_is_that_of_the_standard()
    {
        Assert.Equal(0x8A9136AAu, Crc32C.Of(new byte[32]));
        Assert.Equal(0x62A8AB43u, Crc32C.Of([.. Enumerable.Repeat((byte)0xFF, 32)]));
        Assert.Equal(0x46DD794Eu, Crc32C.Of([.. Enumerable.Range(0, 32).Select(i => (byte)i)]));
        Assert.Equal(0x113FDB5Cu, Crc32C.Of([.. Enumerable.Range(0, 32).Select(i => (byte)(31 - i))]));
    }

    [Fact]
    public void The_program_compares_the_workers_it_is_told()
    {
        using var output = new StringWriter(CultureInfo.InvariantCulture);
        using var error = new StringWriter(CultureInfo.InvariantCulture);
        Assert.Equal(0, Program.Run(["--workers", "1", "--workers", "3", "--every", "9973"], output, error));
        var checksums = Regex.Matches(output.ToString(), "^workers ([13]): .*checksum ([0-9a-f]{16})", RegexOptions.Multiline);
        Assert.Equal(["1", "3"], checksums.Select(m => m.Groups[1].Value));
        Assert.Single(checksums.Select(m => m.Groups[2].Value).Distinct());
        Assert.Empty(error.ToString());
    }

    [Theory]
    [InlineData("--workers", "0", "between 1 and 256, not 0")]
    [InlineData("--every", "0", "between 1 and 1000000, not 0")]
    [InlineData("--every", "x", "x")]
    [InlineData("--some", "1", "--some")]
    public void Wrong_options_exit_with_2_and_say_what_is_allowed(string option, string value, string said)
    {
        using var error = new StringWriter(CultureInfo.InvariantCulture);
        Assert.Equal(2, Program.Run([option, value], TextWriter.Null, error));
        Assert.Contains(said, error.ToString(), StringComparison.Ordinal);
    }
}
