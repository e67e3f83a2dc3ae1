using System.Globalization;

namespace Warmup.Reading;

/// <summary>The repeat signs and endings of a part, and the order of measures that they ask for.</summary>
internal sealed class XmlRepeats
{
    // As a drill bounds its repetitions.
    private const int MostTimes = 1_000;

    private readonly List<Signs> _measures = [];
    private ValueList<int> _ending;
    private bool _beginsNext;
    private bool _hasSigns;

    public void BeginMeasure()
    {
        _measures.Add(new Signs(_beginsNext, 0, _ending));
        _beginsNext = false;
    }

    /// <summary>A sign at which a repeated stretch begins: with this measure, or with the next one.</summary>
    public void Begin(bool withNext)
    {
        _hasSigns = true;
        _beginsNext |= withNext;
        _measures[^1] = _measures[^1] with { Begins = _measures[^1].Begins || !withNext };
    }

    /// <summary>A sign that leads back: after this measure, or after the one before.</summary>
    /// <param name="times">How often the stretch is sung in all, as the file says it; <see langword="null"/> for twice.</param>
    /// <param name="afterBefore">Whether it stands at this measure's beginning.</param>
    public void Back(string? times, bool afterBefore)
    {
        _hasSigns = true;
        var at = _measures.Count - (afterBefore ? 2 : 1);
        if (at >= 0)
        {
            _measures[at] = _measures[at] with { Times = int.TryParse(times, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count is >= 2 and <= MostTimes ? count : 2 };
        }
    }

    /// <summary>An ending begins with this measure, or ends with it.</summary>
    /// <param name="numbers">The times that it is for, such as <c>1, 2</c>.</param>
    /// <param name="begins">Whether it begins.</param>
    public void Ending(string? numbers, bool begins)
    {
        _hasSigns = true;
        _ending = !begins ? default : (numbers ?? string.Empty).Split((char[])[',', ' ', '.'], StringSplitOptions.RemoveEmptyEntries)
            .Select(n => int.TryParse(n, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : 0)
            .Where(n => n is >= 1 and <= MostTimes).Take(64).ToValueList();
        if (begins)
        {
            _measures[^1] = _measures[^1] with { Ending = _ending };
        }
    }

    /// <summary>The indexes of the measures at which a repeated stretch begins or what follows one.</summary>
    public IEnumerable<int> Edges => Enumerable.Range(0, _measures.Count).Where(m => _measures[m].Begins || (m > 0 && _measures[m - 1].Times > 0));

    /// <summary>The indexes of the measures in the order in which they are sung; empty where that is the written one; <see langword="null"/> where it has more than the most measures.</summary>
    public List<int>? Order()
    {
        var order = new List<int>();
        var (at, start, pass, hasJumped) = (0, 0, 1, false);
        while (_hasSigns && at < _measures.Count)
        {
            var measure = _measures[at];
            if (!hasJumped && (measure.Begins || (measure.Ending.IsEmpty && at > 0 && !_measures[at - 1].Ending.IsEmpty)))
            {
                (start, pass) = (at, 1);
            }

            hasJumped = false;
            if (measure.Ending.IsEmpty || measure.Ending.Contains(pass))
            {
                order.Add(at);
                if (order.Count > ReadingLimits.Measures)
                {
                    return null;
                }

                if (measure.Times > 0 && pass < Math.Max(measure.Times, LastEnding(at)))
                {
                    (at, pass, hasJumped) = (start, pass + 1, true);
                    continue;
                }

                if (measure.Times > 0 && measure.Ending.IsEmpty)
                {
                    (start, pass) = (at + 1, 1);
                }
            }

            at++;
        }

        return order.Count > 0 && !order.SequenceEqual(Enumerable.Range(0, _measures.Count)) ? order : [];
    }

    /// <summary>The highest number of the endings around a measure; 0 where it is in none.</summary>
    private int LastEnding(int at)
    {
        var last = 0;
        for (var m = at; m < _measures.Count && !_measures[m].Ending.IsEmpty; m++)
        {
            last = Math.Max(last, _measures[m].Ending.Max());
        }

        return last;
    }

    private readonly record struct Signs(bool Begins, int Times, ValueList<int> Ending);
}
