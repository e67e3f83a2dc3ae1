namespace Warmup.Audio;

/// <summary>The sizes of a file's chunks, known before the first byte is written.</summary>
internal sealed class WavSizes
{
    /// <summary>The largest file: the size in its header has 32 bits and does not count the first eight bytes.</summary>
    public const long Largest = uint.MaxValue + (long)ChunkHeader;

    public const int ChunkHeader = 8;
    public const int FormatBytes = 16;
    public const int CuePointBytes = 24;
    public const int BytesPerSample = 2;

    public WavSizes(WavPlan plan)
    {
        Channels = plan.Options.Channels == WavChannels.Mono ? 1 : 2;
        Data = plan.Frames * Channels * BytesPerSample;
        Span<byte> text = stackalloc byte[LineMarker.Longest];
        foreach (var marker in plan.Markers())
        {
            Markers++;
            Labels += ChunkHeader + Padded(LabelBytes(marker.Write(text)));
        }

        Total = 4 + ChunkHeader + ChunkHeader + FormatBytes + ChunkHeader + Data;
        if (Markers > 0)
        {
            Total += ChunkHeader + Cues + ChunkHeader + Labels;
        }
    }

    /// <summary>The samples of a frame.</summary>
    public int Channels { get; }

    /// <summary>The bytes of the samples: an even number.</summary>
    public long Data { get; }

    /// <summary>The number of markers.</summary>
    public long Markers { get; }

    /// <summary>The bytes in the cue chunk.</summary>
    public long Cues => 4 + (Markers * CuePointBytes);

    /// <summary>The bytes in the list of labels.</summary>
    public long Labels { get; } = 4;

    /// <summary>The bytes of the whole file.</summary>
    public long Total { get; }

    /// <summary>The bytes in the chunk of a label: its number, its text and a zero.</summary>
    public static int LabelBytes(int text) => 4 + text + 1;

    /// <summary>Chunks begin on even bytes.</summary>
    public static int Padded(int bytes) => bytes + (bytes & 1);
}
