namespace Warmup.Tests;

/// <summary>
/// Made-up scales for the properties: about a third is the same both ways, a third differs up and down, a third zigzags; each number gives
/// the same scale every time.
/// </summary>
public static class ScalesSample
{
    private static readonly string[][] Letters =
    [
        ["R1", "R2", "R3"], ["G1", "G2", "G3"], ["M1", "M2"], ["P"], ["D1", "D2", "D3"], ["N1", "N2", "N3"],
    ];

    public static Scale FromSeed(int seed)
    {
        var random = new Random(seed);
        var full = Body(random);
        var kind = random.Next(3);
        var up = kind == 0 ? full : Thinned(full, random);
        var down = kind == 0 ? full : Thinned(full, random);
        if (kind == 2)
        {
            up = Bent(up, random);
            down = random.Next(2) == 0 ? Bent(down, random) : down;
        }

        return new Scale($"sample {seed}", Tones(up), Tones(down).Reverse().ToValueList());
    }

    /// <summary>One variant of each letter, none lower than the note before.</summary>
    private static List<string> Body(Random random)
    {
        while (true)
        {
            var notes = Letters.Select(variants => variants[random.Next(variants.Length)]).ToList();
            var semitones = notes.Select(n => Tone(n).Semitones).ToList();
            if (semitones.Zip(semitones.Skip(1)).All(p => p.First < p.Second))
            {
                return notes;
            }
        }
    }

    private static List<string> Thinned(List<string> notes, Random random)
    {
        var kept = notes.Where(_ => random.Next(4) > 0).ToList();
        return kept.Count >= 3 ? kept : notes;
    }

    /// <summary>A bend: behind a note the one before it is sung again, and the note once more.</summary>
    private static List<string> Bent(List<string> notes, Random random)
    {
        var at = random.Next(1, notes.Count);
        List<string> bent = [.. notes[..(at + 1)], notes[at - 1], .. notes[(random.Next(2) == 0 ? at : Math.Min(at + 1, notes.Count - 1))..]];
        return bent;
    }

    private static ValueList<ScaleTone> Tones(List<string> notes) =>
        notes.Prepend("S").Append("S'").Select(Tone).ToValueList();

    private static ScaleTone Tone(string text) => ScaleTone.Parse(text);
}
