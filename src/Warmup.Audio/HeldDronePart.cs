namespace Warmup.Audio;

/// <summary>A sruti box: the different pitches of the strings, held throughout.</summary>
internal sealed class HeldDronePart : SoundPart
{
    // The project's own setting: slow enough to begin unnoticed.
    private const double EdgeSeconds = 0.5;

    private readonly List<Tone> _tones = [];

    public HeldDronePart(WavPlan plan, Drone drone)
    {
        var rate = plan.Options.SampleRate;
        var sine = WaveTable.Sine();
        var pitches = new List<double>();
        foreach (var drawn in drone.Strings)
        {
            // Two strings of the same pitch would only be louder.
            if (!pitches.Contains(drawn.Hz))
            {
                pitches.Add(drawn.Hz);
            }
        }

        var gain = GainBudget.Drone * GainBudget.Factor(plan.Options.DroneDecibels) / pitches.Count;
        Span<double> amplitudes = stackalloc double[WaveTable.MostHarmonics];
        foreach (var hz in pitches)
        {
            var harmonics = amplitudes[..WaveTable.HarmonicsOf(hz, rate)];
            Spectrum.Reed(harmonics);
            var table = new WaveTable();
            table.Fill(sine, harmonics);
            var tone = new Tone(table);
            tone.Start(hz / rate, gain, 1, ToneShape.Of(plan.Frames, EdgeSeconds, EdgeSeconds, rate));
            _tones.Add(tone);
        }
    }

    protected override void Add(Span<double> block, long end)
    {
        foreach (var tone in _tones)
        {
            tone.AddTo(block);
        }
    }
}
