using System.Collections.Immutable;
using System.Globalization;

namespace Warmup.Reading;

/// <summary>Ranks the tonics and scales that a section may have.</summary>
internal static class TonicRanking
{
    // The project's own weights.
    private const int Drone = 8;
    private const int KeySignature = 4;
    private const int Final = 4;
    private const int LineStarts = 4;
    private const int LineEnds = 2;
    private const int First = 2;
    private const int MostOften = 2;
    private const int Lowest = 1;
    private const int Fifth = 1;
    private const int Fit = 4;
    private const int Outside = -3;
    private const int Unused = -1;
    private const int Most = 5;

    // Scales that have the same notes and differ in how they go are proposed beside the best, so many for a tonic.
    private const int MostScales = 3;

    /// <summary>The likeliest tonics with the scales that fit each, the best first.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="section">The section.</param>
    /// <param name="starts">The indexes of the notes with which its lines begin.</param>
    /// <param name="scale">The scale, where it is known.</param>
    /// <param name="tonic">The tonic, where it is known.</param>
    public static ValueList<TonicProposal> Rank(RawPiece piece, RawSection section, List<int> starts, Scale? scale, Tonic? tonic)
    {
        var melody = PitchMoves.Of(section.Notes);
        var key = piece.Keys.LastOrDefault(k => k.Onset <= section.Start, piece.Keys.FirstOrDefault());
        var drone = DroneOf(piece);
        var (begins, ends) = (Commonest(starts.Select(s => section.Notes[s])), Commonest(starts.Skip(1).Append(section.Notes.Length).Select(s => section.Notes[s - 1])));
        var counts = Counts(section.Notes);
        var lowest = section.Notes.Min(n => n.Midi) % 12;
        var candidates = scale is null ? Catalogued : [new ScaleShape(scale)];
        var found = new List<TonicProposal>();
        for (var pc = 0; pc < 12; pc++)
        {
            if (tonic is not null && tonic.Midi % 12 != pc)
            {
                continue;
            }

            var reasons = new List<(int Points, string Words)>();
            if (drone is { } d && d == pc)
            {
                reasons.Add((Drone, "the drone sounds it most often"));
            }

            if (piece.Keys.Count > 0 && !piece.IsOurs)
            {
                Key(key, pc, reasons);
            }

            var notes = section.Notes;
            Add(notes[^1].Midi % 12 == pc, Final, "the last note is this tonic", reasons);
            Add(begins == pc, LineStarts, "most lines begin on it", reasons);
            Add(ends == pc, LineEnds, "most lines end on it", reasons);
            Add(notes[0].Midi % 12 == pc, First, "the first note is this tonic", reasons);
            Add(counts[pc] == counts.Max(), MostOften, "no note is sung more often", reasons);
            Add(lowest == pc, Lowest, "the lowest note is this tonic", reasons);
            Add((melody.Notes & (1 << ((pc + 7) % 12))) != 0, Fifth, "its fifth is sung", reasons);
            var rank = 0;
            foreach (var (candidate, fit) in Best(candidates, melody, pc))
            {
                var (points, words) = Words(candidate, fit);
                (int Points, string Words)[] all = [.. reasons, (points, words), .. rank == 0 ? [] : ((int, string)[])[(-rank, "another scale of these notes goes more as they do")]];
                found.Add(new TonicProposal(
                    tonic ?? At(pc, section), candidate, all.Sum(r => r.Points), all.OrderByDescending(r => r.Points).Select(r => r.Words).ToValueList()));
                rank++;
            }
        }

        return found.OrderByDescending(p => p.Points).ThenBy(p => p.Tonic.Midi).Take(Most).ToValueList();
    }

    /// <summary>The pitch class of more than half of two notes or more; -1 where there is none.</summary>
    private static int Commonest(IEnumerable<RawNote> notes)
    {
        var counts = Counts(notes);
        var (most, all) = (Array.IndexOf(counts, counts.Max()), counts.Sum());
        return all > 1 && 2 * counts[most] > all ? most : -1;
    }

    private static int[] Counts(IEnumerable<RawNote> notes)
    {
        var counts = new int[12];
        foreach (var note in notes)
        {
            counts[note.Midi % 12]++;
        }

        return counts;
    }

    /// <summary>The tonic of a pitch class, in the octave that holds most of the notes; the written name of a note on it.</summary>
    private static Tonic At(int pc, RawSection section)
    {
        var (best, most) = (60 + pc, -1);
        for (var midi = Tonic.LowestMidi; midi <= Tonic.HighestMidi; midi++)
        {
            if (midi % 12 != pc)
            {
                continue;
            }

            var inside = section.Notes.Count(n => n.Midi >= midi && n.Midi <= midi + 12);
            if (inside > most)
            {
                (best, most) = (midi, inside);
            }
        }

        foreach (var note in section.Notes)
        {
            if (note.Midi % 12 == pc && note.Name is { } name)
            {
                var octave = name.Octave + ((best - note.Midi) / 12);
                return Tonic.FromNote(new NoteName(name.Letter, name.Alteration, octave));
            }
        }

        return Tonic.FromMidi(best);
    }

    private static void Key((Rational Onset, int Fifths, bool? IsMinor) key, int pc, List<(int, string)> reasons)
    {
        var major = ((key.Fifths * 7 % 12) + 12) % 12;
        var minor = (major + 9) % 12;
        Add(key.IsMinor != true && pc == major, KeySignature, "the key signature is its major key's", reasons);
        Add(key.IsMinor == true && pc == minor, KeySignature, "the key signature is its minor key's", reasons);
        Add(key.IsMinor is null && pc == minor, 1, "the key signature could be its minor key's", reasons);
    }

    private static void Add(bool applies, int points, string words, List<(int, string)> reasons)
    {
        if (applies)
        {
            reasons.Add((points, words));
        }
    }

    /// <summary>The pitch class that the drone strikes most often, of equally frequent ones the longest: of a tanpura's four strings three are S.</summary>
    private static int? DroneOf(RawPiece piece)
    {
        var struck = piece.Parts.Where(p => p.IsDrone).SelectMany(p => p.Notes.Take(1_000)).GroupBy(n => n.Midi % 12).ToList();
        return struck.Count == 0 ? null : struck.OrderByDescending(g => g.Count()).ThenByDescending(g => g.Aggregate(Rational.Zero, (sum, n) => sum + new Rational((n.Length * 4).Ceiling()))).First().Key;
    }

    private static readonly ImmutableArray<ScaleShape> Catalogued = [.. Catalogue.Default.Entries.Select(e => new ScaleShape(e.Scale))];

    /// <summary>The scale that fits best, and those that have as many of the notes and go less as the melody does.</summary>
    private static List<(Scale Scale, ScaleFit Fit)> Best(ImmutableArray<ScaleShape> candidates, PitchMoves melody, int pc)
    {
        var fits = candidates.Select(c => (c.Scale, Fit: c.Of(melody, pc))).ToList();
        var best = fits.Min(f => f.Fit);

        // A scale that differs from one before in its name only says nothing new.
        return [.. fits.Where(f => (f.Fit.Outside, f.Fit.Unused) == (best.Outside, best.Unused)).OrderBy(f => f.Fit).DistinctBy(f => (f.Scale.Ascent, f.Scale.Descent)).Take(MostScales)];
    }

    private static (int Points, string Words) Words(Scale scale, ScaleFit fit)
    {
        var points = fit.Outside > 0 ? Math.Max(-12, fit.Outside * Outside) : Math.Max(0, Fit + (fit.Unused * Unused));
        var words = (fit.Outside, fit.Unused) switch
        {
            (0, 0) => $"its notes are those of {scale.Name}",
            (0, var unused) => string.Create(CultureInfo.InvariantCulture, $"its notes lie in {scale.Name}, of which {unused} {(unused == 1 ? "is" : "are")} not sung"),
            (var outside, _) => string.Create(CultureInfo.InvariantCulture, $"{outside} of its notes {(outside == 1 ? "lies" : "lie")} outside {scale.Name}"),
        };
        return (points, words);
    }
}
