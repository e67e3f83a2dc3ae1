namespace Warmup.ManyMachines.Tests;

/// <summary>Source: the rows made here, and the promise that a part is whole, and the same however often it is written.</summary>
public sealed class PartFileTests : IDisposable
{
    private static readonly PatternJob Job = new() { Words = "ladder run figure(1 3) .reversed .ends .there-and-back .above(1) .swapped", Size = 4, Scales = "Mohanam; Nadanamakriya", RangeLength = 30, First = 5, HasParts = true };

    private readonly TestFolder _folder = new();
    private readonly PatternWork _work = new(Job);

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_part_has_the_rows_of_its_range_and_the_same_bytes_each_time()
    {
        var last = _work.Ranges - 1;
        Assert.InRange(_work.CountOf(last), 1, 29);
        foreach (var range in (int[])[0, 1, last])
        {
            var rows = _work.RowsOf(range, CancellationToken.None).ToList();
            Assert.Equal(Enumerable.Range(5 + (30 * range), _work.CountOf(range)), rows.Select(r => (int)r.Index));
            var path = _folder.At(PartFile.NameOf(_work.FirstOf(range)));
            Assert.Equal(_work.Of(range, CancellationToken.None), PartFile.Write(_folder.Path, _work, range, CancellationToken.None));
            var bytes = File.ReadAllBytes(path);
            PartFile.Write(_folder.Path, _work, range, CancellationToken.None);
            Assert.Equal(bytes, File.ReadAllBytes(path));
            Assert.Equal(_work.Of(range, CancellationToken.None), PartFile.Read(_folder.Path, _work, range));
        }

        Assert.Equal(3, Directory.GetFiles(_folder.Path).Length);
    }

    [Fact]
    public void Names_sort_as_the_indexes_do() =>
        Assert.True(string.CompareOrdinal(PartFile.NameOf(999_999_999_999), PartFile.NameOf(1_000_000_000_000)) < 0);

    [Fact]
    public void A_part_that_is_missing_cut_short_or_of_another_range_is_refused()
    {
        Assert.Equal($"{PartFile.NameOf(5)} is missing", Refusal(0));
        PartFile.Write(_folder.Path, _work, 0, CancellationToken.None);
        var path = _folder.At(PartFile.NameOf(5));
        var bytes = File.ReadAllBytes(path);
        for (var length = 0; length < bytes.Length; length += 97)
        {
            File.WriteAllBytes(path, bytes[..length]);
            Assert.Equal($"{PartFile.NameOf(5)} cannot be read", Refusal(0));
        }

        PartFile.Write(_folder.Path, _work, 1, CancellationToken.None);
        File.Copy(_folder.At(PartFile.NameOf(35)), path, true);
        Assert.Equal($"{PartFile.NameOf(5)} does not have the indexes of its range", Refusal(0));
        PartFile.Write(_folder.Path, _work, _work.Ranges - 1, CancellationToken.None);
        File.Copy(_folder.At(PartFile.NameOf(_work.FirstOf(_work.Ranges - 1))), path, true);
        Assert.Equal($"{PartFile.NameOf(5)} does not have the rows of its range", Refusal(0));
    }

    [Fact]
    public void Patterns_that_sing_the_same_in_all_scales_have_the_same_number_and_others_another()
    {
        // A scale that is the same both ways: swapping its lists changes nothing.
        var job = Job with { Scales = "Mohanam" };
        var work = new PatternWork(job);
        var rows = Enumerable.Range(0, work.Ranges).SelectMany(r => work.RowsOf(r, CancellationToken.None)).ToList();
        var patterns = job.Enumeration();
        var sung = rows.ConvertAll(r => string.Join('\n', job.ReadScales().Select(s => patterns[r.Index].TryExpand(s, out var lines, out _)
            ? string.Join('/', lines!.Lines.Select(l => string.Join(' ', l.Notes.Select(n => n.Tone.Semitones))))
            : "refused")));
        Assert.Equal(sung.Distinct().Count(), rows.Select(r => r.Heard).Distinct().Count());
        Assert.Equal(sung.Distinct().Count(), rows.Zip(sung).Distinct(EqualityComparer<(Found Row, string Sung)>.Create((a, b) => a.Row.Heard == b.Row.Heard && a.Sung == b.Sung, p => p.Row.Heard.GetHashCode())).Count());
        Assert.True(sung.Distinct().Count() < rows.Count, "some patterns were to sing the same");
    }

    private string Refusal(int range) => Assert.Throws<InvalidDataException>(() => PartFile.Read(_folder.Path, _work, range)).Message;
}
