namespace Warmup.Audio;

/// <summary>Soft clicks: the count-in, then the aksharas of each section.</summary>
internal sealed class BeatPart : SoundPart
{
    private const int CountIn = -1;

    // The project's own settings: bursts of 30 ms, higher and louder on the beats that count more.
    private const double ClickSeconds = 0.03;

    private readonly WavPlan _plan;
    private readonly double[][] _clicks;
    private readonly int _clickLength;
    private int _section = CountIn;
    private long _beat;

    public BeatPart(WavPlan plan)
    {
        _plan = plan;
        _clickLength = (int)(ClickSeconds * plan.Options.SampleRate);

        // In the order of the accents.
        _clicks = [Click(900, 0.5), Click(1200, 0.7), Click(1600, 1)];
    }

    private int Sections => _plan.Options.HasBeat ? _plan.Score.Sections.Count : 0;

    protected override void Add(Span<double> block, long end)
    {
        while (ToBeat())
        {
            var start = _section == CountIn ? _plan.FrameOfCountIn((int)_beat) : _plan.FrameOf(_section, _beat);
            if (start >= end)
            {
                return;
            }

            // Where a section of free rhythm ends right after a beat, the next section's first click would fall into this one.
            var sectionEnd = _section == CountIn ? _plan.FrameOf(0, Rational.Zero) : _plan.EndFrameOf(_section);
            if (start + _clickLength <= sectionEnd)
            {
                var click = _clicks[(int)Accent()].AsSpan();
                var first = Math.Max(start, Frame);
                var target = From(block, first);
                click = click[(int)(first - start)..];
                for (var i = 0; i < Math.Min(click.Length, target.Length); i++)
                {
                    target[i] += click[i];
                }

                if (start + _clickLength > end)
                {
                    return;
                }
            }

            _beat++;
        }
    }

    /// <summary>Moves to the section that has the next beat.</summary>
    private bool ToBeat()
    {
        if (_section == CountIn)
        {
            if (_beat < _plan.CountInBeats)
            {
                return true;
            }

            _section = 0;
            _beat = 0;
        }

        while (_section < Sections && _beat >= _plan.LengthOf(_section))
        {
            _section++;
            _beat = 0;
        }

        return _section < Sections;
    }

    /// <summary>The accent of the next beat. The count-in ends where the first avartana begins.</summary>
    private BeatAccent Accent() => _section == CountIn
        ? _plan.Score.Sections[0].Meter.AccentOf(_beat - _plan.CountInBeats)
        : _plan.Score.Sections[_section].Meter.AccentOf(_beat);

    /// <summary>A burst of a sine under a raised cosine.</summary>
    private double[] Click(double hz, double height)
    {
        var gain = height * GainBudget.Beat * GainBudget.Factor(_plan.Options.BeatDecibels);
        var shape = new ToneShape(_clickLength, _clickLength / 2, _clickLength - (_clickLength / 2));
        var click = new double[_clickLength];
        for (var n = 0; n < click.Length; n++)
        {
            click[n] = gain * shape.At(n) * Math.Sin(2 * Math.PI * hz * n / _plan.Options.SampleRate);
        }

        return click;
    }
}
