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
    private readonly BreathPlaces _places;
    private readonly BreathWorth _worths;
    private readonly long[] _worth;
    private readonly Stretch[] _next;

    // What the shortest breath after each note is worth; 0 where it was not asked for yet.
    private readonly long[] _shortest;

    private BreathPlanner(Score score, BreathNeed need, CancellationToken cancellation)
    {
        (_score, _need) = (score, need);
        _places = BreathPlaces.Of(score, need);
        _worths = new BreathWorth(score, _places);
        _worth = new long[_places.Count + 1];
        _next = new Stretch[_places.Count];
        _shortest = new long[_places.Count];
        for (var from = _places.Count - 1; from >= 0; from--)
        {
            if (from % 1024 == 0)
            {
                cancellation.ThrowIfCancellationRequested();
            }

            _worth[from] = Unreachable;
            var spans = _places.From(from);
            while (spans.MoveNext())
            {
                var rest = _worth[spans.To + 1];
                if (rest == Unreachable)
                {
                    continue;
                }

                var sum = rest + WorthOf(spans);
                if (sum < _worth[from])
                {
                    (_worth[from], _next[from]) = (sum, new Stretch(spans.To, spans.Breath, spans.IsLetGo));
                }
            }
        }
    }

    public static bool TryMake(Score score, BreathNeed need, [NotNullWhen(true)] out BreathPlan? plan, [NotNullWhen(false)] out Finding? refusal, CancellationToken cancellation)
    {
        var planner = new BreathPlanner(score, need, cancellation);
        (plan, refusal) = planner.IsPossible ? (planner.Plan(), (Finding?)null) : (null, planner.Refuse());
        return plan is not null;
    }

    /// <summary>The cheapest plan; nothing where there is none.</summary>
    public static BreathPlan? Find(Score score, BreathNeed need, CancellationToken cancellation)
    {
        var planner = new BreathPlanner(score, need, cancellation);
        return planner.IsPossible ? planner.Plan() : null;
    }

    private bool IsPossible => _places.Count == 0 || _worth[0] != Unreachable;

    private BreathPlan Plan()
    {
        var breaths = new List<PlannedBreath>();
        for (var from = 0; from < _places.Count; from = _next[from].To + 1)
        {
            var (to, breath, isLetGo) = _next[from];
            if (breath != BreathPlace.None)
            {
                breaths.Add(_worths.Breath(to, breath, isLetGo));
            }
        }

        return new BreathPlan(_need, breaths.ToValueList());
    }

    /// <summary>Cost and harm of the breath with which a span ends, together.</summary>
    private long WorthOf(in BreathSpans span)
    {
        if (span.Breath == BreathPlace.None)
        {
            return 0;
        }

        if (!span.IsLetGo && _shortest[span.To] > 0)
        {
            return _shortest[span.To];
        }

        var (cost, harm) = _worths.Of(span.To, span.Breath, span.IsLetGo);
        var worth = (cost * CostWeight) + harm;
        _shortest[span.To] = span.IsLetGo ? _shortest[span.To] : worth;
        return worth;
    }

    private Finding Refuse()
    {
        var stuck = _places[LastReached()];
        var section = _score.Sections[stuck.Section];
        var note = section.Notes[stuck.Note];
        var (capacity, shortest) = (_need.CapacitySeconds.ToDouble(), _need.ShortestBreathSeconds.ToDouble());
        return new Finding(
            VoiceFindingCode.NoBreathPlan,
            Severity.Error,
            string.Create(
                CultureInfo.InvariantCulture,
                $"from its note {stuck.Note - section.Lines[note.LineIndex].FirstNote + 1} on, no breath of {shortest:0.0#} s can be placed before {capacity:0.0} s have been sung"))
        {
            Place = _score.PlaceOf(stuck.Section, note),
            Limit = capacity,
            Unit = "s",
        };
    }

    /// <summary>The last note that can be sung on a full breath; no plan goes on from it.</summary>
    private int LastReached()
    {
        var reached = new bool[_places.Count + 1];
        reached[0] = true;
        var last = 0;
        for (var from = 0; from < _places.Count; from++)
        {
            if (reached[from])
            {
                last = from;
                var spans = _places.From(from);
                while (spans.MoveNext())
                {
                    reached[spans.To + 1] = true;
                }
            }
        }

        return last;
    }

    /// <summary>A span to a note, and where the breath planned after it begins; none where silence follows.</summary>
    private readonly record struct Stretch(int To, long Breath, bool IsLetGo);
}
