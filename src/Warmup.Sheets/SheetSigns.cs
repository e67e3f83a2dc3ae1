namespace Warmup.Sheets;

/// <summary>Which signs stand on a sheet, so that its legend explains these and no others.</summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record SheetSigns
{
    internal SheetSigns(Sheet sheet)
    {
        var sections = sheet.Sections;
        foreach (var line in sections.SelectMany(s => s.PrintedBlocks).SelectMany(b => b.Lines))
        {
            HasAnswers |= line.Line.HasAnswer;
            foreach (ref readonly var sign in line.Written.AsSpan())
            {
                HasHolds |= sign.Kind == SheetSignKind.Hold;
                HasBreaths |= sign.Kind == SheetSignKind.Breath;
                HasSilences |= sign.Kind == SheetSignKind.Silence && sign.At < line.Line.AnswerOnset;
                HasUpperOctave |= sign.Tone?.Octave > 0;
                HasLowerOctave |= sign.Tone?.Octave < 0;
            }
        }

        foreach (var section in sections)
        {
            var meter = section.Section.Meter;
            HasBars |= !meter.IsFree;
            for (var beat = 1; beat < meter.Beats; beat++)
            {
                HasGroups |= !meter.IsFree && meter.AccentOf(beat) != BeatAccent.None;
            }

            HasUpperOctave |= section.Ascent.Any(t => t.Octave > 0) || section.Descent.Any(t => t.Octave > 0);
            HasLowerOctave |= section.Ascent.Any(t => t.Octave < 0) || section.Descent.Any(t => t.Octave < 0);
        }

        Speeds = sections.SelectMany(s => s.Section.Lines.Select(l => l.Speed.Kalam)).Where(k => k > 1).Distinct().Order().ToValueList();
    }

    /// <summary>Whether a note is held for more than its own unit.</summary>
    public bool HasHolds { get; }

    /// <summary>Whether there is a breath.</summary>
    public bool HasBreaths { get; }

    /// <summary>Whether there is a unit of silence outside breaths and answers.</summary>
    public bool HasSilences { get; }

    /// <summary>Whether a line leaves room for an answer.</summary>
    public bool HasAnswers { get; }

    /// <summary>Whether a part of an avartana, or of a bar, ends before the whole does.</summary>
    public bool HasGroups { get; }

    /// <summary>Whether there are avartanas or bars; not in free rhythm.</summary>
    public bool HasBars { get; }

    /// <summary>Whether a tone above the middle octave is written, in the lines or in the scale.</summary>
    public bool HasUpperOctave { get; }

    /// <summary>Whether a tone below the middle octave is written, in the lines or in the scale.</summary>
    public bool HasLowerOctave { get; }

    /// <summary>The speeds that have lines over the letters, 2 to 4, in order.</summary>
    public ValueList<int> Speeds { get; }

    /// <summary>The names of what there is.</summary>
    public override string ToString() => string.Join(
        ", ",
        ((ReadOnlySpan<(bool, string)>)[(HasHolds, "holds"), (HasBreaths, "breaths"), (HasSilences, "silences"), (HasAnswers, "answers"), (HasBars, "bars")]).ToArray()
            .Where(s => s.Item1).Select(s => s.Item2));
}
