namespace Warmup.Midi;

/// <summary>A syllable of a section, and its event where that is short and plain, as most are.</summary>
internal readonly struct SungSyllable
{
    // A text of five bytes is an event of eight; at the end of a line a space and a carriage return follow the syllable.
    private const int Longest = 3;

    /// <summary>Takes a text that is known to be sung.</summary>
    public SungSyllable(string text)
    {
        Text = text;
        var word = ShortText.Of(text);
        if (word.Length is > 0 and <= Longest)
        {
            var lyric = word.With(' ');
            (Event, LastEvent) = (lyric.ToMeta(TrackWriter.Lyric), lyric.With('\r').ToMeta(TrackWriter.Lyric));
            Bytes = 3 + lyric.Length;
        }
    }

    /// <summary>The syllable.</summary>
    public string Text { get; }

    /// <summary>The bytes of its event inside a line; 0 where it is not short and plain.</summary>
    public int Bytes { get; }

    /// <summary>Its event inside a line, as one number that begins with its lowest byte.</summary>
    public ulong Event { get; }

    /// <summary>Its event at the end of a line, one byte longer.</summary>
    public ulong LastEvent { get; }
}
