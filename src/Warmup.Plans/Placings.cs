namespace Warmup.Plans;

/// <summary>The tonics that a plan may have, each with the octaves that the singers may take, in the order in which they are tried.</summary>
/// <remarks>
/// <para>A typed tonic is the only one. Otherwise all twelve are tried, in the order in which they suit the run of the first scale.</para>
/// <para>On a tonic a singer may take each octave in which some drill lies within the range. Without a log, an octave that holds no drill that
/// another does not hold as well is left away: it could not make a plan possible. Mostly one octave is left for everyone. If not, the ways of choosing
/// are tried in order, first that with the most drills for each singer, and no more than <see cref="MostChoices"/> of them.</para>
/// </remarks>
internal sealed class Placings
{
    /// <summary>How many ways of choosing octaves are tried on one tonic (the project's own bound).</summary>
    public const int MostChoices = 32;

    private const int PitchClasses = 12;

    private readonly PlanRequest _request;
    private readonly List<(int Low, int High, int Drills)> _reaches;
    private readonly Dictionary<(int Low, int High), HashSet<int>> _held = [];

    public Placings(PlanRequest request, CandidateList candidates)
    {
        _request = request;
        _reaches = [.. candidates.All.SelectMany(c => c.Reaches).GroupBy(w => (w.Needs.Low, w.Needs.High)).Select(g => (g.Key.Low, g.Key.High, g.Count()))];
        Tonics = request.Tonic is { } typed ? [typed.Midi % PitchClasses] : RankedTonics(request).ToValueList();
        All = [.. Tonics.SelectMany(On)];
    }

    /// <summary>The pitch classes tried, 0 for C to 11 for B.</summary>
    public ValueList<int> Tonics { get; }

    /// <summary>All that are tried, the best first.</summary>
    public List<Placing> All { get; }

    private static IEnumerable<int> RankedTonics(PlanRequest request)
    {
        foreach (var scale in request.Scales)
        {
            var drill = new Drill { Scale = scale, Pattern = Pattern.Run, Tonic = Tonic.FromMidi(60), Tuning = request.Tuning };
            if (drill.TryToScore(out var score, out _))
            {
                var ranked = score!.RankTonics(request.Singers).Select(f => f.Tonic.Midi % PitchClasses);
                return ranked.Concat(Enumerable.Range(0, PitchClasses)).Distinct();
            }
        }

        return Enumerable.Range(0, PitchClasses);
    }

    /// <summary>The ways of placing the singers on one tonic.</summary>
    private IEnumerable<Placing> On(int pitchClass)
    {
        var ranges = _request.Singers.Select(RangeOf).Distinct().ToList();
        var choices = ranges.ConvertAll(r => Choices(r, pitchClass));
        var turn = new int[ranges.Count];
        for (var tried = 0; tried < MostChoices; tried++)
        {
            var tonics = ranges.Select((r, i) => (r, choices[i][turn[i]])).ToDictionary();
            yield return Place(_request.Singers.ConvertAll(s => tonics[RangeOf(s)]));

            // The next way, as a number counts up whose digits are the singers' choices.
            var digit = 0;
            while (digit < turn.Length && turn[digit] + 1 == choices[digit].Count)
            {
                turn[digit++] = 0;
            }

            if (digit == turn.Length)
            {
                yield break;
            }

            turn[digit]++;
        }
    }

    /// <summary>A typed tonic stands as it is.</summary>
    private Placing Place(ValueList<int> tonics)
    {
        var tonic = PlanReading.Settled(_request.Tonic) ?? WrittenTonic.Of(tonics);
        return new Placing(tonic, tonics.ConvertAll(t => (t - tonic.Midi) / PitchClasses));
    }

    private static (int Low, int High) RangeOf(Singer singer) => (singer.Low.Midi, singer.High.Midi);

    /// <summary>The tonics of a pitch class that a singer may take, that with the most drills first.</summary>
    private List<int> Choices((int Low, int High) range, int pitchClass)
    {
        var all = Enumerable.Range(0, 1 + ((Tonic.HighestMidi - _request.Climb - Tonic.LowestMidi - pitchClass) / PitchClasses))
            .Select(octave => Tonic.LowestMidi + pitchClass + (PitchClasses * octave))
            .OrderByDescending(t => Held(range, t).Sum(r => _reaches[r].Drills))
            .ThenBy(t => Math.Abs((2 * t) + PitchClasses - range.Low - range.High))
            .ThenBy(t => t)
            .ToList();
        var kept = new List<int>();
        foreach (var tonic in all.Where(t => Held(range, t).Count > 0))
        {
            if (_request.Log.Count > 0 || !kept.Exists(k => Held(range, tonic).IsSubsetOf(Held(range, k))))
            {
                kept.Add(tonic);
            }
        }

        return kept.Count > 0 ? kept : [all[0]];
    }

    /// <summary>The drills' reaches that a range holds on a tonic.</summary>
    private HashSet<int> Held((int Low, int High) range, int tonic)
    {
        var (low, high) = (range.Low - tonic, range.High - tonic);
        if (!_held.TryGetValue((low, high), out var held))
        {
            held = _held[(low, high)] = [.. Enumerable.Range(0, _reaches.Count).Where(r => _reaches[r].Low >= low && _reaches[r].High <= high)];
        }

        return held;
    }
}
