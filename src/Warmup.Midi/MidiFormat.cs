using System.Buffers;
using System.Buffers.Binary;

namespace Warmup.Midi;

/// <summary>
/// Writes scores as Standard MIDI Files 1.0: a conductor track (title, tempo, meter, key, a marker at each line), the voice with its
/// tuning and lyrics, the drone, and the beat.
/// </summary>
/// <remarks>
/// <para>An akshara is a quarter note, or the beat that a time signature names; onsets and lengths of the voice are exact. The tempo is a
/// whole number of microseconds a quarter, at most half a microsecond off. The drone keeps its own time in seconds, each stroke on the
/// nearest tick. The key signature is always C major, the standard's default, since most scales are neither major nor minor.</para>
/// <para>The voice is on channel 1, the drone on the channels from 2 on, the clicks of the beat on 10, which the drone skips. Lyrics follow
/// RP-017: an event for each syllable, a space after a word (every syllable is one), a carriage return after a line. Immutable, safe to share
/// between threads; equal scores and options give equal bytes.</para>
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
    /// MIDI cannot hold the score: a note lies outside 0 to 127, a tempo below about 3.58 quarter notes a minute, a silence is too long, the grid
    /// too fine, or a lyric has no ASCII form.
    /// </exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    /// <remarks>The memory it allocates does not depend on the number of notes.</remarks>
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

    /// <summary>Tries everything, and so checks it, before the first byte is handed on.</summary>
    private void WriteChecked(MidiPlan plan, IBufferWriter<byte> destination, CancellationToken cancellationToken)
    {
        var parts = Parts(plan);
        Span<uint> lengths = stackalloc uint[Options.IsSingleTrack ? 1 : parts.Length];
        var block = destination.GetSpan(TrackWriter.TrialBlock);
        var trial = new TrackWriter(block, Options, cancellationToken);
        WriteFile(plan, parts, lengths, ref trial);
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
        WriteFile(plan, parts, lengths, ref writer);
        writer.Flush();
    }

    /// <summary>Writes the file with the given lengths of its chunks, and replaces them by the true ones.</summary>
    private void WriteFile(MidiPlan plan, TrackEvents[] parts, scoped Span<uint> lengths, ref TrackWriter writer)
    {
        Span<byte> header = stackalloc byte[HeaderSize];
        "MThd"u8.CopyTo(header);
        BinaryPrimitives.WriteUInt32BigEndian(header[4..], HeaderSize - 8);
        BinaryPrimitives.WriteUInt16BigEndian(header[8..], (ushort)(Options.IsSingleTrack ? 0 : 1));
        BinaryPrimitives.WriteUInt16BigEndian(header[10..], (ushort)lengths.Length);
        BinaryPrimitives.WriteUInt16BigEndian(header[12..], (ushort)plan.TicksPerQuarter);
        writer.Put(header);
        for (var t = 0; t < lengths.Length; t++)
        {
            writer.BeginTrack(lengths[t]);
            WriteEvents(Options.IsSingleTrack ? parts : parts.AsSpan(t, 1), ref writer);
            lengths[t] = writer.EndTrack(plan.End);
        }
    }

    /// <summary>The kinds of events, each a track unless all are in a single one.</summary>
    private TrackEvents[] Parts(MidiPlan plan) =>
    [
        new ConductorEvents(plan),
        .. Options.HasVoice ? (ReadOnlySpan<TrackEvents>)[new VoiceEvents(plan)] : [],
        .. plan.Drone is { } drone ? (ReadOnlySpan<TrackEvents>)[new DroneEvents(plan, drone)] : [],
        .. BeatEvents.IsNeeded(plan) ? (ReadOnlySpan<TrackEvents>)[new BeatEvents(plan)] : [],
    ];

    /// <summary>Writes the events of a track in the order of their time; at one time and phase those of the first part come first.</summary>
    private static void WriteEvents(ReadOnlySpan<TrackEvents> parts, ref TrackWriter writer)
    {
        foreach (var part in parts)
        {
            part.Start();
        }

        while (First(parts) is { Next: not TrackEvents.Over } next)
        {
            next.Emit(ref writer, parts.Length == 1 ? TrackEvents.Over : next.Next + 1);
        }
    }

    private static TrackEvents First(ReadOnlySpan<TrackEvents> parts)
    {
        var first = parts[0];
        foreach (var part in parts)
        {
            first = part.Next < first.Next ? part : first;
        }

        return first;
    }
}
