using System.IO.Compression;
using System.Text;

namespace Warmup.Reading.Tests;

/// <summary>Compressed files that are made to do harm.</summary>
public class ArchiveTests
{
    private const string Container = "<container><rootfiles><rootfile full-path='score.xml'/></rootfiles></container>";

    private const string Score = "<score-partwise><part id='A'><measure><note><pitch><step>C</step><octave>4</octave></pitch><duration>1</duration></note></measure></part></score-partwise>";

    [Fact]
    public void A_bomb_is_refused_before_it_is_unpacked()
    {
        var spaces = new string(' ', 40 << 20);
        var before = GC.GetAllocatedBytesForCurrentThread();
        var bomb = Zip(("META-INF/container.xml", Container), ("score.xml", spaces));
        Assert.True(bomb.Length < 1 << 20);
        var made = GC.GetAllocatedBytesForCurrentThread() - before;
        Assert.Contains("unpacks", Assert.Throws<ReadingException>(() => MusicReader.Read(bomb)).Message, StringComparison.Ordinal);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before - made, 0, 6L * ReadingLimits.Bytes);
    }

    [Fact]
    public void Many_entries_are_refused() => Assert.Throws<ReadingException>(() => MusicReader.Read(Zip([.. Enumerable.Range(0, 65).Select(i => ($"{i}.xml", Score))])));

    [Fact]
    public void A_container_may_be_missing_but_not_lie()
    {
        Assert.Equal(1, MusicReader.Read(Zip(("a.musicxml", Score))).Sections[0].NoteCount);
        Assert.Throws<ReadingException>(() => MusicReader.Read(Zip(("META-INF/container.xml", Container), ("other.xml", Score))));
        Assert.Throws<ReadingException>(() => MusicReader.Read(Zip(("META-INF/container.xml", "<container>"), ("score.xml", Score))));
        Assert.Throws<ReadingException>(() => MusicReader.Read(Zip(("picture.png", "no score"))));
        Assert.Throws<ReadingException>(() => MusicReader.Read("PK\u0003\u0004 nothing"u8.ToArray()));
    }

    private static byte[] Zip(params (string Name, string Text)[] entries)
    {
        using var bytes = new MemoryStream();
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, text) in entries)
            {
                using var entry = zip.CreateEntry(name).Open();
                entry.Write(Encoding.UTF8.GetBytes(text));
            }
        }

        return bytes.ToArray();
    }
}
