using System.Globalization;
using System.Numerics;
using System.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.Tests;

/// <summary>
/// Scala scale files. Source: the published rules of the format (comments begin with an exclamation mark; description; number of notes;
/// pitches with a period are cents, others ratios; 1/1 is implicit; negative ratios are an error). The reader below was written from those
/// rules for these tests and shares nothing with the library.
/// </summary>
public class TuningScalaFileTests
{
    [Fact]
    public void The_format_s_liberties_are_read()
    {
        const string Text = "! a comment\r\n!\r\n  A made-up tuning \r\n\t 7 notes\r\n! between\r\n 9/8\r\n5/4 E\r\n 498.045 cents!\r\n\t3/2\r\n-5.0\r\n 2\r\n1200.\r\n";
        Assert.True(ScalaFile.TryParse(Text, out var file, out _));
        Assert.Equal("  A made-up tuning", file!.Description);
        Assert.Equal(["9/8", "5/4", "498.045c", "3/2", "-5c", "2/1", "1200c"], file.Pitches.Select(p => p.ToString()));
    }

    [Theory]
    [InlineData("empty description\n0\n", 0)]
    [InlineData("\n1\n2/1", 1)]
    [InlineData("text behind the pitches is ignored\n1\n2/1\nthat is all\n", 1)]
    [InlineData("large numbers\n1\n2147483647/2147483646\n", 1)]
    public void Unusual_files_are_read(string text, int count)
    {
        Assert.True(ScalaFile.TryParse(text, out var file, out var error), error?.ToString());
        Assert.Equal(count, file!.Pitches.Count);
    }

    [Theory]
    [InlineData("", 1, 1, "no description")]
    [InlineData("! only\n! comments", 2, 1, "no description")]
    [InlineData("d", 1, 1, "ends before the number")]
    [InlineData("d\n x\n", 2, 2, "between 0 and 4096")]
    [InlineData("d\n-1\n", 2, 1, "between 0 and 4096")]
    [InlineData("d\n99999999999999\n", 2, 1, "between 0 and 4096")]
    [InlineData("d\n5000\n", 2, 1, "between 0 and 4096")]
    [InlineData("d\n2\n3/2\n", 3, 1, "2 pitches and ends after 1")]
    [InlineData("d\n1\n3/2\n2/1\n", 4, 1, "has more")]
    [InlineData("d\n1\n! c\n  0/1\n", 4, 3, "not a ratio above 0")]
    [InlineData("d\n1\n1/0\n", 3, 1, "not a ratio above 0")]
    [InlineData("d\n1\n -3/2\n", 3, 2, "negative")]
    [InlineData("d\n1\n3/-2\n", 3, 1, "negative")]
    [InlineData("d\n1\n-2\n", 3, 1, "negative")]
    [InlineData("d\n1\n99999999999999999999/2\n", 3, 1, "too large")]
    [InlineData("d\n1\n3/2/1\n", 3, 1, "not a pitch")]
    [InlineData("d\n1\nfifth\n", 3, 1, "not a pitch")]
    [InlineData("d\n1\n\n2/1\n", 3, 1, "empty")]
    [InlineData("d\n1\n1.2.3\n", 3, 1, "not a number of cents")]
    [InlineData("d\n1\n1e999.0\n", 3, 1, "not a number of cents")]
    [InlineData("d\n1\n999999999.0\n", 3, 1, "not a number of cents")]
    [InlineData("d\u0007\n1\n2/1\n", 1, 2, "control")]
    public void Malformed_files_are_refused_with_line_and_column(string text, int line, int column, string reason)
    {
        Assert.False(ScalaFile.TryParse(text, out _, out var error));
        Assert.Equal((line, column), (error!.Line, error.Column));
        Assert.Contains(reason, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Ten_megabytes_of_comments_are_refused_without_reading_them_all()
    {
        using var endless = new CountingStream("! a comment that goes on and on\n"u8.ToArray(), 10_000_000);
        var refused = Assert.Throws<WarmupFormatException>(() => ScalaFile.Read(endless));
        Assert.Contains("1000000 characters", refused.Message, StringComparison.Ordinal);
        Assert.InRange(endless.Taken, 1_000_000, 1_100_000);

        Assert.False(ScalaFile.TryParse(new string('!', 10_000_000), out _, out _));
        var nearly = string.Concat(Enumerable.Repeat("!\n", 499_000)) + "d\n1\n2/1\n";
        Assert.True(ScalaFile.TryParse(nearly, out _, out _));
    }

    [Fact]
    public void Twelve_pitches_to_the_octave_are_a_tuning()
    {
        foreach (var tuning in Tuning.All)
        {
            using var stream = new MemoryStream();
            ScalaFile.FromTuning(tuning).Write(stream);
            stream.Position = 0;
            Assert.Equal(tuning, ScalaFile.Read(stream).ToTuning(tuning.Name));
        }
    }

    [Fact]
    public void Other_files_need_a_pitch_for_each_place()
    {
        // Five equal steps to the octave, taken as the nearest of twelve by hand.
        Assert.True(ScalaFile.TryParse("five equal steps\n5\n240.\n480.\n720.\n960.\n2/1\n", out var five, out _));
        Assert.Contains("12", Assert.Throws<ArgumentException>(() => five!.ToTuning("five")).Message, StringComparison.Ordinal);
        var tuning = five!.ToTuning("five", [0, 0, 1, 1, 2, 2, 2, 3, 3, 4, 4, 4]);
        Assert.Equal([0, 0, 240, 240, 480, 480, 480, 720, 720, 960, 960, 960], tuning.Intervals.Select(p => p.Cents));
        Assert.Throws<ArgumentException>(() => five.ToTuning("five", [0, 0, 1, 1, 2, 2, 2, 3, 3, 4, 4, 6]));
        Assert.Throws<ArgumentException>(() => five.ToTuning("five", [0, 1, 2]));
        Assert.Throws<ArgumentException>(() => five.ToTuning("five", [1, 0, 1, 1, 2, 2, 2, 3, 3, 4, 4, 4]));

        // Twelve pitches that end a comma beyond the octave are no tuning as they stand.
        Assert.True(ScalaFile.TryParse("d\n12\n" + string.Concat(Enumerable.Range(1, 12).Select(i => string.Create(CultureInfo.InvariantCulture, $"{101.955 * i:0.000}\n"))), out var stretched, out _));
        Assert.Contains("octave", Assert.Throws<ArgumentException>(() => stretched!.ToTuning("stretched")).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_scale_s_file_has_its_notes_in_order()
    {
        var file = ScalaFile.FromScale(Catalogue.Default.Find("Bhairavi")!.Scale, Tuning.Just);
        Assert.Equal("Bhairavi, just", file.Description);
        Assert.Equal(["9/8", "6/5", "4/3", "3/2", "8/5", "5/3", "9/5", "2/1"], file.Pitches.Select(p => p.ToString()));
    }

    [Property]
    public Property What_the_library_writes_an_independent_reader_reads_and_back()
    {
        var ratio = from n in Gen.Choose(1, int.MaxValue) from d in Gen.Choose(1, int.MaxValue) select Interval.FromRatio(new Rational(n, d));
        var cents = from whole in Gen.Choose(-1200, 4800) from part in Gen.Choose(0, 999_999_999) select Interval.FromCents(whole + (part / 1e9));
        var file = from pitches in Gen.OneOf(ratio, cents).ListOf()
                   from description in Gen.Elements(string.Empty, "five notes", "स रि ग", "12 notes, 3/2", " spaced")
                   select new ScalaFile(description, pitches.Take(4096).ToValueList());
        return Prop.ForAll(Arb.From(file), written =>
        {
            var text = written.ToText();
            var (description, read) = IndependentReader.Read(text);
            return description == written.Description
                && read.Count == written.Pitches.Count
                && read.Zip(written.Pitches).All(p => p.First.Ratio is { } exact
                    ? p.Second.Ratio is { } own && exact == (own.Numerator, own.Denominator)
                    : p.First.Cents.Equals(p.Second.Cents))
                && ScalaFile.TryParse(text, out var again, out _)
                && again == written;
        });
    }

    [Property(MaxTest = 1000)]
    public bool Whatever_is_typed_gives_a_file_or_an_error_with_its_place(NonNull<string> junk, byte where)
    {
        const string Good = "d\n3\n9/8\n400.0\n2/1\n";
        var at = where % (Good.Length + 1);
        foreach (var text in (string[])[junk.Get, Good[..at] + junk.Get + Good[at..], junk.Get.Replace(' ', '\n') + "\n2\n3/2\n2/1"])
        {
            var read = ScalaFile.TryParse(text, out var file, out var error);
            if (read ? file is null || error is not null : file is not null || error is not { Line: > 0, Column: > 0 })
            {
                return false;
            }
        }

        return true;
    }

    [Fact]
    public void A_description_that_would_be_a_comment_is_not_written()
    {
        Assert.Throws<ArgumentException>(() => new ScalaFile("! hidden", [Interval.FromRatio(2)]));
        Assert.Throws<ArgumentException>(() => new ScalaFile("two\nlines", [Interval.FromRatio(2)]));
        Assert.Throws<ArgumentException>(() => new ScalaFile("an end that reading takes off ", [Interval.FromRatio(2)]));
        Assert.Contains("10000", Assert.Throws<ArgumentException>(() => new ScalaFile(new string('a', 10_001), [])).Message, StringComparison.Ordinal);
        Assert.Contains("4096", Assert.Throws<ArgumentOutOfRangeException>(() => new ScalaFile("a", Enumerable.Repeat(Interval.Unison, 4097).ToValueList())).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Writing_ends_lines_alike_everywhere_and_has_no_byte_order_mark()
    {
        using var stream = new MemoryStream();
        ScalaFile.FromTuning(Tuning.Just).Write(stream);
        Assert.Equal((byte)'j', stream.ToArray()[0]);
        Assert.DoesNotContain((byte)'\r', stream.ToArray());
        Assert.True(stream.CanWrite);
    }

    /// <summary>A reader of the format by its published rules, with big integers and without any of the library's types.</summary>
    private static class IndependentReader
    {
        public static (string Description, List<((BigInteger, BigInteger)? Ratio, double Cents)> Pitches) Read(string text)
        {
            var lines = text.Split('\n').Where(l => !l.StartsWith('!')).ToList();
            var count = int.Parse(lines[1].Trim().Split(' ')[0], CultureInfo.InvariantCulture);
            var pitches = new List<((BigInteger, BigInteger)?, double)>();
            foreach (var line in lines.Skip(2).Take(count))
            {
                var word = line.Split([' ', '\t'], StringSplitOptions.RemoveEmptyEntries)[0];
                if (word.Contains('.', StringComparison.Ordinal))
                {
                    pitches.Add((null, double.Parse(word, NumberStyles.Float, CultureInfo.InvariantCulture)));
                    continue;
                }

                var parts = word.Split('/');
                var numerator = BigInteger.Parse(parts[0], CultureInfo.InvariantCulture);
                var denominator = parts.Length == 1 ? BigInteger.One : BigInteger.Parse(parts[1], CultureInfo.InvariantCulture);
                pitches.Add(((numerator, denominator), 0));
            }

            return (lines[0], pitches);
        }
    }

    /// <summary>A stream that repeats some bytes and counts how many were taken.</summary>
    private sealed class CountingStream(byte[] pattern, long length) : Stream
    {
        public long Taken { get; private set; }

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position
        {
            get => Taken;
            set => throw new NotSupportedException();
        }

        public override int Read(byte[] buffer, int offset, int count)
        {
            var given = (int)Math.Min(count, length - Taken);
            for (var i = 0; i < given; i++)
            {
                buffer[offset + i] = pattern[(Taken + i) % pattern.Length];
            }

            Taken += given;
            return given;
        }

        public override void Flush()
        {
        }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
