namespace Warmup.Reading;

/// <summary>The notes of one channel of a track.</summary>
internal sealed class MidiPart
{
    private readonly List<Struck> _notes = [];

    // The notes of each key that have not ended, by their index.
    private readonly Queue<int>?[] _open = new Queue<int>?[128];

    public string Name { get; set; } = string.Empty;

    public bool HasNotes => _notes.Count > 0;

    public void On(int key, long tick, string? lyric)
    {
        (_open[key] ??= new Queue<int>()).Enqueue(_notes.Count);
        _notes.Add(new Struck(tick, tick, key, lyric));
    }

    public bool Off(int key, long tick)
    {
        if (_open[key] is not { Count: > 0 } open)
        {
            return false;
        }

        var note = open.Dequeue();
        _notes[note] = _notes[note] with { End = tick };
        return true;
    }

    /// <summary>Ends what still sounds; gives how much that was.</summary>
    public int Close(long tick)
    {
        var count = 0;
        foreach (var open in _open)
        {
            foreach (var note in open is null ? [] : open)
            {
                _notes[note] = _notes[note] with { End = tick };
                count++;
            }

            open?.Clear();
        }

        return count;
    }

    /// <summary>The part as one voice: of notes that begin at once the highest, each until the next begins.</summary>
    public RawPart Finish(int division)
    {
        var part = new RawPart { Name = Name };
        _notes.Sort(static (a, b) => (a.Onset, -a.Key).CompareTo((b.Onset, -b.Key)));
        var chords = new List<Rational>();
        var overlaps = new List<Rational>();
        for (var i = 0; i < _notes.Count; i++)
        {
            var struck = _notes[i];
            var onset = new Rational(struck.Onset, division);
            if (struck.End == struck.Onset)
            {
                continue;
            }

            if (part.Notes.Count > 0 && part.Notes[^1].Onset == onset)
            {
                chords.Add(onset);
                continue;
            }

            if (part.Notes.Count > 0 && part.Notes[^1].End > onset)
            {
                overlaps.Add(onset);
                part.Notes[^1] = part.Notes[^1] with { Length = onset - part.Notes[^1].Onset };
            }

            var lyric = struck.Lyric;
            part.Notes.Add(new RawNote
            {
                Onset = onset,
                Length = new Rational(struck.End - struck.Onset, division),
                Midi = struck.Key,
                Syllable = lyric is null ? null : PlainText.Of(lyric.Replace('\r', ' ')),
            });
            if (lyric is not null && lyric.Contains('\r', StringComparison.Ordinal) && i + 1 < _notes.Count)
            {
                part.Marks.Add(new RawMark(new Rational(struck.End, division), MarkKind.LyricLine));
            }
        }

        part.End = part.Notes.Count == 0 ? default : part.Notes[^1].End;
        Chords = chords;
        Overlaps = overlaps;
        return part;
    }

    /// <summary>Where several notes began at once.</summary>
    public List<Rational> Chords { get; private set; } = [];

    /// <summary>Where a note began before the one before had ended.</summary>
    public List<Rational> Overlaps { get; private set; } = [];

    private readonly record struct Struck(long Onset, long End, int Key, string? Lyric);
}
