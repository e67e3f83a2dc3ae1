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

        var most = GainBudget.Drone / pitches.Count;
        var tables = pitches.ConvertAll(_ => new WaveTable());
        var power = 0.0;
        Span<double> amplitudes = stackalloc double[WaveTable.MostHarmonics];
        for (var i = 0; i < pitches.Count; i++)
        {
            var harmonics = amplitudes[..WaveTable.HarmonicsOf(pitches[i], rate)];
            Spectrum.Reed(harmonics);
            power += tables[i].Fill(sine, harmonics, pitches[i]);
        }

        var gain = GainBudget.DroneGain(power, most) * GainBudget.Factor(plan.Options.DroneDecibels);
        for (var i = 0; i < pitches.Count; i++)
        {
            var tone = new Tone(tables[i]);
            tone.Start(pitches[i] / rate, gain, 1, ToneShape.Of(plan.Frames, EdgeSeconds, EdgeSeconds, rate));
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
