using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup.Voices;

/// <summary>
/// Finds the cheapest plan by dynamic programming from the end: the least cost of singing on from a note on a full breath. Of equally cheap
/// continuations it takes the one with the earliest next breath, which gives the earliest plan.
/// </summary>
internal sealed class BreathPlanner
{
    private const long Unreachable = long.MaxValue;

    // Cost decides before harm: harm of all notes together stays far below.
    private const long CostWeight = 1L << 32;

    private readonly Score _score;
    private readonly BreathNeed _need;
    private readonly BreathCandidates.Place[] _places;
    private readonly long[] _worth;
    private readonly Stretch[] _next;

    private BreathPlanner(Score score, BreathNeed need, CancellationToken cancellation)
    {
        (_score, _need) = (score, need);
        _places = BreathCandidates.Of(score, need);
        _worth = new long[_places.Length + 1];
        _next = new Stretch[_places.Length];
        for (var from = _places.Length - 1; from >= 0; from--)
        {
            if (from % 1024 == 0)
            {
                cancellation.ThrowIfCancellationRequested();
            }

            _worth[from] = Unreachable;
            foreach (var stretch in Stretches(from))
            {
                var rest = _worth[stretch.To + 1];
                var sum = rest == Unreachable ? Unreachable : rest + (stretch.Breath is { } breath ? (breath.Cost * CostWeight) + breath.Harm : 0);
                if (sum < _worth[from])
                {
                    (_worth[from], _next[from]) = (sum, stretch);
                }
            }
        }
    }

    public static bool TryMake(Score score, BreathNeed need, [NotNullWhen(true)] out BreathPlan? plan, [NotNullWhen(false)] out Finding? refusal, CancellationToken cancellation)
    {
        var planner = new BreathPlanner(score, need, cancellation);
        if (planner._places.Length > 0 && planner._worth[0] == Unreachable)
        {
            (plan, refusal) = (null, planner.Refuse());
            return false;
        }

        var breaths = new List<PlannedBreath>();
        for (var from = 0; from < planner._places.Length; from = planner._next[from].To + 1)
        {
            if (planner._next[from].Breath is { } breath)
            {
                breaths.Add(breath);
            }
        }

        (plan, refusal) = (new BreathPlan(need, breaths.ToValueList()), null);
        return true;
    }

    /// <summary>The spans that can begin with a note on a full breath, from the shortest; each ends with a breath or with silence.</summary>
    private IEnumerable<Stretch> Stretches(int from)
    {
        var latest = _places[from].Start + _need.CapacitySeconds;
        for (var to = from; to < _places.Length && _places[to].Start < latest; to++)
        {
            var place = _places[to];
            if (place.EndsSpan && place.End <= latest)
            {
                yield return new Stretch(to, null);
            }
            else if (!place.EndsSpan && place.Breath is { } breath && place.ShortenedEnd <= latest)
            {
                yield return new Stretch(to, breath);
            }
            else if ((place.EndsSpan || place.Breath is not null) && BreathCandidates.LetGo(_score, place, latest) is { } longer)
            {
                yield return new Stretch(to, longer);
            }

            if (place.EndsSpan)
            {
                yield break;
            }
        }
    }

    private Finding Refuse()
    {
        var stuck = LastReached();
        var section = _score.Sections[_places[stuck].Section];
        var note = section.Notes[_places[stuck].Note];
        var (capacity, shortest) = (_need.CapacitySeconds.ToDouble(), _need.ShortestBreathSeconds.ToDouble());
        return new Finding(
            VoiceFindingCode.NoBreathPlan,
            Severity.Error,
            string.Create(
                CultureInfo.InvariantCulture,
                $"from its note {_places[stuck].Note - section.Lines[note.LineIndex].FirstNote + 1} on, no breath of {shortest:0.0#} s can be placed before {capacity:0.0} s have been sung"))
        {
            Place = _score.PlaceOf(_places[stuck].Section, note),
            Limit = capacity,
            Unit = "s",
        };
    }

    /// <summary>The last note that can be sung on a full breath; no plan goes on from it.</summary>
    private int LastReached()
    {
        var reached = new bool[_places.Length + 1];
        reached[0] = true;
        var last = 0;
        for (var from = 0; from < _places.Length; from++)
        {
            if (reached[from])
            {
                last = from;
                foreach (var stretch in Stretches(from))
                {
                    reached[stretch.To + 1] = true;
                }
            }
        }

        return last;
    }

    /// <summary>A span to a note, and the breath planned after it; none where silence follows.</summary>
    private readonly record struct Stretch(int To, PlannedBreath? Breath);
}
