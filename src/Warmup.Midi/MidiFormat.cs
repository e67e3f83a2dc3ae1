using System.Buffers;
using System.Buffers.Binary;

namespace Warmup.Midi;

/// <summary>
/// Writes scores as Standard MIDI Files 1.0: a conductor track (title, tempo, meter, key, a marker at each line), the voice with its
/// tuning and lyrics, the drone, and the beat.
/// </summary>
/// <remarks>
/// <para>An akshara is a quarter note, or the beat that a time signature names; onsets and lengths of the voice are exact. The tempo is rounded to a whole number of
/// microseconds a quarter, at most half a microsecond off. The drone keeps its own time in seconds, put on the nearest tick. The key
/// signature is always C major, the standard's default, since most scales are neither major nor minor.</para>
/// <para>The voice is on channel 1, the drone on those behind it, never on 10, which has the clicks of the beat. Lyrics follow RP-017: an event a syllable, a space
/// behind a word (every syllable is one), a carriage return behind a line. Immutable, safe to share between threads; equal scores and
/// options give equal bytes.</para>
/// </remarks>
public sealed class MidiFormat : IScoreFormat
{
    private const int EventsBetweenChecks = 1024;

    /// <summary>The format with the default options.</summary>
    public MidiFormat()
        : this(MidiOptions.Default)
    {
    }

    /// <summary>The format with options.</summary>
    /// <param name="options">The options.</param>
    public MidiFormat(MidiOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        Options = options;
    }

    /// <summary>The options.</summary>
    public MidiOptions Options { get; }

    /// <inheritdoc/>
    public string Name => "Standard MIDI File";

    /// <inheritdoc/>
    public ValueList<string> Extensions => [".mid", ".midi", ".smf"];

    /// <inheritdoc/>
    public void Write(Score score, Stream destination, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(destination);
        using var buffer = new StreamBuffer(destination);
        Write(score, buffer, cancellationToken);
        buffer.Flush();
    }

    /// <summary>Writes a score to a buffer. Equal scores give equal bytes.</summary>
    /// <param name="score">The score.</param>
    /// <param name="destination">Where the bytes go; nothing is written when the format cannot hold the score.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ExportException">
    /// MIDI cannot hold the score: a note outside 0 to 127, a tempo below about 3.58 quarter notes a minute, a silence or a grid that is
    /// too long or too fine, a lyric without an ASCII form.
    /// </exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    /// <remarks>What is allocated does not depend on the number of notes.</remarks>
    public void Write(Score score, IBufferWriter<byte> destination, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(score);
        ArgumentNullException.ThrowIfNull(destination);
        cancellationToken.ThrowIfCancellationRequested();
        try
        {
            WriteChecked(MidiPlan.For(score, Options), destination, cancellationToken);
        }
        catch (OverflowException overflow)
        {
            throw new ExportException("the times of the score need fractions that do not fit 64 bits; use simpler tempi", overflow);
        }
    }

    private void WriteChecked(MidiPlan plan, IBufferWriter<byte> destination, CancellationToken cancellationToken)
    {
        var tracks = Tracks(plan);

        // Everything is measured, and so checked, before the first byte is written.
        Span<uint> lengths = stackalloc uint[tracks.Length];
        for (var t = 0; t < tracks.Length; t++)
        {
            var measure = new TrackWriter(null, Options);
            WriteTrack(plan, tracks[t], ref measure, cancellationToken);
            lengths[t] = checked((uint)measure.Length);
        }

        var head = new TrackWriter(destination, Options);
        Span<byte> header = stackalloc byte[14];
        "MThd"u8.CopyTo(header);
        BinaryPrimitives.WriteUInt32BigEndian(header[4..], 6);
        BinaryPrimitives.WriteUInt16BigEndian(header[8..], (ushort)(Options.SingleTrack ? 0 : 1));
        BinaryPrimitives.WriteUInt16BigEndian(header[10..], (ushort)tracks.Length);
        BinaryPrimitives.WriteUInt16BigEndian(header[12..], (ushort)plan.TicksPerQuarter);
        head.Put(header);
        head.Flush();
        Span<byte> chunk = stackalloc byte[8];
        "MTrk"u8.CopyTo(chunk);
        for (var t = 0; t < tracks.Length; t++)
        {
            BinaryPrimitives.WriteUInt32BigEndian(chunk[4..], lengths[t]);
            var writer = new TrackWriter(destination, Options);
            writer.Put(chunk);
            WriteTrack(plan, tracks[t], ref writer, cancellationToken);
        }
    }

    private Part[][] Tracks(MidiPlan plan)
    {
        Part[] parts =
        [
            new ConductorPart(plan),
            .. Options.HasVoice ? (ReadOnlySpan<Part>)[new VoicePart(plan)] : [],
            .. plan.Drone is { } drone ? (ReadOnlySpan<Part>)[new DronePart(plan, drone)] : [],
            .. BeatPart.IsNeeded(plan) ? (ReadOnlySpan<Part>)[new BeatPart(plan)] : [],
        ];
        return Options.SingleTrack ? [parts] : Array.ConvertAll(parts, p => new[] { p });
    }

    /// <summary>The events of the parts in the order of their time; at one time and phase the first part comes first.</summary>
    private static void WriteTrack(MidiPlan plan, Part[] parts, ref TrackWriter writer, CancellationToken cancellationToken)
    {
        foreach (var part in parts)
        {
            part.Start();
        }

        for (var events = 0L; ; events++)
        {
            if (events % EventsBetweenChecks == 0)
            {
                cancellationToken.ThrowIfCancellationRequested();
            }

            var next = parts[0];
            foreach (var part in parts)
            {
                if (part.Next < next.Next)
                {
                    next = part;
                }
            }

            if (next.Next == Part.Over)
            {
                break;
            }

            next.Emit(ref writer);
        }

        writer.End(plan.End);
    }
}
