namespace Warmup;

/// <summary>Puts lines in time and in tune.</summary>
internal static class ScoreBuilder
{
    public static Score Build(Drill drill, Expansion expansion, CancellationToken cancellation)
    {
        if (expansion.Lines.IsEmpty)
        {
            throw new PatternException(new Finding(
                FindingCode.PatternEmpty, Severity.Error, $"the pattern {drill.Pattern} has no lines", "use a pattern with lines, such as ladder"));
        }

        var findings = expansion.Findings;
        var tonicName = Spelling.ChooseTonic(drill.Tonic, drill.Scale, out var respelled);
        if (respelled)
        {
            var finding = new Finding(
                FindingCode.TonicRespelled,
                Severity.Note,
                $"{drill.Tonic.TypedName} would need triple accidentals in {drill.Scale.Name} and is written {tonicName}",
                "nothing need change");
            findings = [.. findings, finding];
        }

        var title = drill.Title;
        var section = Time(drill, title, expansion, tonicName, cancellation);
        var drone = drill.HasDrone ? drill.DroneStyle.For(drill.Scale, drill.Tonic, drill.Tuning, tonicName) : null;
        if (drone is not null && drill.DroneStyle.Missing(drill.Scale) is { } missing)
        {
            findings = [.. findings, missing];
        }

        return new Score(title, [section], drone, findings);
    }

    /// <summary>A tone written and tuned.</summary>
    public static ScorePitch Pitch(ScaleTone tone, Tonic tonic, Tuning tuning, NoteName tonicName) =>
        Pitch(tone, tonic, tonic.Hz, tuning, tonicName);

    /// <summary>The same where the tonic's frequency is known.</summary>
    public static ScorePitch Pitch(ScaleTone tone, Tonic tonic, double tonicHz, Tuning tuning, NoteName tonicName)
    {
        var name = Spelling.Name(tone, tonicName);
        var cents = tuning.Cents(tone);

        // Above the written note's equal pitch at A4 = 440 Hz: the tuning's deviation, the tonic's offset and the reference's.
        var reference = tonic.A4.Equals(Tonic.StandardA4) ? 0 : 1200 * Math.Log2(tonic.A4 / Tonic.StandardA4);
        var offset = cents + tonic.OffsetCents + reference - (100.0 * (name.Midi - tonic.Midi));
        return new ScorePitch(tone, name, cents, tuning.Hz(tone, tonicHz), offset);
    }

    private static Section Time(Drill drill, string title, Expansion expansion, NoteName tonicName, CancellationToken cancellation)
    {
        var grid = TimeGrid.For(drill, expansion);
        var rounds = RoundPlan.For(drill, expansion, grid, cancellation);
        var palette = new Palette(drill, tonicName);
        var timeline = new Timeline(grid, rounds, palette, drill.Delivery.IsLineByLine);
        var tempi = new TempoMap(drill.Tempo.Start);
        for (var round = 0; round < rounds.Count; round++)
        {
            var tempo = drill.Tempo.At(round);
            var breath = grid.Breath(tempo);
            tempi.ChangeTo(tempo, timeline.At);
            foreach (var speed in drill.Speeds)
            {
                for (var l = 0; l < expansion.Lines.Count; l++)
                {
                    cancellation.ThrowIfCancellationRequested();
                    timeline.Sing(expansion.Lines[l], l, speed, round, breath);
                }
            }
        }

        var measures = MeasurePlan.For(drill.Meter, timeline.Lines.AsSpan(), timeline.At);
        return new Section
        {
            Title = title,
            Scale = drill.Scale,
            Tonic = drill.Tonic,
            TonicName = tonicName,
            Tuning = drill.Tuning,
            Meter = drill.Meter,
            Speed = drill.Speeds[0],
            Delivery = drill.Delivery,
            Tempo = drill.Tempo.Start,
            TempoChanges = tempi.Changes,
            CountIn = grid.Aksharas(grid.CountIn),
            RoundsToFirstBeat = rounds.ToFirstBeat,
            Resolution = grid.Resolution,
            Pitches = palette.Pitches,
            Notes = timeline.Notes,
            Lines = timeline.Lines,
            Breaths = timeline.Breaths,
            Measures = measures,
            LengthSteps = (int)grid.Whole(measures[^1].Onset + measures[^1].Length),
        };
    }
}
