namespace Warmup.Audio;

/// <summary>A tanpura: each string rings until it is plucked again; its upper harmonics come a little late and fade sooner.</summary>
internal sealed class PluckedDronePart : SoundPart, IDisposable
{
    // All of these are the project's own settings.
    private const double BodyShare = 0.75;
    private const double BodySeconds = 3;
    private const double BodyAttack = 0.012;
    private const double ShineSeconds = 1.2;
    private const double ShineAttack = 0.2;
    private const double DampSeconds = 0.06;
    private const double LastDampSeconds = 1;

    // Strings of one pitch lie up to this far above and below it, evenly, so that they beat slowly against each other; their mean is the pitch.
    private const double SpreadCents = 0.4;

    private readonly WavPlan _plan;
    private readonly PluckedString[] _strings;
    private readonly IEnumerator<DroneStroke> _strokes;
    private bool _hasStroke;

    public PluckedDronePart(WavPlan plan, Drone drone)
    {
        _plan = plan;
        var rate = plan.Options.SampleRate;
        var cycle = drone.CycleSeconds.ToDouble();
        var tables = new (WaveTable Body, WaveTable Shine)[drone.Strings.Count];
        var power = 0.0;
        var sine = WaveTable.Sine();
        _strings = new PluckedString[drone.Strings.Count];
        Span<double> amplitudes = stackalloc double[WaveTable.MostHarmonics];
        for (var i = 0; i < tables.Length; i++)
        {
            var hz = drone.Strings[i].Hz;
            var harmonics = amplitudes[..WaveTable.HarmonicsOf(hz, rate)];
            tables[i] = (new WaveTable(), new WaveTable());
            Spectrum.StringBody(harmonics);
            power += tables[i].Body.Fill(sine, harmonics, hz) * BodyShare * BodyShare * MeanPower(BodySeconds, cycle);
            Spectrum.StringShine(harmonics);
            power += tables[i].Shine.Fill(sine, harmonics, hz) * (1 - BodyShare) * (1 - BodyShare) * MeanPower(ShineSeconds, cycle);
        }

        var gain = GainBudget.DroneGain(power, GainBudget.Drone / MostAtOnce(drone)) * GainBudget.Factor(plan.Options.DroneDecibels);
        for (var i = 0; i < _strings.Length; i++)
        {
            _strings[i] = new PluckedString(
                drone.Strings[i].Hz * Math.Pow(2, Spread(drone, i) / 1200) / rate,
                new Tone(tables[i].Body),
                gain * BodyShare,
                new Tone(tables[i].Shine),
                gain * (1 - BodyShare));
        }

        _strokes = drone.Strokes(plan.Seconds).GetEnumerator();
        _hasStroke = _strokes.MoveNext();
    }

    public void Dispose() => _strokes.Dispose();

    protected override void Add(Span<double> block, long end)
    {
        foreach (var sounding in _strings)
        {
            sounding.AddTo(block);
        }

        // A string plucked in this block has stopped ringing before.
        while (_hasStroke)
        {
            var stroke = _strokes.Current;
            var start = _plan.FrameAt(stroke.Onset);
            if (start >= end)
            {
                return;
            }

            var length = _plan.FrameAt(stroke.Onset + stroke.Length) - start;
            if (length > 0)
            {
                var plucked = _strings[stroke.StringIndex];
                Pluck(plucked, length, start + length == _plan.Frames);
                plucked.AddTo(From(block, start));
            }

            _hasStroke = _strokes.MoveNext();
        }
    }

    private void Pluck(PluckedString plucked, long length, bool isLast)
    {
        var rate = _plan.Options.SampleRate;
        var damp = isLast ? LastDampSeconds : DampSeconds;
        plucked.Body.Start(plucked.Step, plucked.BodyGain, Decay(BodySeconds, rate), ToneShape.Of(length, BodyAttack, damp, rate));
        plucked.Shine.Start(plucked.Step, plucked.ShineGain, Decay(ShineSeconds, rate), ToneShape.Of(length, ShineAttack, damp, rate));
    }

    /// <summary>
    /// The loudest that all strings sound together, counted in freshly plucked strings: when one is plucked the others have faded, and between
    /// strokes the sum only falls.
    /// </summary>
    private static double MostAtOnce(Drone drone)
    {
        var (cycle, stroke) = (drone.CycleSeconds.ToDouble(), drone.StrokeSeconds.ToDouble());
        var most = 0.0;
        for (var plucked = 0; plucked < drone.Strings.Count; plucked++)
        {
            var sum = 0.0;
            for (var i = 0; i < drone.Strings.Count; i++)
            {
                var since = ((plucked - i) * stroke) + (i > plucked ? cycle : 0);
                sum += Math.Exp(-since / BodySeconds);
            }

            most = Math.Max(most, sum);
        }

        return most;
    }

    /// <summary>How far a string lies above its pitch, in cents; 0 where it is the only one of its pitch.</summary>
    private static double Spread(Drone drone, int index)
    {
        var (before, all) = (0, 0);
        for (var i = 0; i < drone.Strings.Count; i++)
        {
            if (drone.Strings[i].Hz == drone.Strings[index].Hz)
            {
                before += i < index ? 1 : 0;
                all++;
            }
        }

        return all == 1 ? 0 : SpreadCents * ((2.0 * before / (all - 1)) - 1);
    }

    /// <summary>The mean of the power over a cycle, where it is 1 at the stroke and the height falls to 1/e in a time.</summary>
    private static double MeanPower(double seconds, double cycle) => seconds / (2 * cycle) * (1 - Math.Exp(-2 * cycle / seconds));

    /// <summary>The part of the height that remains after a frame when 1/e remains after a time.</summary>
    private static double Decay(double seconds, int rate) => Math.Exp(-1 / (seconds * rate));

    private sealed record PluckedString(double Step, Tone Body, double BodyGain, Tone Shine, double ShineGain)
    {
        public void AddTo(Span<double> block)
        {
            Body.AddTo(block);
            Shine.AddTo(block);
        }
    }
}
