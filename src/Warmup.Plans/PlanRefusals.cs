using System.Globalization;

namespace Warmup.Plans;

/// <summary>Says why there is no plan, or why a scale is not in it.</summary>
internal sealed class PlanRefusals
{
    private readonly PlanRules _rules;
    private readonly CandidateList _candidates;
    private readonly PlanRequest _request;
    private readonly HashSet<Rule> _all;

    public PlanRefusals(PlanRules rules, CandidateList candidates, PlanRequest request) =>
        (_rules, _candidates, _request, _all) = (rules, candidates, request, [.. rules.All]);

    /// <summary>The refusal of a plan whose rules clash on every tonic.</summary>
    public PlanImpossibleException Refusal(PlanChange? change)
    {
        var nearest = _rules.Placings.All.MaxBy(p => Fitting(p))!;
        var sets = new List<List<Rule>>();
        var rest = _rules.All.ToList();
        while (!_rules.CanMeet(rest))
        {
            var clash = Irreducible(rest);
            if (clash.Count == 0)
            {
                break;
            }

            sets.Add(clash);
            rest.RemoveAll(clash.Contains);
        }

        var rules = sets.ConvertAll(set => set.Select(r => ToRule(r, nearest)).ToValueList());
        return new PlanImpossibleException(
            rules.Count == 0 ? [] : rules[0],
            rules.Skip(1).ToValueList(),
            new PlanRefusal(Tried(nearest), Missing(0, 1, 0, nearest), sets.ConvertAll(set => string.Join(" + ", set.Select(Briefly))), change));
    }

    /// <summary>Why a scale has no place in the plan.</summary>
    public string Missing(int scale, int scales, int place, Placing placing)
    {
        var limits = new Limits(_request, placing, _all);
        var name = _request.Scales[scale].Name;
        foreach (var role in PlanRules.Roles)
        {
            var drills = _candidates.All.FindAll(c => c.Scale == scale && c.Role == role);
            if (drills.Count == 0)
            {
                var refused = _candidates.Refusals.Where(r => r.Key.Scale == scale).Select(r => $" ({r.Value})").FirstOrDefault();
                return $"{name} has no {role.ToWord()} drill{refused}";
            }

            if (drills.TrueForAll(c => c.First(limits) is null))
            {
                return $"{name} has no {role.ToWord()} drill that fits: {Nearest(drills, role, placing)}";
            }
        }

        var stock = _rules.StockOf(scale, limits);
        if (_rules.Lacks(stock, place, scales, limits) is { } lack)
        {
            return string.Create(
                CultureInfo.InvariantCulture,
                $"{name} has too few {lack.Role.ToWord()} drills that fit and are open: on singing day {lack.Day + 1} there are {lack.Has}, and {lack.Needs} are needed so that none comes back within {_request.NoRepeatDays} days");
        }

        var mean = _rules.LongestMean(stock, place, scales, limits);
        var middle = _candidates.All.FindAll(c => c.Scale == scale && c.Role == DrillRole.Middle);
        var kept = KeptOut(placing, middle).Select(k => $"; {Whose(k.Rule)} keeps out {k.Drills}").FirstOrDefault();
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{name} has {stock.Releases[(int)DrillRole.Middle].Count} of {middle.Count} middle drills that fit; they fill at most {DayTime.Of(mean)} of {_request.Minutes}:00 a day{kept}");
    }

    /// <summary>Why a drill of a scale is not in the plan.</summary>
    public string MissingDrill(int scale, string exercise, Placing placing) =>
        _candidates.All.Find(c => c.Scale == scale && c.ExerciseName == exercise) is { } drill
            ? Nearest([drill], drill.Role, placing)
            : _candidates.Refusals.GetValueOrDefault((scale, exercise), "the level has it already");

    /// <summary>Each singer's limit that keeps out middle drills, in every way of singing them, and how many; the greatest first.</summary>
    public IEnumerable<(Rule Rule, int Drills)> KeptOut(Placing placing, IReadOnlyList<Candidate> middle)
    {
        var known = new Dictionary<(PlanRuleKind, object), int>();
        return _rules.All
            .Where(r => r.Singer >= 0)
            .Select(r => (r, Count(r)))
            .Where(k => k.Item2 > 0)
            .OrderByDescending(k => k.Item2);

        // Singers with the same limit keep out the same drills.
        int Count(Rule rule)
        {
            var singer = _request.Singers[rule.Singer];
            object limit = rule.Kind switch
            {
                PlanRuleKind.Range => (singer.Low.Midi, singer.High.Midi, placing.TonicOf(rule.Singer)),
                PlanRuleKind.Breath => (singer.BreathSeconds, singer.ShortestBreathSeconds),
                _ => singer.Experience,
            };
            if (!known.TryGetValue((rule.Kind, limit), out var count))
            {
                known.Add((rule.Kind, limit), count = middle.Count(c => (rule.Kind == PlanRuleKind.Range ? c.Reaches : c.Renderings).All(w => Breaks(w, rule, placing))));
            }

            return count;
        }
    }

    public string Whose(Rule rule) =>
        $"{_request.Singers[rule.Singer].Alias}'s {rule.Kind switch { PlanRuleKind.Range => "range", PlanRuleKind.Breath => "breath", _ => "agility" }}";

    /// <summary>
    /// A set of rules that cannot be met together, while without any one of them the others can: rules are taken away while the rest still
    /// clashes (the deletion filter, Chinneck and Dravnieks 1991), first many at a time and then one after the other, until none can be taken away.
    /// </summary>
    private List<Rule> Irreducible(List<Rule> rules)
    {
        var set = rules.ToList();
        for (var size = set.Count / 2; size > 1; size /= 2)
        {
            Remove(size);
        }

        while (Remove(1))
        {
        }

        return set;

        bool Remove(int size)
        {
            var before = set.Count;
            foreach (var some in set.Chunk(size).ToList())
            {
                var less = set.Except(some).ToList();
                set = _rules.CanMeet(less) ? set : less;
            }

            return set.Count < before;
        }
    }

    /// <summary>How many drills fit everyone on a tonic.</summary>
    private int Fitting(Placing placing)
    {
        var limits = new Limits(_request, placing, _all);
        return _candidates.All.Count(c => c.First(limits) is not null);
    }

    private string Tried(Placing nearest) => _request.Tonic is not null
        ? $"on {nearest.Tonic}"
        : $"on any tonic ({string.Join(", ", _rules.Placings.Tonics.Order().Select(Name))}; {Name(nearest.Tonic.Midi % 12)} comes nearest)";

    private static string Name(int pitchClass) => NoteName.FromMidi(60 + pitchClass).ToString().TrimEnd('4');

    private bool Breaks(Rendering way, Rule rule, Placing placing)
    {
        var singer = _request.Singers[rule.Singer];
        return rule.Kind switch
        {
            PlanRuleKind.Range => !way.Needs.IsInRange(singer, placing.TonicOf(rule.Singer)),
            PlanRuleKind.Breath => !way.Needs.IsInBreath(singer),
            _ => way.Needs.TooFastFor.Contains(singer.Experience),
        };
    }

    private string Nearest(List<Candidate> drills, DrillRole role, Placing placing)
    {
        var (way, broken) = drills
            .SelectMany(c => c.Renderings)
            .Select(w => (Rendering: w, Broken: _rules.All.FindAll(r => r.Singer >= 0 && Breaks(w, r, placing))))
            .MinBy(x => (x.Broken.Count, x.Rendering.Seconds));
        return broken.Count > 0
            ? $"{way.Drill.ExerciseName}, {_request.Singers[broken[0].Singer].Alias}: {Fault(way, broken[0], placing)}"
            : string.Create(
                CultureInfo.InvariantCulture,
                $"the shortest, {way.Drill.ExerciseName}, takes {way.Seconds.ToDouble():0.#} s with its rest, and {PlanRules.Share(_request, role).ToDouble():0.#} s are set aside for it");
    }

    /// <summary>What of a drill does not fit a singer, in the words of the check.</summary>
    private string Fault(Rendering way, Rule rule, Placing placing)
    {
        var singer = _request.Singers[rule.Singer];
        var fault = _candidates.ToScore(way.Drill, placing.Tonic.Transposed(12 * placing.Octaves[rule.Singer])).Check(singer).First(f => f.Severity == Severity.Error && KindOf(f.Code) == rule.Kind);
        return fault.Place is { } place ? $"{place}: {fault.Message}" : fault.Message;
    }

    private static PlanRuleKind KindOf(string code) => code switch
    {
        VoiceFindingCode.AboveRange or VoiceFindingCode.BelowRange => PlanRuleKind.Range,
        VoiceFindingCode.TooFast => PlanRuleKind.Agility,
        _ => PlanRuleKind.Breath,
    };

    private string Briefly(Rule rule) => rule.Kind switch
    {
        PlanRuleKind.Ceiling => "the ceiling of difficulty, which rises each week",
        PlanRuleKind.NoRepeat => string.Create(CultureInfo.InvariantCulture, $"no drill again within {_request.NoRepeatDays} days of singing"),
        PlanRuleKind.Budget => string.Create(CultureInfo.InvariantCulture, $"{_request.Minutes} minutes"),
        PlanRuleKind.Fill => string.Create(CultureInfo.InvariantCulture, $"at least {_request.LeastFillPercent} % of {_request.Minutes} minutes filled"),
        PlanRuleKind.Log => "what the log says was sung before",
        _ => Whose(rule),
    };

    private PlanRule ToRule(Rule rule, Placing nearest)
    {
        var text = rule.Kind == PlanRuleKind.Budget
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"{_request.Minutes} minutes, of which {PlanRules.Share(_request, DrillRole.Opening).ToDouble():0.#} s each are to begin and to end, and {PlanRules.Share(_request, DrillRole.Middle).ToDouble():0.#} s for the middle")
            : Briefly(rule);
        return new PlanRule(rule.Kind, rule.Singer < 0 ? null : _request.Singers[rule.Singer].Alias, rule.Singer < 0 ? text : $"{text}{Example(rule, nearest)}");
    }

    /// <summary>The first drill that a singer's limit keeps out, on the nearest tonic or else on another.</summary>
    private string Example(Rule rule, Placing nearest)
    {
        foreach (var placing in _rules.Placings.All.Prepend(nearest))
        {
            foreach (var way in _candidates.All.SelectMany(c => c.Renderings))
            {
                if (Breaks(way, rule, placing))
                {
                    return $" ({way.Drill.Scale.Name}, {way.Drill.ExerciseName}: {Fault(way, rule, placing)})";
                }
            }
        }

        return string.Empty;
    }
}
