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

    private readonly BreathNeed _need;
    private readonly BreathPlaces _places;
    private readonly BreathWorth _worths;
    private readonly long[] _worth;
    private readonly Stretch[] _next;

    private BreathPlanner(BreathPlaces places, BreathNeed need, CancellationToken cancellation)
    {
        (_places, _need, _worths) = (places, need, new BreathWorth(places));
        _worth = new long[places.Count + 1];
        _next = new Stretch[places.Count];

        // Whoever begins a span earlier ends it no later, so that the ends in reach are a window that only moves back.
        var ends = new CheapestEnds(places.Count);
        var reach = places.Count - 1;
        for (var from = places.Count - 1; from >= 0; from--)
        {
            if (from % 1024 == 0)
            {
                cancellation.ThrowIfCancellationRequested();
            }

            ref readonly var place = ref places[from];
            if (place.EndsSpan)
            {
                ends.Clear();
                reach = from;
            }

            if (place.CanEndSpan && _worth[from + 1] != Unreachable)
            {
                ends.Add(from, _worth[from + 1] + (place.EndsSpan ? 0 : WorthOf(from, place.Breath, isLetGo: false)));
            }

            var breath = places.From(from);
            while (reach >= from && !breath.Lasts(places[reach]))
            {
                reach--;
            }

            ends.KeepTo(reach);
            _worth[from] = Unreachable;
            if (!ends.IsEmpty)
            {
                (var end, _worth[from]) = ends.Cheapest;
                _next[from] = new Stretch(end, places[end].Breath, IsLetGo: false);
            }

            if (reach < from || !places[reach].EndsSpan)
            {
                LetGo(from, reach + 1, ref breath);
            }
        }
    }

    public static bool TryMake(Score score, BreathNeed need, [NotNullWhen(true)] out BreathPlan? plan, [NotNullWhen(false)] out Finding? refusal, CancellationToken cancellation)
    {
        var planner = new BreathPlanner(BreathPlaces.Of(score, need), need, cancellation);
        (plan, refusal) = planner.IsPossible ? (planner.Plan(score), (Finding?)null) : (null, planner.Refuse(score));
        return plan is not null;
    }

    /// <summary>The cheapest plan; nothing where there is none.</summary>
    public static BreathPlan? Find(Score score, BreathNeed need, CancellationToken cancellation)
    {
        var planner = new BreathPlanner(BreathPlaces.Of(score, need), need, cancellation);
        return planner.IsPossible ? planner.Plan(score) : null;
    }

    /// <summary>The cheapest plan for a section by itself, in steps; nothing where there is none.</summary>
    /// <param name="section">The section; its own tempo does not matter.</param>
    /// <param name="clock">Its tempi.</param>
    /// <param name="need">What the breaths must be enough for.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <returns>After which notes there are breaths and where they begin, in steps of a grid that is finer than the section's by the factor.</returns>
    public static (int Factor, List<(int Note, long Begin)> Breaths)? FindSteps(Section section, StepClock clock, BreathNeed need, CancellationToken cancellation)
    {
        var places = BreathPlaces.Of(section, clock, need);
        var planner = new BreathPlanner(places, need, cancellation);
        return planner.IsPossible ? (places.Sections[0].Factor, planner.Breaths().Select(b => (b.To, b.Breath)).ToList()) : null;
    }

    private bool IsPossible => _places.Count == 0 || _worth[0] != Unreachable;

    private BreathPlan Plan(Score score) => new(_need, Breaths().Select(b => _worths.Breath(score, b.To, b.Breath, b.IsLetGo)).ToValueList());

    private IEnumerable<Stretch> Breaths()
    {
        for (var from = 0; from < _places.Count; from = _next[from].To + 1)
        {
            if (_next[from].Breath != BreathPlace.None)
            {
                yield return _next[from];
            }
        }
    }

    /// <summary>Ends a span with a note that would have to be let go, where that is cheaper.</summary>
    private void LetGo(int from, int to, ref FullBreath breath)
    {
        ref readonly var place = ref _places[to];
        if (!place.CanEndSpan || _worth[to + 1] == Unreachable || !breath.Reaches(place))
        {
            return;
        }

        var begin = breath.LetGo(place);
        var worth = begin == BreathPlace.None ? Unreachable : _worth[to + 1] + WorthOf(to, begin, isLetGo: true);
        if (worth < _worth[from])
        {
            (_worth[from], _next[from]) = (worth, new Stretch(to, begin, IsLetGo: true));
        }
    }

    /// <summary>Cost and harm of a breath, together.</summary>
    private long WorthOf(int after, long begin, bool isLetGo)
    {
        var (cost, harm) = _worths.Of(after, begin, isLetGo);
        return (cost * CostWeight) + harm;
    }

    private Finding Refuse(Score score)
    {
        var stuck = _places[LastReached()];
        var section = score.Sections[stuck.Section];
        var note = section.Notes[stuck.Note];
        var (capacity, shortest) = (_need.CapacitySeconds.ToDouble(), _need.ShortestBreathSeconds.ToDouble());
        return new Finding(
            VoiceFindingCode.NoBreathPlan,
            Severity.Error,
            string.Create(
                CultureInfo.InvariantCulture,
                $"from its note {stuck.Note - section.Lines[note.LineIndex].FirstNote + 1} on, no breath of {shortest:0.0#} s can be placed before {capacity:0.0} s have been sung"))
        {
            Place = score.PlaceOf(stuck.Section, note),
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
                var spans = _places.SpansFrom(from);
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
