using System.Text;

namespace Warmup.Tests;

/// <summary>Source: the documented promise that a file is written whole or not at all, and never over an existing one unasked.</summary>
public sealed class AtomicFileTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("warmup-");

    public void Dispose() => _folder.Delete(true);

    private string In(string name) => Path.Combine(_folder.FullName, name);

    private string[] Left() => [.. Directory.EnumerateFileSystemEntries(_folder.FullName).Select(p => Path.GetFileName(p)!).Order(StringComparer.Ordinal)];

    private static Action<Stream> Text(string text) => s => s.Write(Encoding.UTF8.GetBytes(text));

    [Fact]
    public void A_file_is_written_and_nothing_else_is_left()
    {
        AtomicFile.Write(In("a.txt"), Text("one"));
        Assert.Equal("one", File.ReadAllText(In("a.txt")));
        Assert.Equal(["a.txt"], Left());
    }

    [Fact]
    public void The_place_holds_nothing_while_it_is_written()
    {
        AtomicFile.Write(In("a.txt"), s =>
        {
            s.Write("half"u8);
            s.Flush();
            Assert.False(File.Exists(In("a.txt")));
        });
        Assert.True(File.Exists(In("a.txt")));
    }

    [Fact]
    public void Nothing_is_left_when_the_writer_throws()
    {
        var thrown = new InvalidDataException("half way");
        var caught = Assert.Throws<InvalidDataException>(() => AtomicFile.Write(In("a.txt"), s =>
        {
            s.Write(new byte[100_000]);
            throw thrown;
        }));
        Assert.Same(thrown, caught);
        Assert.Empty(Left());
    }

    [Fact]
    public void An_old_file_stays_whole_when_the_writer_throws()
    {
        File.WriteAllText(In("a.txt"), "old");
        Assert.Throws<OperationCanceledException>(() => AtomicFile.Write(In("a.txt"), _ => throw new OperationCanceledException(), true));
        Assert.Equal("old", File.ReadAllText(In("a.txt")));
        Assert.Equal(["a.txt"], Left());
    }

    [Fact]
    public void An_existing_file_is_not_overwritten_unasked()
    {
        File.WriteAllText(In("a.txt"), "old");
        var message = Assert.ThrowsAny<IOException>(() => AtomicFile.Write(In("a.txt"), Text("new"))).Message;
        Assert.Contains("a.txt", message, StringComparison.Ordinal);
        Assert.Equal("old", File.ReadAllText(In("a.txt")));
        Assert.Equal(["a.txt"], Left());
    }

    [Fact]
    public void A_file_that_appears_meanwhile_is_not_overwritten()
    {
        Assert.ThrowsAny<IOException>(() => AtomicFile.Write(In("a.txt"), s =>
        {
            s.Write("mine"u8);
            File.WriteAllText(In("a.txt"), "theirs");
        }));
        Assert.Equal("theirs", File.ReadAllText(In("a.txt")));
        Assert.Equal(["a.txt"], Left());
    }

    [Theory]
    [InlineData("a much longer text than before")]
    [InlineData("x")]
    [InlineData("")]
    public void Overwriting_on_request_replaces_the_whole_content(string text)
    {
        File.WriteAllText(In("a.txt"), "some old text");
        AtomicFile.Write(In("a.txt"), Text(text), true);
        Assert.Equal(text, File.ReadAllText(In("a.txt")));
        Assert.Equal(["a.txt"], Left());
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_folder_is_refused(bool overwrite)
    {
        Directory.CreateDirectory(In("folder"));
        File.WriteAllText(Path.Combine(In("folder"), "inside.txt"), "kept");
        var thrown = Assert.ThrowsAny<Exception>(() => AtomicFile.Write(In("folder"), Text("new"), overwrite));
        Assert.True(thrown is IOException or UnauthorizedAccessException, thrown.GetType().Name);
        Assert.Contains("folder", thrown.Message, StringComparison.Ordinal);
        Assert.Equal(["folder"], Left());
        Assert.Equal("kept", File.ReadAllText(Path.Combine(In("folder"), "inside.txt")));
    }

    [Fact]
    public void A_missing_folder_is_refused_and_not_made()
    {
        Assert.ThrowsAny<IOException>(() => AtomicFile.Write(Path.Combine(In("none"), "a.txt"), Text("new")));
        Assert.Empty(Left());
    }

    [Fact]
    public void A_folder_that_is_a_file_is_refused()
    {
        File.WriteAllText(In("a.txt"), "old");
        Assert.ThrowsAny<IOException>(() => AtomicFile.Write(Path.Combine(In("a.txt"), "b.txt"), Text("new")));
        Assert.Equal(["a.txt"], Left());
    }

    [Fact]
    public void What_a_killed_writer_of_the_same_file_left_behind_is_removed()
    {
        string? temporary = null;
        AtomicFile.Write(In("a.txt"), _ => temporary = Assert.Single(Left()));
        File.WriteAllText(In(temporary!), "left");
        AtomicFile.Write(In("a.txt"), Text("one"), overwrite: true);
        Assert.Equal("one", File.ReadAllText(In("a.txt")));
        Assert.Equal(["a.txt"], Left());
    }

    [Fact]
    public void Leftovers_of_the_named_kinds_are_removed_and_nothing_else()
    {
        foreach (var name in (string[])[".a.mid.partial", ".b.mid.2.partial", ".c.txt.partial", "d.mid.partial", ".e.partial", ".mid", "f.mid"])
        {
            File.WriteAllText(In(name), "left");
        }

        AtomicFile.RemoveLeftovers(_folder.FullName, [".mid"]);
        Assert.Equal([".c.txt.partial", ".e.partial", ".mid", "d.mid.partial", "f.mid"], Left());
    }

    [Fact]
    public void A_file_that_is_being_written_is_no_leftover()
    {
        AtomicFile.Write(In("a.txt"), s =>
        {
            Text("whole")(s);
            AtomicFile.RemoveLeftovers(_folder.FullName, [".txt"]);
            Assert.Single(Left());
        });
        Assert.Equal("whole", File.ReadAllText(In("a.txt")));
    }

    [Fact]
    public void Writers_of_one_name_inside_each_other_each_write_a_whole_file()
    {
        AtomicFile.Write(In("a.txt"), outer =>
        {
            AtomicFile.Write(In("a.txt"), Text("inner"));
            Text("outer")(outer);
        }, overwrite: true);
        Assert.Equal("outer", File.ReadAllText(In("a.txt")));
        Assert.Equal(["a.txt"], Left());
    }

    [Fact]
    public void Two_writers_of_one_name_leave_one_whole_file()
    {
        var texts = Enumerable.Range(0, 8).Select(i => new string((char)('a' + i), 50_000)).ToArray();
        var refused = 0;
        Parallel.ForEach(texts, t =>
        {
            try
            {
                AtomicFile.Write(In("a.txt"), Text(t), true);
            }
            catch (IOException)
            {
                Interlocked.Increment(ref refused); // a second writer may be refused, never mixed in
            }
        });
        Assert.True(refused < texts.Length);
        Assert.Contains(File.ReadAllText(In("a.txt")), texts);
        Assert.Equal(["a.txt"], Left());
    }

    [Fact]
    public void A_score_is_saved_whole_or_not_at_all()
    {
        var score = new Drill { Scale = Catalogue.Default.Read("mohanam"), Pattern = Pattern.Ladder, Tonic = Tonic.Parse("C4") }.ToScore();
        new Titles(false).Save(score, In("a.title"));
        Assert.Equal(score.Title, File.ReadAllText(In("a.title")));
        Assert.ThrowsAny<IOException>(() => new Titles(false).Save(score, In("a.title")));
        Assert.Throws<ExportException>(() => new Titles(true).Save(score, In("b.title")));
        using var stopped = new CancellationTokenSource();
        stopped.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => new Titles(false).Save(score, In("c.title"), cancellationToken: stopped.Token));
        Assert.Equal(["a.title"], Left());
    }

    /// <summary>The smallest format there can be: the title.</summary>
    private sealed class Titles(bool refuses) : IScoreFormat
    {
        public string Name => "title";

        public ValueList<string> Extensions => [".title"];

        public void Write(Score score, Stream destination, CancellationToken cancellationToken = default)
        {
            destination.Write(Encoding.UTF8.GetBytes(score.Title));
            cancellationToken.ThrowIfCancellationRequested();
            if (refuses)
            {
                throw new ExportException("cannot hold it");
            }
        }
    }
}
