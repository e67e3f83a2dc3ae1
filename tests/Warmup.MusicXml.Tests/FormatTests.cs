using System.Buffers;
using System.Buffers.Binary;
using System.IO.Compression;
using System.Xml;

namespace Warmup.MusicXml.Tests;

/// <summary>
/// The formats as exporters: names, streams, limits, and the compressed container. Sources: the W3C's MusicXML 4.0 tutorial on compressed
/// files and container.xsd; PKWARE's APPNOTE for the bytes of a ZIP header.
/// </summary>
public class FormatTests
{
    private static readonly Score Plain = Drills.Of().ToScore();

    [Fact]
    public void The_formats_name_their_endings()
    {
        Assert.Equal<string>([".musicxml", ".xml"], new MusicXmlFormat().Extensions);
        Assert.Equal<string>([".mxl"], new MxlFormat().Extensions);
        Assert.Equal(MusicXmlOptions.Default, new MxlFormat().Options);
    }

    [Fact]
    public void The_stream_is_only_written_to_and_stays_open()
    {
        foreach (IScoreFormat format in new IScoreFormat[] { new MusicXmlFormat(), new MxlFormat() })
        {
            using var stream = new WriteOnlyStream();
            format.Write(Plain, stream);
            Assert.True(stream.Count > 0);
            Assert.False(stream.WasClosed);
        }
    }

    [Fact]
    public void A_stopped_token_stops_the_work_before_the_first_byte()
    {
        using var stream = new MemoryStream();
        var stopped = new CancellationToken(canceled: true);
        Assert.Throws<OperationCanceledException>(() => new MusicXmlFormat().Write(Plain, stream, stopped));
        Assert.Throws<OperationCanceledException>(() => new MxlFormat().Write(Plain, stream, stopped));
        Assert.Equal(0, stream.Length);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(40)] // more than one block
    public void A_destination_gets_the_same_bytes_whether_its_memory_is_an_array_or_not(int times)
    {
        var score = Drills.Of(pattern: $"ladder.repeat({times})").ToScore();
        using var stream = new MemoryStream();
        new MusicXmlFormat().Write(score, stream);
        using var memory = new MemoryWithoutArray(2 * (int)stream.Length + (1 << 16));
        new MusicXmlFormat().Write(score, memory);
        Assert.Equal(stream.ToArray(), memory.Written.ToArray());
        var array = new ArrayBufferWriter<byte>();
        new MusicXmlFormat().Write(score, array);
        Assert.Equal(stream.ToArray(), array.WrittenSpan.ToArray());
    }

    [Fact]
    public void A_token_that_is_stopped_on_the_way_stops_the_work()
    {
        using var source = new CancellationTokenSource();
        using var stream = new WriteOnlyStream { AtFirstWrite = source.Cancel };
        var longOne = Drills.Of(pattern: "ladder.repeat(50)").ToScore();
        Assert.Throws<OperationCanceledException>(() => new MusicXmlFormat().Write(longOne, stream, source.Token));
    }

    [Theory]
    [InlineData(1, 512)] // a 256th of a quarter: shorter than a 128th note, which is a 32nd of a quarter
    [InlineData(1, 101)]
    public void A_length_that_no_note_value_or_tuplet_has_is_refused_before_the_first_byte(long length, long over)
    {
        var line = new Line([new LineNote(default, ScaleDirection.Ascent, Approach.Leap, new Rational(length, over)), new LineNote(default, ScaleDirection.Ascent, Approach.Leap, 1)]);
        var score = Drills.Of().ToScore(new Expansion([line], []));
        using var stream = new MemoryStream();
        var refused = Assert.Throws<ExportException>(() => new MusicXmlFormat().Write(score, stream));
        Assert.Contains("128th", refused.Message, StringComparison.Ordinal);
        Assert.Contains($"{length}/{over}", refused.Message, StringComparison.Ordinal);
        Assert.Equal(0, stream.Length);
    }

    [Fact]
    public void More_than_16383_divisions_are_refused_with_the_number()
    {
        // Fields of 5, 7, 9, 11 and 13 notes an akshara: 5 x 7 x 9 x 11 x 13 = 45045 divisions would divide them all.
        var lines = new[] { 5, 7, 9, 11, 13 }.Select(n => new Line(Enumerable.Repeat(new LineNote(default, ScaleDirection.Ascent, Approach.Leap, new Rational(1, n)), n).ToValueList()));
        var scores = lines.Select(l => Drills.Of().ToScore(new Expansion([l], []))).ToList();
        Assert.Equal(3465, ReadScore.Of(Score.Join("four", scores.Take(4))).Divisions);
        var refused = Assert.Throws<ExportException>(() => ReadScore.Bytes(Score.Join("five", scores)));
        Assert.Contains("45045", refused.Message, StringComparison.Ordinal);
        Assert.Contains("16383", refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(3)]
    [InlineData(16)]
    public void A_staff_height_outside_4_to_15_is_refused(int height)
    {
        var refused = Assert.Throws<ArgumentOutOfRangeException>(() => new MusicXmlOptions { StaffMillimetres = height });
        Assert.Contains("between 4 and 15", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_container_begins_with_a_stored_mimetype_without_an_extra_field()
    {
        var bytes = Mxl(Plain);
        Assert.Equal(0x04034b50u, BinaryPrimitives.ReadUInt32LittleEndian(bytes));
        Assert.Equal(0, BinaryPrimitives.ReadUInt16LittleEndian(bytes.AsSpan(8))); // stored
        var name = BinaryPrimitives.ReadUInt16LittleEndian(bytes.AsSpan(26));
        Assert.Equal(0, BinaryPrimitives.ReadUInt16LittleEndian(bytes.AsSpan(28))); // no extra field
        Assert.True(bytes.AsSpan(30).StartsWith("mimetypeapplication/vnd.recordare.musicxml"u8));
        Assert.Equal("mimetype".Length, name);
        Assert.Equal(34, BinaryPrimitives.ReadInt32LittleEndian(bytes.AsSpan(22))); // the media type and nothing behind it
    }

    [Fact]
    public void The_container_names_the_score_which_is_the_plain_file()
    {
        using var zip = new ZipArchive(new MemoryStream(Mxl(Plain)), ZipArchiveMode.Read);
        Assert.Equal("META-INF/container.xml", zip.Entries[1].FullName);
        using var container = XmlReader.Create(zip.Entries[1].Open(), ReadScore.Settings);
        Assert.True(container.ReadToFollowing("rootfile"));
        Assert.Equal("application/vnd.recordare.musicxml+xml", container.GetAttribute("media-type"));
        using var score = zip.GetEntry(container.GetAttribute("full-path")!)!.Open();
        using var copy = new MemoryStream();
        score.CopyTo(copy);
        Assert.Equal(ReadScore.Bytes(Plain), copy.ToArray());
    }

    [Fact]
    public void The_container_has_no_time_of_its_own_and_equal_bytes()
    {
        using var zip = new ZipArchive(new MemoryStream(Mxl(Plain)), ZipArchiveMode.Read);
        Assert.All(zip.Entries, e => Assert.Equal(new DateTime(1980, 1, 1), e.LastWriteTime.DateTime));
        Assert.Equal(Mxl(Plain), Mxl(Drills.Of().ToScore()));
    }

    private static byte[] Mxl(Score score)
    {
        using var stream = new MemoryStream();
        new MxlFormat().Write(score, stream);
        return stream.ToArray();
    }

    /// <summary>A destination whose memory cannot be had as an array.</summary>
    private sealed class MemoryWithoutArray(int size) : MemoryManager<byte>, IBufferWriter<byte>
    {
        private readonly byte[] _bytes = new byte[size];
        private int _used;

        public ReadOnlySpan<byte> Written => _bytes.AsSpan(0, _used);

        public override Span<byte> GetSpan() => _bytes;

        public override MemoryHandle Pin(int elementIndex = 0) => throw new NotSupportedException();

        public override void Unpin() => throw new NotSupportedException();

        void IBufferWriter<byte>.Advance(int count) => _used += count;

        Memory<byte> IBufferWriter<byte>.GetMemory(int sizeHint) => Memory[_used..];

        Span<byte> IBufferWriter<byte>.GetSpan(int sizeHint) => _bytes.AsSpan(_used);

        protected override void Dispose(bool disposing)
        {
        }
    }
}
