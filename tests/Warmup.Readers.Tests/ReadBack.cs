using Warmup.Reading;

namespace Warmup.Readers.Tests;

/// <summary>What a file still has of the score that another program was given.</summary>
[Flags]
internal enum Kept
{
    Nothing = 0,
    Pitches = 1,
    Onsets = 256,
    Lengths = 2,
    Lines = 4,
    Syllables = 8,
    Breaths = 16,
    Tempo = 32,
    Meter = 64,
    Scale = 128,

    /// <summary>What makes it the same music to sing.</summary>
    Music = Pitches | Onsets | Lengths | Lines,
    All = Music | Syllables | Breaths | Tempo | Meter | Scale,
}

/// <summary>Reads files that other programs saved and holds them against the score that they were given.</summary>
internal static class ReadBack
{
    // MIDI files of other programs count a quarter note in 384 parts or more; what no such part holds they round, once at each end of a note.
    private const double Count = 2.01 / 384;

    /// <summary>Lines that nothing but a silence tells in a file: those of drills that are sung line by line.</summary>
    public static Kept LinesBySilence(NamedScore piece) => piece.Score.Sections[0].Delivery.IsLineByLine ? Kept.Lines : Kept.Nothing;

    /// <summary>Asserts that a file has what is said, and more if it likes.</summary>
    public static void Has(NamedScore piece, string path, Kept wanted)
    {
        Assert.True(File.Exists(path), $"{piece.Name}: there is no {Path.GetFileName(path)}");
        var kept = Of(piece.Score, path);
        Assert.True((kept & wanted) == wanted, $"{Path.GetFileName(path)} lost {wanted & ~kept}: {Difference(piece.Score, path)}");
    }

    private static string Difference(Score score, string path)
    {
        var section = score.Sections[0];
        var music = MusicReader.Read(File.ReadAllBytes(path), new ReadingOptions { Scale = section.Scale, Tonic = section.Tonic });
        var again = music.ToScore().Sections[0];
        var pairs = Times(section).Zip(Times(again)).Select((p, i) => (p.First, p.Second, i)).Where(p => p.First != p.Second).Take(3);
        return $"{string.Join(", ", pairs.Select(p => $"note {p.i + 1} {p.First} is {p.Second}"))}; {string.Join("; ", music.Remarks.Take(3))}";
    }

    /// <summary>What each of some pieces has of its score in a file of a program, by the file's ending: what all have, and what some lack.</summary>
    public static string Table(IEnumerable<NamedScore> pieces, string folder, params string[] endings) => string.Join('\n', endings.Select(ending =>
    {
        var kept = pieces.Select(p => Of(p.Score, Path.Combine(folder, p.Name + ending))).ToList();
        return $"{ending}: all {kept.Count} keep {kept.Aggregate((a, b) => a & b)}; {string.Join(", ", Enum.GetValues<Kept>().Where(k => int.IsPow2((int)k)).Select(k => $"{k} {kept.Count(p => p.HasFlag(k))}"))}";
    }));

    /// <summary>What a file has of a score of one section, exactly.</summary>
    public static Kept Of(Score score, string path)
    {
        var section = Assert.Single(score.Sections);
        var bytes = File.ReadAllBytes(path);
        var proposed = MusicReader.Read(bytes);
        var music = MusicReader.Read(bytes, new ReadingOptions { Scale = section.Scale, Tonic = section.Tonic });
        if (music.Sections.Count != 1)
        {
            return Kept.Nothing;
        }

        // In quarter notes, which files have: what is counted as an akshara a time signature says, and not every program keeps it.
        var (read, again) = (music.Sections[0], music.ToScore().Sections[0]);
        var (written, saved) = (4 * section.Meter.BeatValue, 4 * read.Meter.BeatValue);
        var count = music.Format == "MIDI" ? Count : 0;
        bool Same(IEnumerable<Rational> one, IEnumerable<Rational> other) => one.Count() == other.Count() && one.Zip(other).All(p => Math.Abs((p.First - p.Second).ToDouble()) <= count);
        Kept If(bool isSame, Kept kept) => isSame ? kept : Kept.Nothing;
        return If(Keys(section).SequenceEqual(Keys(again)), Kept.Pitches)
            | If(Same(Times(section).Select(t => t.Onset), Times(again).Select(t => t.Onset)), Kept.Onsets)
            | If(Same(Times(section).Select(t => t.Length), Times(again).Select(t => t.Length)), Kept.Lengths)
            | If(section.Lines.Select(l => l.NoteCount).SequenceEqual(again.Lines.Select(l => l.NoteCount)), Kept.Lines)
            | If(section.Sung() == again.Sung() && (read.Syllables is not null || read.Lines.Any(l => l.Notes.Any(n => n.Sung is not null))), Kept.Syllables)
            | If(section.Breaths.Select(b => b.Onset * written).SequenceEqual(again.Breaths.Select(b => b.Onset * saved)), Kept.Breaths)
            | If(section.Tempo * written == read.Tempo * saved && section.TempoChanges.IsEmpty == read.TempoChanges.IsEmpty, Kept.Tempo)
            | If(section.Meter == read.Meter, Kept.Meter)
            | If((section.Scale, section.Tonic.Midi) == (proposed.Sections[0].Scale, proposed.Sections[0].Tonic.Midi), Kept.Scale);
    }

    /// <summary>Onsets and lengths in quarter notes, which files have.</summary>
    private static IEnumerable<(Rational Onset, Rational Length)> Times(Section section) =>
        section.Notes.Select(n => (n.Onset * 4 * section.Meter.BeatValue, n.Length * 4 * section.Meter.BeatValue));

    private static IEnumerable<int> Keys(Section section) => section.Notes.Select(n => section.Tonic.Midi + section.PitchOf(n).Tone.Semitones);
}
