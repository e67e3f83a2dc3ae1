namespace Warmup.Voices;

/// <summary>When the whole grid steps of a section come: stretches of one tempo each, one after the other. Immutable.</summary>
internal sealed class StepClock
{
    private readonly Stretch[] _stretches;
    private readonly int _resolution;

    /// <summary>The clock of one tempo.</summary>
    /// <param name="tempo">Aksharas a minute.</param>
    /// <param name="resolution">Steps an akshara.</param>
    public StepClock(Rational tempo, int resolution) => (_stretches, _resolution) = ([new Stretch(0, Rational.Zero, tempo)], resolution);

    private StepClock(Stretch[] stretches, int resolution) => (_stretches, _resolution) = (stretches, resolution);

    /// <summary>How many tempi follow each other.</summary>
    public int Count => _stretches.Length;

    /// <summary>Whether the tempo stays the same.</summary>
    public bool IsSteady => _stretches.Length == 1;

    /// <summary>The last tempo, in aksharas a minute: the fastest, since the tempo of a drill never falls.</summary>
    public Rational Fastest => _stretches[^1].Tempo;

    /// <summary>The clock of a section's steps at other tempi, as many as its own.</summary>
    /// <param name="section">The section.</param>
    /// <param name="tempo">The tempi.</param>
    public static StepClock Of(Section section, TempoRamp tempo)
    {
        var stretches = new Stretch[section.TempoChanges.Count + 1];
        stretches[0] = new Stretch(0, Rational.Zero, tempo.Start);
        var (onset, seconds) = (Rational.Zero, Rational.Zero);
        for (var s = 1; s < stretches.Length; s++)
        {
            var next = section.TempoChanges[s - 1].Onset;
            seconds = SecondsSum.Rounded(seconds + ((next - onset) * 60 / stretches[s - 1].Tempo));
            onset = next;
            stretches[s] = new Stretch((next * section.Resolution).Numerator, seconds, tempo.At(s));
        }

        return new StepClock(stretches, section.Resolution);
    }

    /// <summary>The clock of a section with its own tempi.</summary>
    public static StepClock Of(Section section)
    {
        var stretches = new Stretch[section.TempoChanges.Count + 1];
        stretches[0] = new Stretch(0, Rational.Zero, section.Tempo);
        for (var s = 1; s < stretches.Length; s++)
        {
            // A tempo changes where a line begins, which is a whole step.
            var change = section.TempoChanges[s - 1];
            stretches[s] = new Stretch((change.Onset * section.Resolution).Numerator, change.Seconds, change.Tempo);
        }

        return new StepClock(stretches, section.Resolution);
    }

    /// <summary>The same clock with finer steps.</summary>
    public StepClock Finer(int factor) => new(Array.ConvertAll(_stretches, s => s with { Start = s.Start * factor }), _resolution * factor);

    /// <summary>The step at which a stretch begins.</summary>
    public long StartOf(int stretch) => _stretches[stretch].Start;

    /// <summary>The step at which a stretch ends: where the next one begins, if there is one.</summary>
    public long EndOf(int stretch) => stretch + 1 < _stretches.Length ? _stretches[stretch + 1].Start : long.MaxValue;

    /// <summary>The steps a second in a stretch.</summary>
    public Rational PerSecond(int stretch) => _stretches[stretch].Tempo * _resolution / 60;

    /// <summary>The stretch in which a step lies; where the tempo changes, the new one.</summary>
    /// <param name="step">The step.</param>
    /// <param name="from">A stretch that does not begin later.</param>
    public int StretchAt(long step, int from = 0)
    {
        while (step >= EndOf(from))
        {
            from++;
        }

        return from;
    }

    /// <summary>When a step of a stretch comes, in seconds from the section's beginning.</summary>
    public Rational SecondsAt(long step, int stretch) => _stretches[stretch].Seconds + Seconds(step - _stretches[stretch].Start, stretch);

    /// <summary>How long a number of steps of a stretch lasts.</summary>
    public Rational Seconds(long steps, int stretch) => new Rational(steps, _resolution) * 60 / _stretches[stretch].Tempo;

    /// <summary>Whether a number of steps of a stretch lasts as long as a number of parts of a second, or longer.</summary>
    /// <param name="steps">The steps.</param>
    /// <param name="stretch">The stretch.</param>
    /// <param name="seconds">The parts.</param>
    /// <param name="parts">How many parts a second has.</param>
    public bool Lasts(int steps, int stretch, long seconds, long parts)
    {
        // As Seconds has it, without a fraction, whose lowest terms cost more than the comparison.
        var tempo = _stretches[stretch].Tempo;
        return (Int128)(60 * steps * parts) * tempo.Denominator >= (Int128)(seconds * _resolution) * tempo.Numerator;
    }

    /// <summary>The seconds from one step to another.</summary>
    public Rational Between(long first, int firstStretch, long last, int lastStretch) => firstStretch == lastStretch
        ? Seconds(last - first, lastStretch)
        : SecondsAt(last, lastStretch) - SecondsAt(first, firstStretch);

    /// <summary>From a step on, which comes at a second, a tempo holds.</summary>
    private readonly record struct Stretch(long Start, Rational Seconds, Rational Tempo);
}
