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
    private const int HeaderSize = 14;

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

    /// <summary>Everything is tried, and so checked, before the first byte is handed on.</summary>
    private void WriteChecked(MidiPlan plan, IBufferWriter<byte> destination, CancellationToken cancellationToken)
    {
        var tracks = Tracks(plan);
        Span<uint> lengths = stackalloc uint[tracks.Length];
        var block = destination.GetSpan(TrackWriter.TrialBlock);
        var trial = new TrackWriter(block, Options, cancellationToken);
        WriteFile(plan, tracks, lengths, ref trial);
        if (trial.IsWhole)
        {
            var chunk = HeaderSize;
            foreach (var length in lengths)
            {
                BinaryPrimitives.WriteUInt32BigEndian(block[(chunk + 4)..], length);
                chunk += 8 + (int)length;
            }

            destination.Advance((int)trial.Length);
            return;
        }

        var writer = new TrackWriter(destination, Options, cancellationToken);
        WriteFile(plan, tracks, lengths, ref writer);
        writer.Flush();
    }

    /// <summary>Writes the file with the lengths that its chunks are said to have, and tells those they have.</summary>
    private void WriteFile(MidiPlan plan, Part[][] tracks, scoped Span<uint> lengths, ref TrackWriter writer)
    {
        Span<byte> header = stackalloc byte[HeaderSize];
        "MThd"u8.CopyTo(header);
        BinaryPrimitives.WriteUInt32BigEndian(header[4..], HeaderSize - 8);
        BinaryPrimitives.WriteUInt16BigEndian(header[8..], (ushort)(Options.SingleTrack ? 0 : 1));
        BinaryPrimitives.WriteUInt16BigEndian(header[10..], (ushort)tracks.Length);
        BinaryPrimitives.WriteUInt16BigEndian(header[12..], (ushort)plan.TicksPerQuarter);
        writer.Put(header);
        for (var t = 0; t < tracks.Length; t++)
        {
            writer.BeginTrack(lengths[t]);
            WriteEvents(tracks[t], ref writer);
            lengths[t] = writer.EndTrack(plan.End);
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
    private static void WriteEvents(Part[] parts, ref TrackWriter writer)
    {
        foreach (var part in parts)
        {
            part.Start();
        }

        while (First(parts) is { Next: not Part.Over } next)
        {
            next.Emit(ref writer, parts.Length == 1 ? Part.Over : next.Next + 1);
        }
    }

    private static Part First(Part[] parts)
    {
        var first = parts[0];
        foreach (var part in parts)
        {
            first = part.Next < first.Next ? part : first;
        }

        return first;
    }
}
