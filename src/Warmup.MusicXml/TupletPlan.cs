using System.Globalization;

namespace Warmup.MusicXml;

/// <summary>
/// Divides a measure into plain spans and tuplets so that every onset can be written, with the fewest pieces. Tuplets fill spans of
/// one, two or four beats or of halves of a beat, so they stand where a reader expects them, and never inside each other.
/// </summary>
/// <param name="usual">The notes and rests of most measures.</param>
internal sealed class TupletPlan(int usual)
{
    // The five gatis and breaths in 24ths never need more parts, and nobody could read them.
    private const int MostSlots = 64;
    private const int WidestBeats = 4;
    private const int Impossible = int.MaxValue / 4;

    private readonly List<long> _onsets = new(usual);
    private readonly List<TupletSpan> _spans = new(1);
    private TickGrid _grid;
    private long _cycle;

    /// <summary>The spans of a measure, in order and without gaps; plain spans that touch are one.</summary>
    /// <param name="grid">The section's grid.</param>
    /// <param name="events">The measure's events, without gaps.</param>
    /// <param name="cycle">The ticks after which the section's unit falls on a beat again; 0 where it always does.</param>
    public List<TupletSpan> Of(TickGrid grid, List<MeasureEvent> events, long cycle)
    {
        _grid = grid;
        _cycle = cycle;
        _onsets.Clear();
        _spans.Clear();
        var plain = true;
        for (var i = 1; i < events.Count; i++)
        {
            _onsets.Add(events[i].Start);
            plain &= events[i].Start % grid.Shortest == 0;
        }

        var length = events[^1].End;
        if (plain && length % grid.Shortest == 0)
        {
            _spans.Add(new TupletSpan(0, length, 0, 0));
            return _spans;
        }

        // The longest value is a whole note, or a dotted one.
        var widest = grid.Parts == 1 ? grid.Whole : grid.Whole * 3 / 2;
        var at = 0L;
        var low = 0;
        while (at < length)
        {
            var span = grid.Akshara * WidestBeats;
            while (span > widest || at % span != 0 || at + span > length)
            {
                span /= 2;
                if (span < grid.Shortest)
                {
                    throw Unwritable("a measure's length", length);
                }
            }

            var high = low;
            while (high < _onsets.Count && _onsets[high] < at + span)
            {
                high++;
            }

            if (Solve(at, span, low, high) >= Impossible)
            {
                throw Unwritable("an onset in a measure", FirstOddOnset(at));
            }

            at += span;
            low = high < _onsets.Count && _onsets[high] == at ? high + 1 : high;
        }

        Merge();
        return _spans;
    }

    /// <summary>How many of a number of slots the first note value covers: all of them, or the largest power of two.</summary>
    public static int FirstSlots(int slots)
    {
        var power = 1 << int.Log2(slots);
        return slots == power || 2 * slots == 3 * power ? slots : power;
    }

    /// <summary>Adds the spans of a part of the measure and returns their cost: the number of notes and rests to write.</summary>
    private int Solve(long at, long length, int low, int high)
    {
        if (!HasOddOnset(low, high))
        {
            // A sound or silence that continues from before costs nothing: plain spans are joined again.
            _spans.Add(new TupletSpan(at, length, 0, 0));
            return high - low + (at == 0 || (low > 0 && _onsets[low - 1] == at) ? 1 : 0);
        }

        var mark = _spans.Count;
        var divided = Impossible;
        var half = length / 2;
        if (half >= _grid.Shortest)
        {
            var middle = low;
            while (middle < high && _onsets[middle] < at + half)
            {
                middle++;
            }

            var after = middle < high && _onsets[middle] == at + half ? middle + 1 : middle;
            divided = Math.Min(Impossible, Solve(at, half, low, middle) + Solve(at + half, half, after, high));
        }

        var whole = CostOfTuplet(at, length, low, high, out var slots);

        // Where both cost the same, a tuplet of an odd number is not cut below the beat or the speed's own tuplet.
        if (whole < divided || (whole == divided && whole < Impossible && int.IsOddInteger(slots) && length <= Math.Max(_cycle, _grid.Akshara)))
        {
            _spans.RemoveRange(mark, _spans.Count - mark);
            _spans.Add(new TupletSpan(at, length, slots, NormalOf(slots)));
            return whole;
        }

        return divided;
    }

    private int CostOfTuplet(long at, long length, int low, int high, out int slots)
    {
        slots = 0;
        var slot = length;
        for (var i = low; i < high; i++)
        {
            slot = Rational.Gcd(slot, _onsets[i] - at);
        }

        if (length / slot > MostSlots)
        {
            return Impossible;
        }

        slots = (int)(length / slot);
        var normal = NormalOf(slots);
        if (normal == 0 || length / normal < _grid.Shortest)
        {
            return Impossible;
        }

        var cost = 0;
        var from = at;
        for (var i = low; i <= high; i++)
        {
            var to = i < high ? _onsets[i] : at + length;
            for (var left = (int)((to - from) / slot); left > 0; left -= FirstSlots(left))
            {
                // The first piece is the longest: more than a dotted whole note cannot be written.
                if (!_grid.TryGetValue(length / normal * FirstSlots(left), out _, out _))
                {
                    return Impossible;
                }

                cost++;
            }

            from = to;
        }

        return cost;
    }

    /// <summary>
    /// The largest number of plain note values that is not above the slots: a power of two, or three times one where the beat has three
    /// parts; 0 where there is none.
    /// </summary>
    private int NormalOf(int slots) => slots < _grid.Parts ? 0 : _grid.Parts << int.Log2(slots / _grid.Parts);

    private bool HasOddOnset(int low, int high)
    {
        for (var i = low; i < high; i++)
        {
            if (_onsets[i] % _grid.Shortest != 0)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The first onset after a point that no plain value reaches.</summary>
    private long FirstOddOnset(long at) => _onsets.Find(o => o > at && o % _grid.Shortest != 0);

    private void Merge()
    {
        var kept = 0;
        for (var i = 1; i < _spans.Count; i++)
        {
            if (_spans[i].Slots == 0 && _spans[kept].Slots == 0)
            {
                _spans[kept] = _spans[kept] with { Length = _spans[kept].Length + _spans[i].Length };
            }
            else
            {
                _spans[++kept] = _spans[i];
            }
        }

        _spans.RemoveRange(kept + 1, _spans.Count - kept - 1);
    }

    private ExportException Unwritable(string what, long ticks) => new(string.Create(
        CultureInfo.InvariantCulture,
        $"{what} of {new Rational(ticks, _grid.Akshara)} aksharas needs a note shorter than a 128th or a tuplet of more than {MostSlots} parts"));
}
