namespace Warmup;

/// <summary>Puts lines in time and in tune.</summary>
internal static class ScoreBuilder
{
    public static Score Build(Drill drill, Expansion expansion, CancellationToken cancellation)
    {
        if (expansion.Lines.IsEmpty)
        {
            throw new PatternException(new Finding(
                FindingCode.PatternEmpty, Severity.Error, $"the pattern {OneLine.Cut(drill.Pattern.ToString(), 80)} has no lines", "use a pattern with lines, such as ladder"));
        }

        var tonicName = TonicName(drill.Tonic, drill.Scale, out var respelled);
        var section = Time(drill, expansion, tonicName, cancellation);
        var style = drill.HasDrone ? drill.DroneStyle : null;
        var findings = respelled is null ? expansion.Findings : [.. expansion.Findings, respelled];

        // Speeds one after the other are practised to meet the first beat again; a single one may run on on purpose.
        return Whole(section, style, drill.Speeds.Count > 1 && section.UnevenEnd() is { } uneven && findings.All(f => f.Code != uneven.Code) ? [.. findings, uneven] : findings);
    }

    /// <summary>The written name of a tonic, and the remark where it is not the one that was typed.</summary>
    private static NoteName TonicName(Tonic tonic, Scale scale, out Finding? respelled)
    {
        var name = Spelling.ChooseTonic(tonic, scale, out var isRespelled);
        respelled = isRespelled
            ? new Finding(
                FindingCode.TonicRespelled,
                Severity.Note,
                $"{tonic.TypedName} would need triple accidentals in {scale.Name} and is written {name}",
                "no change is needed")
            : null;
        return name;
    }

    private static Score Whole(Section section, DroneStyle? style, ValueList<Finding> findings)
    {
        var drone = style?.For(section.Scale, section.Tonic, section.Tuning, section.TonicName);
        return new Score(section.Title, [section], drone, style?.Missing(section.Scale) is { } missing ? [.. findings, missing] : findings);
    }

    private static Section Time(Drill drill, Expansion expansion, NoteName tonicName, CancellationToken cancellation)
    {
        var grid = TimeGrid.For(drill, expansion);
        var rounds = RoundPlan.For(drill, expansion, grid, cancellation);
        grid = grid.WithHalves(drill, expansion);
        var palette = new Palette(drill.Tonic, tonicName, drill.Tuning, drill.Syllables, VariantLetters.Of(expansion.Lines), drill.HasSimplerSpelling);
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
        return new Section(
            title: drill.Title,
            scale: drill.Scale,
            tonic: drill.Tonic,
            tonicName: tonicName,
            tuning: drill.Tuning,
            meter: drill.Meter,
            speed: drill.Speeds[0],
            delivery: drill.Delivery,
            tempo: drill.Tempo.Start,
            tempoChanges: tempi.Changes,
            countIn: grid.Aksharas(grid.CountIn),
            roundsToFirstBeat: rounds.ToFirstBeat,
            resolution: grid.Resolution,
            lengthSteps: (int)grid.Whole(measures[^1].Onset + measures[^1].Length),
            pitches: palette.Pitches,
            notes: timeline.Notes,
            lines: timeline.Lines,
            breaths: timeline.Breaths,
            measures: measures);
    }
}
