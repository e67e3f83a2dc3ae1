using System.Buffers;
using System.Globalization;
using FsCheck.Xunit;

namespace Warmup.Midi.Tests;

/// <summary>The ways of writing, what they cost, and what is refused.</summary>
public class WritingTests
{
    [Fact]
    public void Generated_scores_have_several_sections_and_all_that_time_can_bring() =>
        ScoreShares.AssertEnough(Drills.Scores, 400, seed: 1, line => TestContext.Current.TestOutputHelper?.WriteLine(line));

    [Property(Arbitrary = [typeof(Drills)])]
    public void Equal_scores_give_equal_bytes(Sung sung)
    {
        // Built twice from separate values; the culture of the thread must not matter either.
        var again = sung.Drills.Select(d => d with { Scale = Scale.Parse(d.Scale.ToText()), Pattern = Pattern.Parse(d.Pattern.ToString()) });
        var before = CultureInfo.CurrentCulture;
        try
        {
            var bytes = Files.Bytes(ScoreGenerators.Join(sung.Drills.Select(d => d.ToScore())));
            var other = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            (other.NumberFormat.NumberDecimalSeparator, other.NumberFormat.NegativeSign) = (",", "~");
            CultureInfo.CurrentCulture = other;
            Assert.Equal(bytes, Files.Bytes(ScoreGenerators.Join(again.Select(d => d.ToScore()))));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void A_stream_gets_the_bytes_a_buffer_gets_and_stays_open()
    {
        // Long enough to fill the buffer in front of the stream several times.
        var score = Long().ToScore();
        using var stream = new MemoryStream();
        new MidiFormat().Write(score, stream);
        Assert.True(stream.CanWrite);
        Assert.True(stream.Length > 100_000);
        Assert.Equal(Files.Bytes(score), stream.ToArray());
    }

    [Fact]
    public void A_buffer_that_gives_no_more_than_asked_for_works_too()
    {
        var score = Files.Drill().ToScore();
        var narrow = new NarrowBuffer();
        new MidiFormat().Write(score, narrow);
        Assert.Equal(Files.Bytes(score), narrow.Bytes);
    }

    [Fact]
    public void Nothing_is_allocated_a_note()
    {
        var few = Files.Drill().ToScore();
        var many = Long().ToScore();
        Assert.Equal((35, 35_000), (few.NoteCount, many.NoteCount));
        foreach (var options in (MidiOptions[])[new(), new() { IsSingleTrack = true }, new() { Tuning = MidiTuning.TuningStandard, Text = MidiTextEncoding.Utf8 }])
        {
            var (a, b) = (Allocated(few, options), Allocated(many, options));
            Assert.True(a < 20_000, $"{a} bytes for 35 notes");
            Assert.True(b - a < 1_000, $"{a} bytes for 35 notes, {b} for 35,000");
        }
    }

    [Fact]
    public void A_stopped_export_ends_and_writes_nothing()
    {
        using var source = new CancellationTokenSource();
        source.Cancel();
        var buffer = new ArrayBufferWriter<byte>();
        var score = Files.Drill().ToScore();
        Assert.Throws<OperationCanceledException>(() => new MidiFormat().Write(score, buffer, source.Token));
        Assert.Equal(0, buffer.WrittenCount);
        using var stream = new MemoryStream();
        Assert.Throws<OperationCanceledException>(() => new MidiFormat().Write(score, stream, source.Token));
        Assert.Equal(0, stream.Length);
    }

    [Fact]
    public void An_export_can_be_stopped_half_way()
    {
        using var source = new CancellationTokenSource();
        var buffer = new StoppingBuffer(source);
        var score = Long().ToScore();
        Assert.Throws<OperationCanceledException>(() => new MidiFormat().Write(score, buffer, source.Token));
        Assert.True(buffer.Written < Files.Bytes(score).Length / 2);
    }

    [Fact]
    public void A_refused_score_leaves_a_stream_empty()
    {
        using var stream = new MemoryStream();
        var refused = Assert.Throws<ExportException>(() => new MidiFormat().Write(Score.Join("fine", [Files.Fine(4_093), Files.Fine(4_091)]), stream));
        Assert.Contains("4093", refused.Message, StringComparison.Ordinal);
        Assert.Equal(0, stream.Length);
    }

    [Theory]
    [InlineData(MidiTuning.PitchBend)]
    [InlineData(MidiTuning.TuningStandard)]
    public void A_note_outside_0_to_127_is_refused_with_its_line_and_note(MidiTuning tuning)
    {
        // R1 two octaves below C1 has key 1. Tuned a semitone down, at A4 = 380 Hz (254 cents below 440), it lies 2.5 keys below 0.
        var drill = Files.Drill() with
        {
            Scale = Scale.Parse("S R1 G3 P D1 S'"),
            Tonic = Tonic.FromMidi(24, 380),
            Tuning = Tuning.Equal.With(new Degree(2, -1), Interval.FromCents(0)),
            HasDrone = false,
        };
        var note = new LineNote(new ScaleTone(new Degree(2, -1), -2), ScaleDirection.Ascent, Approach.Leap, 1);
        var lines = drill.Pattern.Expand(drill.Scale).Lines;
        var score = drill.ToScore(new Expansion([lines[0], new Line([lines[0].Notes[0], lines[0].Notes[1], note])], []));
        var refused = Assert.Throws<ExportException>(() => Files.Bytes(score, new MidiOptions { Tuning = tuning }));
        Assert.StartsWith("line 2, note 3: R1__ (Db-1, MIDI note 1)", refused.Message, StringComparison.Ordinal);
        Assert.Contains("0 to 127", refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(129)]
    public void Programs_are_1_to_128(int program)
    {
        var refused = Assert.Throws<ArgumentOutOfRangeException>(() => new MidiOptions { VoiceProgram = program });
        Assert.StartsWith($"VoiceProgram must be between 1 and 128, not {program}", refused.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => new MidiOptions { DroneProgram = program });
    }

    [Theory]
    [InlineData(0)]
    [InlineData(128)]
    public void Velocities_are_1_to_127(int velocity)
    {
        var refused = Assert.Throws<ArgumentOutOfRangeException>(() => new MidiOptions { DroneVelocity = velocity });
        Assert.StartsWith($"DroneVelocity must be between 1 and 127, not {velocity}", refused.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => new MidiOptions { VoiceVelocity = velocity });
    }

    [Fact]
    public void The_format_tells_its_name_and_endings()
    {
        IScoreFormat format = new MidiFormat();
        Assert.Equal("Standard MIDI File", format.Name);
        Assert.Equal(".mid", format.Extensions[0]);
    }

    private static Drill Long() => Files.Drill(pattern: "ladder.repeat(1000)") with { Tuning = Tuning.Just };

    private static long Allocated(Score score, MidiOptions options)
    {
        var format = new MidiFormat(options);
        var buffer = new ArrayBufferWriter<byte>(2_000_000);
        return Allocation.LeastOf(() =>
        {
            buffer.ResetWrittenCount();
            format.Write(score, buffer);
        });
    }

    private sealed class NarrowBuffer : IBufferWriter<byte>
    {
        private readonly List<byte> _bytes = [];
        private byte[] _given = [];

        public byte[] Bytes => [.. _bytes];

        public void Advance(int count) => _bytes.AddRange(_given[..count]);

        public Memory<byte> GetMemory(int sizeHint = 0) => _given = new byte[Math.Max(1, sizeHint)];

        public Span<byte> GetSpan(int sizeHint = 0) => GetMemory(sizeHint).Span;
    }

    private sealed class StoppingBuffer(CancellationTokenSource source) : IBufferWriter<byte>
    {
        private readonly byte[] _given = new byte[65_536];

        public long Written { get; private set; }

        public void Advance(int count)
        {
            Written += count;
            if (Written > 10_000)
            {
                source.Cancel();
            }
        }

        public Memory<byte> GetMemory(int sizeHint = 0) => _given;

        public Span<byte> GetSpan(int sizeHint = 0) => _given;
    }
}
