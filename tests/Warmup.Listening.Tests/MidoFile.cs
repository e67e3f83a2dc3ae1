using System.Text.Json;

namespace Warmup.Listening.Tests;

/// <summary>What mido, a Python library that refuses broken files, finds in a file.</summary>
public sealed record MidoFile(
    int Type,
    int Ticks,
    double Seconds,
    long[] Ends,
    MidoNote[] Notes,
    MidoText[] Lyrics,
    MidoText[] Markers,
    MidoTempo[] Tempos,
    MidoSignature[] Signatures,
    string[] Names)
{
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web);

    /// <summary>The sung notes: those on the first channel.</summary>
    public MidoNote[] Voice => [.. Notes.Where(n => n.Channel == 0)];

    /// <summary>The notes of the drone: all channels but the first and that of percussion.</summary>
    public MidoNote[] Drone => [.. Notes.Where(n => n.Channel is not (0 or 9))];

    /// <summary>Reads files; a file that mido refuses fails the test.</summary>
    public static MidoFile[] Read(params string[] paths) =>
        [.. Tool.Mido().Run([Path.Combine(AppContext.BaseDirectory, "read_midi.py"), .. paths])
            .Split('\n', StringSplitOptions.RemoveEmptyEntries)
            .Select(line => JsonSerializer.Deserialize<MidoFile>(line, Options)!)];
}

/// <summary>A note; the program is counted from 0, cents are above MIDI note 0 from note, bend and bend range.</summary>
public sealed record MidoNote(long Tick, long Length, int Channel, int Velocity, int Program, double Cents);

/// <summary>A lyric or a marker.</summary>
public sealed record MidoText(long Tick, string Text);

/// <summary>A tempo in microseconds a quarter.</summary>
public sealed record MidoTempo(long Tick, int Microseconds);

/// <summary>A time signature.</summary>
public sealed record MidoSignature(long Tick, int Numerator, int Denominator);
