using System.Globalization;

namespace Warmup.Plans;

/// <summary>Says why there is no plan, or why a scale is not in it.</summary>
internal sealed class PlanRefusals
{
    private readonly PlanRules _rules;
    private readonly DrillPool _pool;
    private readonly PlanRequest _request;

    public PlanRefusals(PlanRules rules, DrillPool pool, PlanRequest request) => (_rules, _pool, _request) = (rules, pool, request);

    /// <summary>The refusal of a plan whose rules clash.</summary>
    public PlanImpossibleException Refusal()
    {
        var sets = new List<ValueList<PlanRule>>();
        var rest = _rules.All.ToList();
        while (!_rules.CanMeet(rest))
        {
            var clash = Irreducible(rest);
            if (clash.Count == 0)
            {
                break;
            }

            sets.Add(clash.Select(ToRule).ToValueList());
            rest.RemoveAll(clash.Contains);
        }

        return new PlanImpossibleException(sets.Count == 0 ? [] : sets[0], sets.Skip(1).ToValueList(), Missing(0, 1, 0));
    }

    /// <summary>Why a scale has no place in the plan.</summary>
    public string Missing(int scale, int scales, int place)
    {
        HashSet<Rule> all = [.. _rules.All];
        var name = _request.Scales[scale].Name;
        foreach (var role in PlanRules.Roles)
        {
            var drills = _pool.All.Where(c => c.Scale == scale && c.Role == role).ToList();
            if (drills.Count == 0)
            {
                return $"{name} has no {role.ToWord()} drill{(_pool.Refusals.TryGetValue(scale, out var refusal) ? $" ({refusal})" : string.Empty)}";
            }

            if (!drills.Exists(c => c.First(w => _rules.Allows(w, role, all)) is not null))
            {
                return $"{name} has no {role.ToWord()} drill that fits: {Nearest(drills, role)}";
            }
        }

        var stock = _rules.StockOf(scale, all);
        if (_rules.Lacks(stock, place, scales, all) is { } lack)
        {
            return string.Create(
                CultureInfo.InvariantCulture,
                $"{name} has too few {lack.Role.ToWord()} drills that fit and are open: on singing day {lack.Day + 1} there are {lack.Has}, and {lack.Needs} are needed so that none comes back within {_request.NoRepeatDays} days");
        }

        var mean = _rules.LongestMean(stock, place, scales, all);
        var middle = _pool.All.Where(c => c.Scale == scale && c.Role == DrillRole.Middle).ToList();
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{name} has {stock.Releases[(int)DrillRole.Middle].Count} of {middle.Count} middle drills that fit; they fill at most {DayTime.Of(mean)} of {_request.Minutes}:00 a day{KeepOut(middle)}");
    }

    /// <summary>Each singer's limit that keeps out middle drills, in every way of singing them, and how many of how many.</summary>
    public IEnumerable<(Rule Rule, int Drills, int Of)> KeptOut()
    {
        var middle = _pool.All.Where(c => c.Role == DrillRole.Middle).ToList();
        return _rules.All
            .Where(r => r.Singer >= 0)
            .Select(r => (Rule: r, middle.Count(c => c.First(w => !w.Misfits.Exists(m => new Rule(m.Kind, m.Singer) == r)) is null), middle.Count))
            .Where(k => k.Item2 > 0);
    }

    public string Whose(Rule rule) =>
        $"{_request.Singers[rule.Singer].Alias}'s {rule.Kind switch { PlanRuleKind.Range => "range", PlanRuleKind.Breath => "breath", _ => "agility" }}";

    /// <summary>
    /// A set of rules that cannot be met together, while without any one of them the others can: one rule after another is taken away if the rest
    /// still clashes (the deletion filter, Chinneck and Dravnieks 1991), until none can be taken away.
    /// </summary>
    private List<Rule> Irreducible(List<Rule> rules)
    {
        var set = rules.ToList();
        for (var before = -1; before != set.Count;)
        {
            before = set.Count;
            foreach (var rule in set.ToList())
            {
                var less = set.Where(r => r != rule).ToList();
                set = _rules.CanMeet(less) ? set : less;
            }
        }

        return set;
    }

    private string Nearest(List<Candidate> drills, DrillRole role)
    {
        var (drill, way) = drills.SelectMany(c => c.Renderings.Select(w => (c, w))).MinBy(x => (x.w.Misfits.Count, x.w.Seconds));
        return way.Misfits.Count > 0
            ? $"{way.Drill.ExerciseName}, {way.Misfits[0].Finding.Describe()}"
            : string.Create(
                CultureInfo.InvariantCulture,
                $"the shortest, {way.Drill.ExerciseName}, takes {way.Seconds.ToDouble():0.#} s with its rest, and {_pool.Share(role).ToDouble():0.#} s are set aside for it");
    }

    private string KeepOut(List<Candidate> middle)
    {
        var most = middle
            .SelectMany(c => c.Renderings.Last().Misfits)
            .GroupBy(m => new Rule(m.Kind, m.Singer))
            .OrderByDescending(g => g.Count())
            .FirstOrDefault();
        return most is null ? string.Empty : string.Create(CultureInfo.InvariantCulture, $"; {Whose(most.Key)} keeps out {most.Count()} ({most.First().Finding.Message})");
    }

    private PlanRule ToRule(Rule rule)
    {
        var text = rule.Kind switch
        {
            PlanRuleKind.Ceiling => "the ceiling of difficulty, which rises each week",
            PlanRuleKind.NoRepeat => string.Create(CultureInfo.InvariantCulture, $"no drill again within {_request.NoRepeatDays} days of singing"),
            PlanRuleKind.Budget => string.Create(
                CultureInfo.InvariantCulture,
                $"{_request.Minutes} minutes, of which {_pool.Share(DrillRole.Opening).ToDouble():0.#} s each are to begin and to end, and {_pool.Share(DrillRole.Middle).ToDouble():0.#} s for the middle"),
            PlanRuleKind.Fill => string.Create(CultureInfo.InvariantCulture, $"at least {_request.LeastFillPercent} % of {_request.Minutes} minutes filled"),
            PlanRuleKind.Log => "what the log says was sung before",
            _ => $"{Whose(rule)} ({Example(rule)})",
        };
        return new PlanRule(rule.Kind, rule.Singer < 0 ? null : _request.Singers[rule.Singer].Alias, text);
    }

    private string Example(Rule rule)
    {
        var (way, misfit) = _pool.All
            .SelectMany(c => c.Renderings)
            .SelectMany(w => w.Misfits.Select(m => (Rendering: w, Misfit: m)))
            .Where(x => new Rule(x.Misfit.Kind, x.Misfit.Singer) == rule)
            .MinBy(x => x.Rendering.Misfits.Count);
        return $"{way.Drill.Scale.Name}, {way.Drill.ExerciseName}: {misfit.Finding.Message}";
    }
}
