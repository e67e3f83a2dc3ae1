using System.Globalization;

namespace Warmup.Plans;

/// <summary>Which scales can be planned under a set of rules, by counting; and which rules clash where none can.</summary>
/// <remarks>
/// The scales follow each other in turn, so that with n of them each comes back after n days of singing. A drill of a scale that is kept
/// back for d days is then missing on d / n (rounded down) of the scale's own turns. Whichever drill is taken each time, just that many are
/// missing: so a scale can be sung to the end exactly if each role has one drill more than that. No choice can spoil a later one, and
/// counting is a proof.
/// </remarks>
internal sealed class PlanRules
{
    private static readonly Role[] Roles = [Role.Opening, Role.Middle, Role.Descent];

    private readonly DrillPool _pool;
    private readonly PlanRequest _request;
    private readonly int _singingDays;
    private readonly List<(PlanRuleKind Kind, int Singer)> _all = [];

    public PlanRules(DrillPool pool, PlanRequest request, Level level, int singingDays)
    {
        (_pool, _request, _singingDays) = (pool, request, singingDays);
        var grades = pool.All.Where(c => c.Drill.Role == Role.Middle).Select(c => c.Drill.Grade).DefaultIfEmpty().ToList();
        (Easiest, Hardest) = (grades.Min(), grades.Max());
        FirstCeiling = Ceiling(level.CeilingOf(0));
        _all.AddRange([(PlanRuleKind.Ceiling, -1), (PlanRuleKind.NoRepeat, -1), (PlanRuleKind.Budget, -1)]);
        _all.AddRange(pool.All.SelectMany(c => c.Misfits).Select(m => (m.Kind, m.Singer)).Distinct().OrderBy(r => (r.Singer, r.Kind)));
    }

    public int Easiest { get; }

    public int Hardest { get; }

    private int FirstCeiling { get; }

    /// <summary>The hardest grade that is open.</summary>
    public int Ceiling(int percent) => Easiest + (int)((long)(Hardest - Easiest) * percent / 100);

    /// <summary>Whether a drill meets all the rules that do not look at other days, the ceiling aside.</summary>
    public bool Allows(Candidate candidate) => Allows(candidate, [.. _all]);

    /// <summary>The scales that meet all rules.</summary>
    /// <exception cref="PlanImpossibleException">None does.</exception>
    public List<int> UsableScales()
    {
        var usable = Usable([.. _all]);
        return usable.Count > 0 ? usable : throw new PlanImpossibleException(Clash().Select(ToRule).ToValueList(), Missing(0));
    }

    /// <summary>Why a scale is left out.</summary>
    public string Missing(int scale)
    {
        foreach (var role in Roles)
        {
            var drills = _pool.All.Where(c => c.Scale == scale && c.Drill.Role == role).ToList();
            var allowed = drills.Where(c => Allows(c, [.. _all]) && IsOpen(c)).ToList();
            var name = _request.Scales[scale].Name;
            if (drills.Count == 0)
            {
                return $"{name} has no {role.ToWord()} drill{(_pool.Refusals.Count > 0 ? $" ({_pool.Refusals[0]})" : string.Empty)}";
            }

            if (allowed.Count == 0)
            {
                var nearest = drills.MinBy(c => c.Misfits.Count)!;
                var why = nearest.Misfits.Count > 0
                    ? nearest.Misfits[0].Finding.ToString()
                    : nearest.Seconds > _pool.Share(role)
                        ? Seconds($"the shortest takes {drills.Min(c => c.Seconds).ToDouble():0.#} s with its rest, and {_pool.Share(role).ToDouble():0.#} s are set aside for it")
                        : "all lie above the first week's ceiling";
                return $"{name} has no {role.ToWord()} drill that fits: {nearest.Drill.Exercise}, {why}";
            }
        }

        return string.Create(
            CultureInfo.InvariantCulture,
            $"{_request.Scales[scale].Name} has too few drills that fit for {_request.NoRepeatDays} days without a repeat ({string.Join(", ", Roles.Select(r => $"{_pool.All.Count(c => c.Scale == scale && c.Drill.Role == r && Allows(c, [.. _all]) && IsOpen(c))} {r.ToWord()}"))})");
    }

    private static string Seconds(FormattableString text) => FormattableString.Invariant(text);

    private bool IsOpen(Candidate c) => c.Drill.Role != Role.Middle || c.Drill.Grade <= FirstCeiling;

    private bool Allows(Candidate candidate, HashSet<(PlanRuleKind, int)> rules) =>
        candidate.Misfits.TrueForAll(m => !rules.Contains((m.Kind, m.Singer)))
        && (!rules.Contains((PlanRuleKind.Budget, -1)) || candidate.Seconds <= _pool.Share(candidate.Drill.Role));

    /// <summary>The greatest set of scales whose every role has drills enough; with more scales each needs fewer.</summary>
    private List<int> Usable(HashSet<(PlanRuleKind, int)> rules)
    {
        var counts = new int[_request.Scales.Count, Roles.Length];
        foreach (var candidate in _pool.All)
        {
            if (Allows(candidate, rules) && (!rules.Contains((PlanRuleKind.Ceiling, -1)) || IsOpen(candidate)))
            {
                counts[candidate.Scale, (int)candidate.Drill.Role]++;
            }
        }

        var scales = Enumerable.Range(0, _request.Scales.Count).ToList();
        while (scales.Count > 0)
        {
            var turns = (_singingDays + scales.Count - 1) / scales.Count;
            var needed = 1 + (rules.Contains((PlanRuleKind.NoRepeat, -1)) ? Math.Min(_request.NoRepeatDays / scales.Count, turns - 1) : 0);
            if (scales.RemoveAll(s => Roles.Any(r => counts[s, (int)r] < needed)) == 0)
            {
                break;
            }
        }

        return scales;
    }

    private bool CanMeet(IEnumerable<(PlanRuleKind, int)> rules) => Usable([.. rules]).Count > 0;

    /// <summary>A smallest set of rules that cannot be met together (Junker 2004, QuickXplain): rules that are left out only open more drills.</summary>
    private List<(PlanRuleKind Kind, int Singer)> Clash() => CanMeet([]) ? Explain([], false, _all) : [];

    private List<(PlanRuleKind Kind, int Singer)> Explain(List<(PlanRuleKind, int)> background, bool hasGrown, List<(PlanRuleKind Kind, int Singer)> rules)
    {
        if (hasGrown && !CanMeet(background))
        {
            return [];
        }

        if (rules.Count == 1)
        {
            return rules;
        }

        var (first, second) = (rules[..(rules.Count / 2)], rules[(rules.Count / 2)..]);
        var fromSecond = Explain([.. background, .. first], first.Count > 0, second);
        var fromFirst = Explain([.. background, .. fromSecond], fromSecond.Count > 0, first);
        return [.. fromFirst, .. fromSecond];
    }

    private PlanRule ToRule((PlanRuleKind Kind, int Singer) rule)
    {
        var text = rule.Kind switch
        {
            PlanRuleKind.Ceiling => "the first week's ceiling of difficulty",
            PlanRuleKind.NoRepeat => string.Create(CultureInfo.InvariantCulture, $"no drill again within {_request.NoRepeatDays} days of singing"),
            PlanRuleKind.Budget => string.Create(
                CultureInfo.InvariantCulture,
                $"{_request.Minutes} minutes, of which {_pool.Share(Role.Opening).ToDouble():0.#} s to begin and to end with, {_pool.Share(Role.Middle).ToDouble():0.#} s between"),
            _ => $"{_request.Singers[rule.Singer].Alias}'s {rule.Kind switch { PlanRuleKind.Range => "range", PlanRuleKind.Breath => "breath", _ => "agility" }} ({Example(rule)})",
        };
        return new PlanRule(rule.Kind, rule.Singer < 0 ? null : _request.Singers[rule.Singer].Alias, text);
    }

    private string Example((PlanRuleKind Kind, int Singer) rule)
    {
        var (candidate, misfit) = _pool.All
            .SelectMany(c => c.Misfits.Select(m => (Candidate: c, Misfit: m)))
            .Where(x => (x.Misfit.Kind, x.Misfit.Singer) == rule)
            .MinBy(x => x.Candidate.Misfits.Count);
        return $"{candidate.Drill.Scale.Name}, {candidate.Drill.Exercise}: {misfit.Finding.Message}";
    }
}
