namespace Warmup;

/// <summary>Svara-gnana: lines to hear and write down, drawn from a seed. The levels are the project's own settings.</summary>
/// <remarks>
/// The same scale, level, number and seed give the same lines on every machine (SplitMix64: Steele, Lea and Flood 2014, OOPSLA). A number picks
/// among the notes above, from the nearest, and then those below, from the lowest.
/// </remarks>
public static class SvaraGnana
{
    // One avartana of Adi in the first speed.
    private const int Units = 8;
    private const int LettersInOctave = 7;

    // Notes of a line, lowest and highest letter from S (0) to the upper S (7), the largest move in notes of the scale, whether notes are held.
    private static readonly (int Notes, int Low, int High, int Move, bool IsHeld)[] Levels =
    [
        (4, 0, 4, 1, false), (6, 0, 7, 2, false), (8, 0, 7, 4, false), (8, -3, 9, 7, false), (6, -3, 9, 7, true),
    ];

    /// <summary>The hardest level: 5.</summary>
    public static int HardestLevel => Levels.Length;

    /// <summary>The most lines: 100.</summary>
    public static int MostLines => 100;

    /// <summary>
    /// Lines that begin on the tonic, each of eight units. Level 1 has four notes from S to P that move by step, 2 six notes that may leap over
    /// one, 3 eight notes that may leap over three, 4 leaps of any size from the lower P to the upper G, 5 these with held notes. A move up
    /// takes a note of the ascent, a move down one of the descent.
    /// </summary>
    /// <param name="scale">The scale.</param>
    /// <param name="level">1 to 5.</param>
    /// <param name="lines">How many lines, 1 to 100.</param>
    /// <param name="seed">Any number.</param>
    /// <exception cref="ArgumentNullException"><paramref name="scale"/> is <see langword="null"/>.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The level or the number of lines lies outside its range.</exception>
    public static Pattern Lines(Scale scale, int level, int lines, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(scale);
        var draw = new Draws(seed);
        var rule = Levels[Require.InRange(level, 1, HardestLevel) - 1];

        // Scales that never reach the upper tonic do not repeat in other octaves.
        var (low, high) = scale.HasUpperTonic ? (rule.Low, rule.High) : (0, Math.Min(rule.High, LettersInOctave - 1));
        while (high < LettersInOctave && Positions(scale.Ascent, low, high).Count < 3)
        {
            high++;
        }

        var up = Positions(scale.Ascent, low, high);
        var down = Positions(scale.Descent, low, high);
        var written = new ValueList<WrittenNote>[Require.InRange(lines, 1, MostLines)];
        for (var l = 0; l < written.Length; l++)
        {
            var notes = new List<WrittenNote> { new(0, Units / rule.Notes, 0) };
            while (notes.Count < rule.Notes)
            {
                var from = notes[^1].Position;
                var higher = up.Where(p => p > from).Take(rule.Move).ToList();
                var lower = down.Where(p => p < from).TakeLast(rule.Move).ToList();

                // A note of one list alone is left in that list's direction, if it can be.
                var next = !down.Contains(from) && higher.Count > 0 ? higher : !up.Contains(from) && lower.Count > 0 ? lower : [.. higher, .. lower];
                notes.Add(new WrittenNote(next.Count == 0 ? from : next[draw.Below(next.Count)], Units / rule.Notes, 0));
            }

            for (var left = Units - notes.Sum(n => n.Units); left > 0; left--)
            {
                var held = rule.IsHeld ? draw.Below(notes.Count) : notes.Count - 1;
                notes[held] = notes[held] with { Units = notes[held].Units + 1 };
            }

            written[l] = notes.ToValueList();
        }

        return new WrittenPattern(ValueList.Adopt(written), byLetter: true);
    }

    /// <summary>
    /// Lines that name the tonic and then sing the scale with one of its notes raised by a semitone, for the singer to name it: level 1 the scale
    /// up, 2 the scale down after the tonic, 3 to 5 the tonic and the raised note alone. S and P are never raised, nor a note that would reach the
    /// next one.
    /// </summary>
    /// <param name="scale">The scale; its ascent is sung.</param>
    /// <param name="level">1 to 5.</param>
    /// <param name="lines">How many lines, 1 to 100.</param>
    /// <param name="seed">Any number.</param>
    /// <returns>The scale with all the raised notes beside its own, and the lines in it.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="scale"/> is <see langword="null"/>.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The level or the number of lines lies outside its range.</exception>
    /// <exception cref="ArgumentException">No note of the scale can be raised.</exception>
    public static (Scale Scale, Pattern Lines) RaisedNotes(Scale scale, int level, int lines, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(scale);
        Require.InRange(level, 1, HardestLevel);
        var draw = new Draws(seed);
        var own = scale.Ascent.Select(t => t.Degree).Distinct().OrderBy(d => d.Semitones).ToList();
        var raised = Enumerable.Range(0, own.Count).Where(i => CanRise(own, i)).ToDictionary(i => i, i => new Degree(own[i].Letter, own[i].Alteration + 1));
        if (raised.Count == 0)
        {
            throw new ArgumentException($"no note of {scale.Name} can be raised by a semitone without reaching the next", nameof(scale));
        }

        var all = own.Concat(raised.Values).OrderBy(d => d.Semitones).ToList();
        var written = new ValueList<WrittenNote>[Require.InRange(lines, 1, MostLines)];
        for (var l = 0; l < written.Length; l++)
        {
            var (which, note) = raised.ElementAt(draw.Below(raised.Count));
            var sung = own.Select((d, i) => all.IndexOf(i == which ? note : d)).Append(all.Count).ToList();
            written[l] = level switch
            {
                1 => sung.ConvertAll(p => new WrittenNote(p, 1, 0)).ToValueList(),
                2 => [new WrittenNote(0, 1, 0), .. sung.AsEnumerable().Reverse().Select(p => new WrittenNote(p, 1, 0))],
                _ => [new WrittenNote(0, Units / 2, 0), new WrittenNote(sung[which], Units / 2, 0)],
            };
        }

        const string Name = "One note raised";
        ValueList<ScaleTone> tones = [.. all.Select(d => new ScaleTone(d)), new ScaleTone(new Degree(1), 1)];
        return (new Scale(Name, tones), new WrittenPattern(ValueList.Adopt(written), byLetter: false).Fill(Units));
    }

    private static bool CanRise(List<Degree> own, int index)
    {
        var (degree, next) = (own[index], index + 1 < own.Count ? own[index + 1].Semitones : 12);
        return degree.Letter is not 1 and not 5 && degree.Semitones + 1 < next && degree.Alteration < -Degree.LowestAlteration
            && new Degree(degree.Letter, degree.Alteration + 1).Variant > 0;
    }

    /// <summary>The letters of a list in all octaves between two, from the lowest.</summary>
    private static List<int> Positions(ValueList<ScaleTone> list, int low, int high) =>
        Enumerable.Range(low, high - low + 1).Where(p => list.Any(t => t.Degree.Letter - 1 == (p + LettersInOctave) % LettersInOctave)).ToList();

    private sealed class Draws(ulong seed)
    {
        private ulong _state = seed;

        public int Below(int bound)
        {
            unchecked
            {
                _state += 0x9E3779B97F4A7C15;
                var z = _state;
                z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
                z = (z ^ (z >> 27)) * 0x94D049BB133111EB;

                // The high half times the bound: the bounds here are so small that no number is noticeably more likely.
                return (int)((((z ^ (z >> 31)) >> 32) * (ulong)bound) >> 32);
            }
        }
    }
}
