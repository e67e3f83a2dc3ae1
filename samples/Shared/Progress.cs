using System.Globalization;

namespace Warmup.Samples;

/// <summary>
/// Says on a terminal what long work is at, how far it has come and how much longer it may take. For the first two seconds it says nothing, and it wipes
/// its line when the work ends. Safe to use from several threads.
/// </summary>
internal sealed class Progress : IDisposable
{
    // The project's own settings: work that is done by then needs no report, and a line that changes more often cannot be read.
    private static readonly TimeSpan Silence = TimeSpan.FromSeconds(2);
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(0.5);

    private readonly Lock _lock = new();
    private readonly TextWriter? _screen;
    private readonly TimeProvider _clock;
    private readonly ITimer? _timer;
    private long _begun;
    private string _what;
    private double? _share;
    private int _width;

    /// <summary>Begins the report.</summary>
    /// <param name="what">What is being done, such as <c>writing the files</c>.</param>
    /// <param name="screen">A terminal's error stream; <see langword="null"/> where there is no terminal, and then nothing is said.</param>
    /// <param name="clock">Where the time comes from.</param>
    public Progress(string what, TextWriter? screen, TimeProvider clock)
    {
        (_what, _screen, _clock, _begun) = (what, screen, clock, clock.GetTimestamp());
        _timer = screen is null ? null : clock.CreateTimer(_ => Say(), null, Silence, Pause);
    }

    /// <summary>The error stream where it is a terminal.</summary>
    public static TextWriter? Terminal => Console.IsErrorRedirected ? null : Console.Error;

    /// <summary>Begins another part of the work; the time left is reckoned from here.</summary>
    public void Begin(string what)
    {
        lock (_lock)
        {
            (_what, _share, _begun) = (what, null, _clock.GetTimestamp());
        }
    }

    /// <summary>Says how much of the part is done, 0 to 1.</summary>
    public void Reach(double share)
    {
        lock (_lock)
        {
            _share = Math.Clamp(share, 0, 1);
        }
    }

    /// <summary>Ends the report and wipes its line.</summary>
    public void Dispose()
    {
        _timer?.Dispose();
        lock (_lock)
        {
            Show(string.Empty);
            _screen?.Write(_width > 0 ? "\r" : string.Empty);
            _screen?.Flush();
        }
    }

    private void Say()
    {
        lock (_lock)
        {
            Show(_share is { } share ? $"{_what}: {Done(share, _clock.GetElapsedTime(_begun))}" : $"{_what} ...");
        }
    }

    private static string Done(double share, TimeSpan spent)
    {
        var percent = string.Create(CultureInfo.InvariantCulture, $"{Math.Floor(share * 100):0} %");
        return share > 0 ? $"{percent}, about {InWords(spent * ((1 - share) / share))} left" : percent;
    }

    private static string InWords(TimeSpan left) => left < TimeSpan.FromMinutes(2)
        ? string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(left.TotalSeconds):0} s")
        : string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(left.TotalMinutes):0} min");

    // A shorter line wipes what the longer one before it left.
    private void Show(string line)
    {
        if (_screen is null || (line.Length == 0 && _width == 0))
        {
            return;
        }

        _screen.Write($"\r{line.PadRight(_width)}");
        _screen.Flush();
        _width = Math.Max(_width, line.Length);
    }
}

/// <summary>A stream that says how much of what is expected has gone through it.</summary>
internal sealed class CountedStream(Stream inner, double expected, Action<double> reached) : OneWayStream
{
    private long _written;

    public override void Flush() => inner.Flush();

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        inner.Write(buffer);
        _written += buffer.Length;
        reached(_written / expected);
    }
}
