namespace Warmup.Voices;

/// <summary>Ranks the tonics for a class.</summary>
/// <remarks>
/// Of each of the twelve pitch classes every singer takes the octave with the least excess, then the nearest centre, then the lowest. The
/// order: fewest singers out, least semitones out, nearest the centre, the lower tonic (of the lowest octaves taken). Out is more than 50
/// cents beyond the comfortable range. All comparisons are of whole numbers.
/// </remarks>
public static class TonicRanking
{
    private const int PitchClasses = 12;

    /// <summary>The tonics of one drill, the best first.</summary>
    /// <param name="score">The score on any tonic; all its sections move together with the first one's tonic.</param>
    /// <param name="singers">The singers, at least one.</param>
    /// <returns>Up to twelve: pitch classes on which the drill would leave MIDI's range are left out.</returns>
    /// <exception cref="ArgumentException">There are no singers.</exception>
    public static ValueList<TonicFit> RankTonics(this Score score, ValueList<Singer> singers)
    {
        ArgumentNullException.ThrowIfNull(score);
        return Rank([score], singers);
    }

    /// <summary>The tonics of several drills sung on one tonic, the best first; each singer stays in one octave.</summary>
    /// <param name="scores">The scores, at least one.</param>
    /// <param name="singers">The singers, at least one.</param>
    /// <exception cref="ArgumentException">There are no scores or no singers.</exception>
    public static ValueList<TonicFit> Rank(ValueList<Score> scores, ValueList<Singer> singers)
    {
        var table = new Table(scores, singers);
        return table.PitchClasses
            .Select(row => (row, Standing: Table.Stand(row)))
            .OrderBy(r => r.Standing)
            .Select(r => table.Fit(r.row, Enumerable.Range(0, singers.Count)))
            .ToValueList();
    }

    /// <summary>The best two groups on two tonics: every singer goes where they fit better.</summary>
    /// <param name="scores">The scores, at least one.</param>
    /// <param name="singers">The singers.</param>
    /// <returns>
    /// The groups, the lower tonic first, with the fewest singers out, least semitones out, nearest the centre, the lowest tonics;
    /// <see langword="null"/> where no two groups are better than one.
    /// </returns>
    /// <exception cref="ArgumentException">There are no scores or no singers.</exception>
    /// <remarks>All 66 pairs of pitch classes are tried, so no other two groups are better.</remarks>
    public static (TonicFit First, TonicFit Second)? Split(ValueList<Score> scores, ValueList<Singer> singers)
    {
        var table = new Table(scores, singers);
        var one = table.PitchClasses.Select(Table.Stand).Min();
        (Standing Standing, int LowerOfBoth, Placement[] A, Placement[] B)? best = null;
        for (var a = 0; a < table.PitchClasses.Count; a++)
        {
            for (var b = a + 1; b < table.PitchClasses.Count; b++)
            {
                var (rowA, rowB) = (table.PitchClasses[a], table.PitchClasses[b]);
                var (inA, inB) = (Standing.Nobody, Standing.Nobody);
                for (var s = 0; s < rowA.Length; s++)
                {
                    (inA, inB) = TakesSecond(rowA[s], rowB[s]) ? (inA, inB.With(rowB[s])) : (inA.With(rowA[s]), inB);
                }

                var sum = inA.And(inB);
                var key = (sum, Math.Max(inA.LowestTonic, inB.LowestTonic));
                if (best is not { } known || key.CompareTo((known.Standing, known.LowerOfBoth)) < 0)
                {
                    best = (sum, key.Item2, rowA, rowB);
                }
            }
        }

        // Two groups are a burden: they must at least leave fewer out, or leave them less far out.
        return best is { } found && (found.Standing.Out, found.Standing.Excess).CompareTo((one.Out, one.Excess)) < 0
            ? table.Groups(found.A, found.B)
            : null;
    }

    private static bool TakesSecond(Placement first, Placement second) =>
        second.IsBetterThan(first) || (!first.IsBetterThan(second) && second.Tonic < first.Tonic);

    /// <summary>Every singer on every pitch class.</summary>
    private sealed class Table
    {
        private readonly PitchSpan _reach;
        private readonly Scale _scale;
        private readonly ValueList<Singer> _singers;

        public Table(ValueList<Score> scores, ValueList<Singer> singers)
        {
            if (singers.IsEmpty)
            {
                throw new ArgumentException("a class must have at least 1 singer, not 0", nameof(singers));
            }

            _reach = PitchSpan.Of(scores);
            _scale = scores[0].Sections[0].Scale;
            _singers = singers;
            for (var pitchClass = 0; pitchClass < TonicRanking.PitchClasses; pitchClass++)
            {
                if (Placement.Best(_reach, singers[0], pitchClass) is not null)
                {
                    PitchClasses.Add([.. singers.Select(s => Placement.Best(_reach, s, pitchClass)!.Value)]);
                }
            }
        }

        public List<Placement[]> PitchClasses { get; } = [];

        public static Standing Stand(Placement[] row)
        {
            var standing = Standing.Nobody;
            foreach (var placement in row)
            {
                standing = standing.With(placement);
            }

            return standing;
        }

        public TonicFit Fit(Placement[] row, IEnumerable<int> members)
        {
            var names = new Dictionary<int, NoteName>();
            var fits = new List<SingerFit>();
            var standing = Standing.Nobody;
            foreach (var s in members)
            {
                var placement = row[s];
                if (!names.TryGetValue(placement.Tonic, out var name))
                {
                    name = names[placement.Tonic] = Spelling.ChooseTonic(Tonic.FromMidi(placement.Tonic), _scale, out _);
                }

                standing = standing.With(placement);
                fits.Add(new SingerFit(
                    _singers[s], name, Millicents.Semitones(placement.Above), Millicents.Semitones(placement.Below), Millicents.Semitones(placement.TwiceFromCentre) / 2));
            }

            return new TonicFit(
                names[standing.LowestTonic],
                standing.Out,
                Millicents.Semitones(standing.Excess),
                Millicents.Semitones(standing.TwiceFromCentre) / 2,
                fits.ToValueList(),
                _reach.LowestPlace,
                _reach.HighestPlace);
        }

        public (TonicFit First, TonicFit Second) Groups(Placement[] a, Placement[] b)
        {
            var second = Enumerable.Range(0, a.Length).Where(s => TakesSecond(a[s], b[s])).ToHashSet();
            var groups = new[] { Fit(a, Enumerable.Range(0, a.Length).Where(s => !second.Contains(s))), Fit(b, second.Order()) };
            Array.Sort(groups, (x, y) => x.Tonic.Midi.CompareTo(y.Tonic.Midi));
            return (groups[0], groups[1]);
        }
    }
}
