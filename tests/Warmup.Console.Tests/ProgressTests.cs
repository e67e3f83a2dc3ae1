using Warmup.Samples;

namespace Warmup.Cli.Tests;

/// <summary>What long work says on a terminal, by a clock that the test moves.</summary>
public sealed class ProgressTests : IDisposable
{
    private readonly HandClock _clock = new();
    private readonly StringWriter _screen = new();

    public void Dispose() => _screen.Dispose();

    [Fact]
    public void Nothing_is_said_for_two_seconds_and_nothing_is_left_behind()
    {
        using (var progress = new Progress("writing", _screen, _clock))
        {
            progress.Reach(0.9);
            _clock.Move(1.9);
        }

        Assert.Equal(string.Empty, _screen.ToString());
    }

    [Theory]
    [InlineData(0.25, 10, "writing a.wav: 25 %, about 30 s left")]
    [InlineData(0.5, 3, "writing a.wav: 50 %, about 3 s left")]
    [InlineData(0.01, 6, "writing a.wav: 1 %, about 10 min left")]
    [InlineData(0, 4, "writing a.wav: 0 %")]
    [InlineData(7, 4, "writing a.wav: 100 %, about 0 s left")]
    public void The_share_and_the_time_left_are_said_from_where_the_part_began(double share, double seconds, string said)
    {
        using var progress = new Progress("drawing", _screen, _clock);
        _clock.Move(1);
        progress.Begin("writing a.wav");
        progress.Reach(share);
        _clock.Move(seconds);
        Assert.Equal(said, Lines()[^1].TrimEnd());
    }

    [Fact]
    public void Where_the_share_is_not_known_the_work_is_named()
    {
        using var progress = new Progress("writing a.pdf", _screen, _clock);
        _clock.Move(2.5);
        Assert.Equal("writing a.pdf ...", Lines()[^1].TrimEnd());
    }

    [Fact]
    public void The_line_is_wiped_at_the_end()
    {
        using (var progress = new Progress("a long piece of work", _screen, _clock))
        {
            _clock.Move(2);
            progress.Begin("short");
            _clock.Move(1);
        }

        const string first = "a long piece of work ...";
        var second = "short ...".PadRight(first.Length);
        Assert.Equal([first, second, second, new string(' ', first.Length), string.Empty], Lines());
    }

    [Fact]
    public void Without_a_terminal_nothing_is_timed()
    {
        using var progress = new Progress("writing", null, _clock);
        Assert.False(_clock.IsTicking);
    }

    [Fact]
    public void A_counted_stream_passes_all_on_and_says_how_much()
    {
        var shares = new List<double>();
        using var inner = new MemoryStream();
        using var counted = new CountedStream(inner, 8, shares.Add);
        counted.Write([1, 2]);
        counted.Write([0, 3, 4, 5, 6, 0], 1, 4);
        Assert.Equal([1, 2, 3, 4, 5, 6], inner.ToArray());
        Assert.Equal([0.25, 0.75], shares);
    }

    // What was written after each return to the line's beginning.
    private string[] Lines() => _screen.ToString().Split('\r')[1..];

    /// <summary>A clock that stands until it is moved.</summary>
    private sealed class HandClock : TimeProvider
    {
        private readonly List<Timer> _timers = [];
        private long _now;

        public bool IsTicking => _timers.Count > 0;

        public override long TimestampFrequency => TimeSpan.TicksPerSecond;

        public override long GetTimestamp() => _now;

        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
        {
            var timer = new Timer(this, callback, state, _now + dueTime.Ticks, period.Ticks);
            _timers.Add(timer);
            return timer;
        }

        public void Move(double seconds)
        {
            var end = _now + TimeSpan.FromSeconds(seconds).Ticks;
            while (_timers.Where(t => t.Due <= end).MinBy(t => t.Due) is { } next)
            {
                _now = next.Due;
                next.Ring();
            }

            _now = end;
        }

        private sealed class Timer(HandClock clock, TimerCallback callback, object? state, long due, long period) : ITimer
        {
            public long Due { get; private set; } = due;

            public void Ring()
            {
                Due += period;
                callback(state);
            }

            public bool Change(TimeSpan dueTime, TimeSpan newPeriod) => throw new NotSupportedException();

            public void Dispose() => clock._timers.Remove(this);

            public ValueTask DisposeAsync()
            {
                Dispose();
                return ValueTask.CompletedTask;
            }
        }
    }
}
