namespace Warmup.Midi;

/// <summary>A pitch of a section: its key, and the syllable that was sung on it last.</summary>
internal struct SungPitch(KeyTuning tuning)
{
    // A text of five bytes is an event of eight; at the end of a line a space and a carriage return follow the syllable.
    private const int Longest = 3;

    /// <summary>The key.</summary>
    public int Key { get; } = tuning.Key;

    /// <summary>The bend with which it sounds.</summary>
    public int Bend { get; } = tuning.Bend;

    /// <summary>The pitch to which it is retuned, as in <see cref="KeyTuning"/>.</summary>
    public int Retuned { get; } = tuning.Retuned;

    /// <summary>The key and its tuning.</summary>
    public readonly KeyTuning Tuning => new(Key, Bend, Retuned);

    /// <summary>The syllable; <see langword="null"/> before the first.</summary>
    public string? Syllable { readonly get; private set; }

    /// <summary>The bytes of its event inside a line; 0 where it is not short and plain.</summary>
    public int LyricBytes { readonly get; private set; }

    /// <summary>Its event inside a line.</summary>
    public ulong Lyric { readonly get; private set; }

    /// <summary>Its event at the end of a line, one byte longer.</summary>
    public ulong LastLyric { readonly get; private set; }

    /// <summary>Takes another syllable.</summary>
    public void Sing(string syllable)
    {
        var word = ShortText.Of(syllable);
        (Syllable, LyricBytes) = (syllable, 0);
        if (word.Length is > 0 and <= Longest)
        {
            var lyric = word.With(' ');
            (Lyric, LastLyric) = (lyric.ToMeta(TrackWriter.Lyric), lyric.With('\r').ToMeta(TrackWriter.Lyric));
            LyricBytes = 3 + lyric.Length;
        }
    }
}
