using System.Buffers.Binary;

namespace Warmup.Audio;

/// <summary>
/// Writes scores as sound to sing with: WAV, 16-bit PCM, with a soft guide tone in exact tuning, the drone, a beat, and a marker at each
/// line.
/// </summary>
/// <remarks>
/// <para>The sound is made block by block: the memory does not depend on its length, and the stream is written from beginning to end without
/// seeking. Every time is rounded once, to the nearest frame; errors do not add up. A frequency is exact to better than a millionth of a cent.
/// Each part has its share of the level, so that the peak stays below -1 dBFS whatever they play. There is no dither: samples are rounded to
/// the nearest whole number.</para>
/// <para>Immutable, safe to share between threads. Equal scores and options give equal bytes on the same system and runtime; elsewhere
/// the last bit of a sample may differ with the system's sine.</para>
/// </remarks>
public sealed class WavFormat : IScoreFormat
{
    private const int BlockFrames = 4096;
    private const double FullScale = short.MaxValue;

    /// <summary>The format with the default options.</summary>
    public WavFormat()
        : this(WavOptions.Default)
    {
    }

    /// <summary>The format with options.</summary>
    /// <param name="options">The options.</param>
    public WavFormat(WavOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        Options = options;
    }

    /// <summary>The options.</summary>
    public WavOptions Options { get; }

    /// <inheritdoc/>
    public string Name => "WAV sound";

    /// <inheritdoc/>
    public ValueList<string> Extensions => [".wav"];

    /// <summary>Writes a score as sound. Equal scores give equal bytes.</summary>
    /// <param name="score">The score.</param>
    /// <param name="destination">Where the bytes go, in order and without seeking; it is not closed.</param>
    /// <param name="cancellationToken">Stops the work, also half-way.</param>
    /// <exception cref="ExportException">
    /// The file would be larger than 4 GiB (about 6 h 45 min of two channels at 44,100 frames a second), a pitch lies outside 5 Hz to 0.45
    /// of the sample rate, or a tempo lies outside its bounds. Then nothing is written.
    /// </exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public void Write(Score score, Stream destination, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(score);
        ArgumentNullException.ThrowIfNull(destination);
        cancellationToken.ThrowIfCancellationRequested();
        var plan = PlanOf(score, cancellationToken);
        var output = new WavOutput(destination);
        WriteHeader(plan, output);
        WriteSound(plan, output, cancellationToken);
        WriteMarkers(plan, output);
        output.Flush();
    }

    private WavPlan PlanOf(Score score, CancellationToken cancellationToken)
    {
        try
        {
            return WavPlan.For(score, Options, cancellationToken);
        }
        catch (OverflowException overflow)
        {
            throw new ExportException("the times of the score need fractions that do not fit 64 bits; use simpler tempi", overflow);
        }
    }

    private static void WriteHeader(WavPlan plan, WavOutput output)
    {
        var (size, rate) = (plan.Sizes, plan.Options.SampleRate);
        var frame = size.Channels * WavSizes.BytesPerSample;
        output.Chunk("RIFF"u8, size.Total - WavSizes.ChunkHeader);
        output.Text("WAVE"u8);
        output.Chunk("fmt "u8, WavSizes.FormatBytes);
        output.Short(1);
        output.Short(size.Channels);
        output.Number(rate);
        output.Number(rate * frame);
        output.Short(frame);
        output.Short(8 * WavSizes.BytesPerSample);
        output.Chunk("data"u8, size.Data);
    }

    private static void WriteSound(WavPlan plan, WavOutput output, CancellationToken cancellationToken)
    {
        var voice = plan.Options.HasVoice ? new VoicePart(plan) : null;
        var beat = plan.Options.HasBeat || plan.CountInBeats > 0 ? new BeatPart(plan) : null;
        SoundPart? drone = (plan.Drone, plan.Options.DroneSound) switch
        {
            (null, _) => null,
            ({ } held, var sound) when sound == DroneSound.Held || held.IsHeld => new HeldDronePart(plan, held),
            ({ } plucked, _) => new PluckedDronePart(plan, plucked),
        };
        using var strokes = drone as IDisposable;

        var left = new double[BlockFrames];
        var right = plan.Options.Channels == WavChannels.Mono ? left : new double[BlockFrames];
        for (var frame = 0L; frame < plan.Frames; frame += BlockFrames)
        {
            cancellationToken.ThrowIfCancellationRequested();
            var length = (int)Math.Min(BlockFrames, plan.Frames - frame);
            var first = left.AsSpan(0, length);
            var second = right.AsSpan(0, length);
            first.Clear();
            second.Clear();
            voice?.AddTo(first);
            drone?.AddTo(second);
            beat?.AddTo(second);
            WriteBlock(output, first, second, plan.Sizes.Channels);
        }
    }

    private static void WriteBlock(WavOutput output, ReadOnlySpan<double> left, ReadOnlySpan<double> right, int channels)
    {
        var frame = channels * WavSizes.BytesPerSample;
        var bytes = output.Take(left.Length * frame);
        for (var i = 0; i < left.Length; i++)
        {
            BinaryPrimitives.WriteInt16LittleEndian(bytes[(i * frame)..], Sample(left[i]));
            if (channels == 2)
            {
                BinaryPrimitives.WriteInt16LittleEndian(bytes[((i * frame) + WavSizes.BytesPerSample)..], Sample(right[i]));
            }
        }
    }

    private static short Sample(double height) => (short)Math.Round(height * FullScale);

    private static void WriteMarkers(WavPlan plan, WavOutput output)
    {
        var size = plan.Sizes;
        if (size.Markers == 0)
        {
            return;
        }

        output.Chunk("cue "u8, size.Cues);
        output.Number(size.Markers);
        var number = 0L;
        foreach (var marker in plan.Markers())
        {
            WriteCue(output, ++number, plan.FrameOf(marker));
        }

        output.Chunk("LIST"u8, size.Labels);
        output.Text("adtl"u8);
        number = 0;
        foreach (var marker in plan.Markers())
        {
            WriteLabel(output, ++number, marker);
        }
    }

    private static void WriteCue(WavOutput output, long number, long frame)
    {
        output.Number(number);
        output.Number(frame);
        output.Text("data"u8);

        // The data is one chunk without blocks; the place in it is counted in frames.
        output.Number(0);
        output.Number(0);
        output.Number(frame);
    }

    private static void WriteLabel(WavOutput output, long number, LineMarker marker)
    {
        Span<byte> text = stackalloc byte[LineMarker.Longest];
        var length = marker.Write(text);
        output.Chunk("labl"u8, WavSizes.LabelBytes(length));
        output.Number(number);
        output.Text(text[..length]);
        output.Take(1 + (WavSizes.LabelBytes(length) & 1)).Clear();
    }
}
