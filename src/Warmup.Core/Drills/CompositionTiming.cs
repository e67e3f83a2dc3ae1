namespace Warmup;

/// <summary>Puts a composition on the grid.</summary>
internal static class CompositionTiming
{
    public static Section Of(Composition composition, NoteName tonicName)
    {
        var meter = composition.Meter;
        var resolution = Resolution(composition);
        var palette = new Palette(composition.Tonic, tonicName, composition.Tuning, composition.Syllables, hasSimplerSpelling: false);
        var (lines, notes, breaths) = (new ScoreLine[composition.Lines.Count], new List<ScoreNote>(), new List<Breath>());
        var onset = Rational.Zero;
        for (var l = 0; l < lines.Length; l++)
        {
            var line = composition.Lines[l];
            lines[l] = new ScoreLine(notes.Count, line.Notes.Count, onset, line.Length) { Speed = composition.Speed };
            if ((onset + line.Length + Meter.MostBeats) * resolution > int.MaxValue)
            {
                throw TimeGrid.TooLong();
            }

            foreach (var note in line.Notes)
            {
                var at = onset + note.Onset;
                var pitch = palette.IndexOf(note.Tone, l);
                if (note.Breath.Sign > 0)
                {
                    breaths.Add(new Breath(at + note.Length, note.Breath, notes.Count));
                }

                notes.Add(new ScoreNote(
                    Steps(at, resolution), Steps(note.Length, resolution), resolution, pitch, l, note.Syllable ?? palette.Syllable(pitch), note.IsHeld));
            }

            onset += line.Length;
        }

        var measures = MeasurePlan.For(meter, lines, onset);
        return new Section(
            title: composition.Title,
            scale: composition.Scale,
            tonic: composition.Tonic,
            tonicName: tonicName,
            tuning: composition.Tuning,
            meter: meter,
            speed: composition.Speed,
            delivery: composition.Delivery,
            tempo: composition.Tempo,
            tempoChanges: [],
            countIn: Rational.Zero,
            roundsToFirstBeat: meter.IsFree ? null : (int)(onset / meter.Beats).Denominator,
            resolution: resolution,
            lengthSteps: Steps(measures[^1].Onset + measures[^1].Length, resolution),
            pitches: palette.Pitches,
            notes: notes.ToValueList(),
            lines: ValueList.Adopt(lines),
            breaths: breaths.ToValueList(),
            measures: measures);
    }

    private static int Steps(Rational aksharas, int resolution) => (int)(aksharas * resolution).Numerator;

    /// <summary>The coarsest grid on which every note, breath and line begins and ends, and bars of free rhythm too.</summary>
    private static int Resolution(Composition composition)
    {
        long resolution = composition.Meter.IsFree ? MeasurePlan.FreeGrid : 1;
        foreach (var line in composition.Lines)
        {
            Include(line.Length);
            foreach (var note in line.Notes)
            {
                Include(note.Onset);
                Include(note.Length);
                Include(note.Breath);
            }
        }

        return (int)resolution;

        void Include(Rational aksharas) => resolution = TimeGrid.Bounded(Rational.Lcm(resolution, aksharas.Denominator));
    }
}
