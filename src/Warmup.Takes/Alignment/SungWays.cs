using System.Runtime.InteropServices;

namespace Warmup.Takes;

/// <summary>
/// The ways by which an alignment came to its notes: each note with the one before it, and where another way was nearly as cheap, with that one
/// too, so that what the two do not share can be doubted.
/// </summary>
internal sealed class SungWays
{
    /// <summary>How much more another way may cost and still be remembered.</summary>
    public const double MostBehind = 12;

    // How often a way may part from the best one and from its rivals to be looked at, and how much more it may cost in all.
    private const int MostPartings = 3;
    private const double MostBehindAgain = 3;

    private const int AtFirst = 100_000;
    private readonly List<Way> _ways = [];
    private int _most = AtFirst;

    /// <summary>A note in a take, and how it was reached.</summary>
    /// <param name="Span">The note and its frames.</param>
    /// <param name="Before">The note before it; -1 where it is the first.</param>
    /// <param name="Notes">What tells the notes up to this one from others; equal where the same were sung.</param>
    /// <param name="Rival">The note before it by the next best way whose notes differ.</param>
    /// <param name="Behind">What that one costs more; endless where there is none.</param>
    public readonly record struct Way(SungSpan Span, int Before, ulong Notes, int Rival, double Behind);

    /// <summary>Whether it is time to drop those that were given up.</summary>
    public bool IsFull => _ways.Count > _most;

    /// <summary>What tells the notes up to one and with another from others.</summary>
    public static ulong Then(ulong notes, int note) => unchecked((notes ^ (ulong)(note + 1)) * 1_099_511_628_211);

    public int Add(in Way way)
    {
        _ways.Add(way);
        return _ways.Count - 1;
    }

    /// <summary>A way's last note and its frames.</summary>
    public SungSpan SpanOf(int way) => _ways[way].Span;

    /// <summary>The notes up to a way's; 0 before the first.</summary>
    public ulong NotesOf(int way) => way < 0 ? 0 : _ways[way].Notes;

    /// <summary>Drops the ways to which none leads that is still in play, so that memory does not grow with what was given up.</summary>
    /// <param name="inPlay">The ways in play.</param>
    /// <returns>The new number of each way that is kept.</returns>
    public int[] Keep(IEnumerable<int> inPlay)
    {
        var isKept = new bool[_ways.Count];
        foreach (var way in inPlay)
        {
            Mark(way);
        }

        // A way stands after those that it leads back to.
        for (var w = _ways.Count - 1; w >= 0; w--)
        {
            if (isKept[w])
            {
                Mark(_ways[w].Before);
                Mark(double.IsPositiveInfinity(_ways[w].Behind) ? -1 : _ways[w].Rival);
            }
        }

        var (numbers, count) = (new int[_ways.Count], 0);
        for (var w = 0; w < numbers.Length; w++)
        {
            if (isKept[w])
            {
                var way = _ways[w];
                numbers[w] = count;
                _ways[count++] = way with { Before = At(way.Before), Rival = double.IsPositiveInfinity(way.Behind) ? -1 : At(way.Rival) };
            }
        }

        CollectionsMarshal.SetCount(_ways, count);
        _most = Math.Max(AtFirst, 2 * count);
        return numbers;

        int At(int way) => way < 0 ? -1 : numbers[way];

        void Mark(int way)
        {
            if (way >= 0)
            {
                isKept[way] = true;
            }
        }
    }

    /// <summary>The notes of a way from the first on, each with what the best way costs more that does not have it there.</summary>
    public TakeAlignment Trace(in Reached end)
    {
        var chain = new List<int>();
        for (var w = end.Way; w >= 0; w = _ways[w].Before)
        {
            chain.Add(w);
        }

        chain.Reverse();
        var place = new Dictionary<int, int>();
        for (var s = 0; s < chain.Count; s++)
        {
            place.Add(chain[s], s);
        }

        var margins = new double[chain.Count];
        Array.Fill(margins, double.PositiveInfinity);
        Doubt(end.Way, end.Rival, end.RivalCost - end.Cost);
        foreach (var w in chain)
        {
            Doubt(_ways[w].Before, _ways[w].Rival, _ways[w].Behind);
        }

        return new TakeAlignment([.. chain.Select(w => _ways[w].Span)], margins, end.Cost);

        void Doubt(int way, int rival, double behind)
        {
            if (behind <= MostBehind)
            {
                Part(way, rival, behind, [], [], MostPartings);
            }
        }

        // Both ways back to where their notes are the same; what the first has for itself is doubtful. The other one has rivals of its own, which are followed too.
        void Part(int way, int rival, double behind, List<int> own, List<SungSpan> others, int partings)
        {
            while (NotesOf(way) != NotesOf(rival))
            {
                if (From(way) >= From(rival))
                {
                    own.Add(way);
                    way = _ways[way].Before;
                    continue;
                }

                var there = _ways[rival];
                others.Add(there.Span);
                if (partings > 0 && behind + there.Behind <= MostBehindAgain)
                {
                    Part(way, there.Rival, behind + there.Behind, [.. own], [.. others], partings - 1);
                }

                rival = there.Before;
            }

            foreach (var w in own)
            {
                var span = _ways[w].Span;
                if (!others.Exists(o => o.Note == span.Note && 2 * (Math.Min(o.To, span.To) - Math.Max(o.From, span.From)) > span.To - span.From))
                {
                    margins[place[w]] = Math.Min(margins[place[w]], behind);
                }
            }
        }

        int From(int way) => way < 0 ? -1 : _ways[way].Span.From;
    }
}

/// <summary>How a note of the drill, or the rest after it, was reached: at the least cost, and at the least by other notes.</summary>
internal record struct Reached(double Cost, int Way, double RivalCost, int Rival)
{
    public static readonly Reached Never = new(double.PositiveInfinity, -1, double.PositiveInfinity, -1);

    public readonly bool IsReached => !double.IsPositiveInfinity(Cost);

    public readonly Reached Plus(double cost) => this with { Cost = Cost + cost, RivalCost = RivalCost + cost };

    /// <summary>Takes another way if it is cheaper than what is there, or than its rival and by other notes.</summary>
    public void Offer(SungWays ways, double cost, int way)
    {
        if (cost < Cost)
        {
            if (IsReached && ways.NotesOf(way) != ways.NotesOf(Way))
            {
                (RivalCost, Rival) = (Cost, Way);
            }

            (Cost, Way) = (cost, way);
        }
        else if (cost < RivalCost && cost <= Cost + SungWays.MostBehind && ways.NotesOf(way) != ways.NotesOf(Way))
        {
            (RivalCost, Rival) = (cost, way);
        }
    }

    /// <summary>Takes both ways of another.</summary>
    public void Offer(SungWays ways, in Reached other)
    {
        if (other.IsReached)
        {
            Offer(ways, other.Cost, other.Way);
            if (other.RivalCost <= Cost + SungWays.MostBehind)
            {
                Offer(ways, other.RivalCost, other.Rival);
            }
        }
    }
}
