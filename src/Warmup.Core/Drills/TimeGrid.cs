using System.Globalization;

namespace Warmup;

/// <summary>The whole-number grid of a drill, and where its lines end on it.</summary>
internal sealed class TimeGrid
{
    /// <summary>The longest line in aksharas (the project's own bound).</summary>
    private const int LongestLine = 4_096;

    /// <summary>The finest grid, in parts of an akshara: what MusicXML's divisions hold.</summary>
    private const long MostResolution = 16_383;

    private readonly Delivery _delivery;
    private readonly bool _isFree;
    private readonly long _leastHold;
    private readonly long[] _angaEnds;
    private readonly long _eduppu;
    private readonly bool _beginsEachLine;

    private readonly ValueList<Speed> _speeds;
    private readonly ValueList<Line> _lines;

    // Whether every note takes one unit; if not, for each speed and line the steps before its last note, those of its last note and of the
    // silence after that: all that decides where lines end.
    private readonly bool _isInUnits;
    private readonly (long Lead, long Last, long Silence)[] _spans = [];

    // The last units and their steps: notes of one length follow each other.
    private Rational _units;
    private Speed _speed;
    private long _steps;

    // Whether a breath so far takes half of an odd number of steps.
    private bool _halvesStep;

    private TimeGrid(Drill drill, Expansion expansion, in LineSurvey survey, int resolution)
    {
        Resolution = resolution;
        _delivery = drill.Delivery;
        _isFree = drill.Meter.IsFree;
        Avartana = (long)drill.Meter.Beats * resolution;
        CountIn = Avartana * drill.CountIn;
        _leastHold = _delivery.IsLineByLine ? Whole(_delivery.LeastHold) : 0;
        _eduppu = Whole(drill.Eduppu);
        _beginsEachLine = _delivery.IsLineByLine || _delivery.Fill != Fill.None;
        _angaEnds = _delivery.Fill == Fill.Anga ? new long[drill.Meter.Groups.Count] : [];
        var end = 0L;
        for (var i = 0; i < _angaEnds.Length; i++)
        {
            end += (long)drill.Meter.Groups[i] * resolution;
            _angaEnds[i] = end;
        }

        (_speeds, _lines, _isInUnits) = (drill.Speeds, expansion.Lines, survey.IsInUnits);
        if (!_isInUnits)
        {
            _spans = new (long, long, long)[_speeds.Count * _lines.Count];
            for (var i = 0; i < _spans.Length; i++)
            {
                _spans[i] = Measure(_lines[i % _lines.Count].AsSpan(), _speeds[i / _lines.Count]);
            }
        }
    }

    /// <summary>Grid steps an akshara.</summary>
    public int Resolution { get; }

    /// <summary>The steps of an avartana; 0 in free rhythm.</summary>
    public long Avartana { get; }

    /// <summary>The steps of the count-in.</summary>
    public long CountIn { get; }

    /// <summary>
    /// Whether lines must be put in time once to find the grid: a breath within an avartana or an anga may take half of a note that no step
    /// divides.
    /// </summary>
    public bool NeedsTrial => _delivery.IsLineByLine && _delivery.FillBy == FillBy.Room && !Flows;

    /// <summary>Whether a time through the drill takes the same steps wherever it begins.</summary>
    public bool IsSteady => !_beginsEachLine && _eduppu == 0;

    /// <summary>Where the first time through the drill begins to take its steps: after the count-in, and after the silence that no later line has.</summary>
    public long Start => CountIn + EduppuOf(0) - EduppuOf(1);

    public static TimeGrid For(Drill drill, Expansion expansion, in LineSurvey survey)
    {
        if (drill.Meter.IsFree && drill.Eduppu.Sign > 0)
        {
            throw Refusal("free rhythm has no beat after which a line could begin", "leave out the eduppu, or choose a meter");
        }

        if (drill.Meter.IsFree && (drill.CountIn > 0 || (drill.Delivery.Fill != Fill.None && !drill.Delivery.IsLineByLine)))
        {
            throw drill.CountIn > 0
                ? Refusal("free rhythm has no beat to count in", "leave out the count-in, or choose a meter")
                : Refusal("free rhythm has no anga or avartana to fill lines up to", "leave lines unfilled, or choose a meter");
        }

        var resolution = Rational.Lcm(Fractions(drill, expansion, survey), drill.Eduppu.Denominator);
        if (drill.Delivery.IsLineByLine)
        {
            resolution = Rational.Lcm(resolution, drill.Delivery.LeastHold.Denominator);
            for (var round = 0; round < drill.Tempo.Rounds; round++)
            {
                resolution = Rational.Lcm(resolution, drill.Delivery.BreathAksharas(drill.Tempo.At(round)).Denominator);
            }
        }

        if (drill.Meter.IsFree)
        {
            // Bars of free rhythm fall on quarters of an akshara at the finest.
            resolution = Rational.Lcm(resolution, MeasurePlan.FreeGrid);
        }

        return new TimeGrid(drill, expansion, survey, (int)Bounded(survey.HasHalves ? 2 * resolution : resolution));
    }

    /// <summary>Grid steps of a unit; 0 where it does not fall on the grid, since no note then takes one.</summary>
    public long Unit(Speed speed) => (speed.Unit * Resolution) is { IsInteger: true } steps ? steps.Numerator : 0;

    /// <summary>Grid steps of a note without the silence after it.</summary>
    public long Steps(in LineNote note, Speed speed)
    {
        if (note.Length != _units || speed != _speed)
        {
            (_units, _speed, _steps) = (note.Length, speed, Whole(note.Length * speed.Unit));
        }

        return _steps;
    }

    /// <summary>Grid steps of a number of aksharas; a number that does not fall on the grid is an error of the builder.</summary>
    public long Whole(Rational aksharas)
    {
        var steps = aksharas * Resolution;
        return steps.IsInteger ? steps.Numerator : throw new InvalidOperationException($"{aksharas} aksharas do not fall on the grid of 1/{Resolution}");
    }

    /// <summary>Aksharas of a number of steps.</summary>
    public Rational Aksharas(long steps) => new(steps, Resolution);

    /// <summary>The steps of a breath at a tempo; 0 where lines run on.</summary>
    public long Breath(Rational tempo) => _delivery.IsLineByLine ? Whole(_delivery.BreathAksharas(tempo)) : 0;

    /// <summary>What becomes of the last note of a line.</summary>
    /// <param name="onset">Where it begins.</param>
    /// <param name="length">Its written length.</param>
    /// <param name="rest">The silence written after it; line by line the breath lies in it.</param>
    /// <param name="breath">The breath after it.</param>
    /// <returns>Where it ends, where the breath ends, and where the next line begins.</returns>
    public (long NoteEnd, long BreathEnd, long Next) Close(long onset, long length, long rest, long breath)
    {
        if (_delivery.IsLineByLine)
        {
            return CloseWithBreath(onset, length, rest, breath);
        }

        var written = onset + length;
        var next = Flows ? written + rest : Boundary(written + rest);
        var end = _delivery.FillBy != FillBy.Rest && rest == 0 ? next : written;
        return (end, end, next);
    }

    private (long NoteEnd, long BreathEnd, long Next) CloseWithBreath(long onset, long length, long rest, long breath)
    {
        breath = Math.Max(breath, rest);
        var least = onset + Math.Max(length, _leastHold);
        if (Flows)
        {
            var next = (least + breath + Resolution - 1) / Resolution * Resolution;
            return (least, next, next);
        }

        if (_delivery.FillBy == FillBy.Room)
        {
            var end = Boundary(onset + length + rest);
            if (_eduppu > 0 && Boundary(onset + length + rest - _eduppu) < end)
            {
                // A line that the silence before it has pushed over the end is not held through the time that is left.
                return (least, Math.Min(least + breath, end), end);
            }

            return (end - Math.Max(rest, BreathWithin(end - onset, length, end - least, breath)), end, end);
        }

        var boundary = Boundary(least + breath);
        return _delivery.FillBy == FillBy.Hold ? (boundary - breath, boundary, boundary) : (least, least + breath, boundary);
    }

    /// <summary>The same grid, divided once more where a breath takes half of a note that no step divides.</summary>
    public TimeGrid WithHalves(Drill drill, Expansion expansion, in LineSurvey survey) => _halvesStep
        ? new TimeGrid(drill, expansion, survey, (int)Bounded(2L * Resolution))
        : this;

    /// <summary>The breath that a line leaves in its avartana or anga: the whole breath where it can.</summary>
    /// <param name="span">The last note with the room after it.</param>
    /// <param name="length">The written length of the last note, at least half of which is sung.</param>
    /// <param name="room">What the least hold leaves of the span; negative where it leaves nothing.</param>
    /// <param name="breath">The whole breath.</param>
    private long BreathWithin(long span, long length, long room, long breath)
    {
        if (room >= breath || 2 * room >= span)
        {
            return Math.Min(room, breath);
        }

        if (2 * (span - breath) >= length)
        {
            return breath;
        }

        _halvesStep |= length % 2 != 0;
        return span - (length / 2);
    }

    /// <summary>The silence before the first note of a line, in steps.</summary>
    /// <param name="line">The line's number in the section, from 0.</param>
    public long EduppuOf(int line) => line == 0 || _beginsEachLine ? _eduppu : 0;

    /// <summary>Whether lines are not filled up.</summary>
    private bool Flows => _isFree || _delivery.Fill == Fill.None;

    /// <summary>The steps of a line before its last note, those of its last note, and of the silence written after it.</summary>
    /// <param name="speed">The index of the speed.</param>
    /// <param name="unit">The steps of a unit at that speed.</param>
    /// <param name="line">The index of the pattern's line.</param>
    public (long Lead, long Last, long Silence) SpanOf(int speed, long unit, int line) => _isInUnits
        ? ((_lines.AsSpan()[line].Count - 1) * unit, unit, 0)
        : _spans[(speed * _lines.Count) + line];

    /// <summary>Where one time through the drill ends that begins at a point.</summary>
    public long After(long at, Rational tempo)
    {
        var (breath, eduppu) = (Breath(tempo), EduppuOf(1));
        for (var s = 0; s < _speeds.Count; s++)
        {
            var unit = Unit(_speeds[s]);
            for (var l = 0; l < _lines.Count; l++)
            {
                var onset = at;
                var (lead, last, silence) = SpanOf(s, unit, l);
                at = Close(at + eduppu + lead, last, silence, breath).Next;
                Bound(at, onset, l);
            }
        }

        return at;
    }

    /// <summary>Refuses a line or a drill that is too long.</summary>
    public void Bound(long next, long at, int line)
    {
        if (next - at > (long)LongestLine * Resolution || next > int.MaxValue)
        {
            throw TooLong(next, at, line);
        }
    }

    private PatternException TooLong(long next, long at, int line)
    {
        if (next - at <= (long)LongestLine * Resolution)
        {
            return Refusal("the drill is too long to be put in time", "take fewer lines or longer units");
        }

        var refusal = Refusal(
            string.Create(CultureInfo.InvariantCulture, $"a line lasts {Aksharas(next - at)} aksharas; the most is {LongestLine}"),
            "take shorter lines or units");
        return new PatternException(refusal.Finding with { Place = new ScorePlace(1, line + 1) });
    }

    /// <summary>The first end of an anga or avartana that is not before a point.</summary>
    private long Boundary(long at)
    {
        var within = at % Avartana;
        if (within == 0)
        {
            return at;
        }

        var end = Avartana;
        if (_delivery.Fill == Fill.Anga)
        {
            end = _angaEnds[^1];
            for (var i = _angaEnds.Length - 1; i >= 0 && _angaEnds[i] >= within; i--)
            {
                end = _angaEnds[i];
            }
        }

        return at - within + end;
    }

    private (long Lead, long Last, long Silence) Measure(ReadOnlySpan<LineNote> notes, Speed speed)
    {
        var lead = 0L;
        foreach (ref readonly var note in notes[..^1])
        {
            lead += Steps(note, speed) + Silence(note, speed);
        }

        return (lead, Steps(notes[^1], speed), Silence(notes[^1], speed));
    }

    /// <summary>Grid steps of the silence after a note.</summary>
    public long Silence(in LineNote note, Speed speed) => note.HasRest ? Whole(note.Rest * speed.Unit) : 0;

    private static long Fractions(Drill drill, Expansion expansion, in LineSurvey survey)
    {
        long resolution = 1;
        foreach (var speed in drill.Speeds)
        {
            var unit = speed.Unit;
            if (survey.IsInUnits)
            {
                resolution = Bounded(Rational.Lcm(resolution, unit.Denominator));
                continue;
            }

            Rational last = default;
            foreach (ref readonly var line in expansion.Lines.AsSpan())
            {
                foreach (ref readonly var note in line.AsSpan())
                {
                    if (note.Length != last)
                    {
                        last = note.Length;
                        resolution = Bounded(Rational.Lcm(resolution, (unit * last).Denominator));
                    }

                    if (note.HasRest)
                    {
                        resolution = Bounded(Rational.Lcm(resolution, (unit * note.Rest).Denominator));
                    }
                }
            }
        }

        return resolution;
    }

    /// <summary>Refuses a grid that is too fine.</summary>
    private static long Bounded(long resolution) => resolution <= MostResolution
        ? resolution
        : throw Refusal(
            string.Create(CultureInfo.InvariantCulture, $"the lengths need {resolution} parts of an akshara; the most is {MostResolution}"),
            "use simpler fractions of a unit, or fewer different gatis");

    private static PatternException Refusal(string message, string fix) =>
        new(new Finding(FindingCode.TimeRefused, Severity.Error, message, fix));
}
