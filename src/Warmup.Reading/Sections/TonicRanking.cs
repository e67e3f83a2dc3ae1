using System.Globalization;

namespace Warmup.Reading;

/// <summary>Ranks the tonics and scales that a section may have.</summary>
internal static class TonicRanking
{
    // The project's own weights.
    private const int Drone = 8;
    private const int KeySignature = 4;
    private const int Final = 4;
    private const int First = 2;
    private const int Fifth = 1;
    private const int Fit = 4;
    private const int Outside = -3;
    private const int Unused = -1;
    private const int Most = 5;

    /// <summary>The likeliest tonics with the scale that fits each, the best first.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="section">The section.</param>
    /// <param name="scale">The scale, where it is known.</param>
    /// <param name="tonic">The tonic, where it is known.</param>
    public static ValueList<TonicProposal> Rank(RawPiece piece, RawSection section, Scale? scale, Tonic? tonic)
    {
        var heard = Heard.Of(section.Notes);
        var key = piece.Keys.LastOrDefault(k => k.Onset <= section.Start, piece.Keys.FirstOrDefault());
        var drone = DroneOf(piece);
        var candidates = scale is null ? Catalogued() : [(scale, MaskOf(scale))];
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
                reasons.Add((Drone, "the drone sounds it most"));
            }

            if (piece.Keys.Count > 0 && !piece.IsOurs)
            {
                Key(key, pc, reasons);
            }

            var notes = section.Notes;
            Add(notes[^1].Midi % 12 == pc, Final, "the last note is this tonic", reasons);
            Add(notes[0].Midi % 12 == pc, First, "the first note is this tonic", reasons);
            Add((heard.All & (1 << ((pc + 7) % 12))) != 0, Fifth, "its fifth is sung", reasons);
            var best = Best(candidates, heard, pc);
            reasons.Add((best.Points, best.Words));
            found.Add(new TonicProposal(
                tonic ?? At(pc, section),
                best.Scale,
                reasons.Sum(r => r.Points),
                reasons.OrderByDescending(r => r.Points).Select(r => r.Words).ToValueList()));
        }

        return found.OrderByDescending(p => p.Points).ThenBy(p => p.Tonic.Midi).Take(Most).ToValueList();
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

    private static int? DroneOf(RawPiece piece)
    {
        var counts = new Rational[12];
        foreach (var note in piece.Parts.Where(p => p.IsDrone).SelectMany(p => p.Notes.Take(1_000)))
        {
            counts[note.Midi % 12] += new Rational((note.Length * 4).Ceiling());
        }

        var most = Array.IndexOf(counts, counts.Max());
        return counts[most].Sign > 0 ? most : null;
    }

    private static List<(Scale Scale, int Mask)> Catalogued() => [.. Catalogue.Default.Entries.Select(e => (e.Scale, MaskOf(e.Scale)))];

    private static int MaskOf(Scale scale) => scale.Degrees.Aggregate(0, (mask, d) => mask | (1 << ((d.Semitones + 12) % 12)));

    /// <summary>The scale that fits best: few notes outside it, few unused, rising and falling as its lists do.</summary>
    private static (Scale Scale, int Points, string Words) Best(List<(Scale Scale, int Mask)> candidates, Heard heard, int pc)
    {
        var all = Rotate(heard.All, pc);
        (Scale Scale, int Outside, int Unused, int Turns) best = (candidates[0].Scale, int.MaxValue, 0, 0);
        foreach (var (scale, mask) in candidates)
        {
            var outside = int.PopCount(all & ~mask);
            var unused = int.PopCount(mask & ~all);
            if ((outside, unused).CompareTo((best.Outside, best.Unused)) > 0)
            {
                continue;
            }

            var turns = int.PopCount(Rotate(heard.Rising, pc) & ~MaskOf(scale.Ascent)) + int.PopCount(Rotate(heard.Falling, pc) & ~MaskOf(scale.Descent));
            if ((outside, unused, turns).CompareTo((best.Outside, best.Unused, best.Turns)) < 0)
            {
                best = (scale, outside, unused, turns);
            }
        }

        var points = best.Outside > 0 ? Math.Max(-12, best.Outside * Outside) : Math.Max(0, Fit + (best.Unused * Unused));
        var words = (best.Outside, best.Unused) switch
        {
            (0, 0) => $"its notes are those of {best.Scale.Name}",
            (0, var unused) => string.Create(CultureInfo.InvariantCulture, $"its notes lie in {best.Scale.Name}, of which {unused} {(unused == 1 ? "is" : "are")} not sung"),
            (var outside, _) => string.Create(CultureInfo.InvariantCulture, $"{outside} of its notes {(outside == 1 ? "lies" : "lie")} outside {best.Scale.Name}"),
        };
        return (best.Scale, points, words);
    }

    private static int MaskOf(ValueList<ScaleTone> list)
    {
        var mask = 0;
        foreach (var tone in list)
        {
            mask |= 1 << ((tone.Degree.Semitones + 12) % 12);
        }

        return mask;
    }

    private static int Rotate(int mask, int pc) => ((mask >> pc) | (mask << (12 - pc))) & 0xFFF;

    /// <summary>The pitch classes of all notes, and of those from which the melody rises or falls.</summary>
    private readonly record struct Heard(int All, int Rising, int Falling)
    {
        public static Heard Of(RawNote[] notes)
        {
            var (all, rising, falling) = (0, 0, 0);
            for (var n = 0; n < notes.Length; n++)
            {
                var bit = 1 << (notes[n].Midi % 12);
                all |= bit;
                var step = n + 1 < notes.Length ? notes[n + 1].Midi - notes[n].Midi : 0;
                rising |= step > 0 ? bit : 0;
                falling |= step < 0 ? bit : 0;
            }

            return new Heard(all, rising, falling);
        }
    }
}
