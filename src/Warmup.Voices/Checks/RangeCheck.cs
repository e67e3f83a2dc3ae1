using System.Globalization;

namespace Warmup.Voices;

/// <summary>Which lines leave a singer's comfortable range, on which note and by how much.</summary>
internal static class RangeCheck
{
    public static IEnumerable<Finding> Check(Score score, Singer singer)
    {
        for (var s = 0; s < score.Sections.Count; s++)
        {
            var section = score.Sections[s];
            var heights = Millicents.Of(section);
            var span = new Span(heights.Min(), heights.Max(), Millicents.Of(singer.Low), Millicents.Of(singer.High));
            if (span.Fits)
            {
                continue;
            }

            for (var l = 0; l < section.Lines.Count; l++)
            {
                if (Worst(section, heights, l, span.High, 1) is { } above)
                {
                    yield return Say(VoiceFindingCode.AboveRange, score, s, above, heights[above.PitchIndex], singer);
                }

                if (Worst(section, heights, l, span.Low, -1) is { } below)
                {
                    yield return Say(VoiceFindingCode.BelowRange, score, s, below, heights[below.PitchIndex], singer);
                }
            }
        }
    }

    private static ScoreNote? Worst(Section section, long[] heights, int line, long limit, int direction)
    {
        ScoreNote? worst = null;
        var most = Millicents.Tolerance;
        var (first, count) = (section.Lines[line].FirstNote, section.Lines[line].NoteCount);
        foreach (var note in section.Notes.AsSpan().Slice(first, count))
        {
            var excess = (heights[note.PitchIndex] - limit) * direction;
            if (excess > most)
            {
                (worst, most) = (note, excess);
            }
        }

        return worst;
    }

    private static Finding Say(string code, Score score, int section, ScoreNote note, long height, Singer singer)
    {
        var pitch = score.Sections[section].PitchOf(note);
        var above = code == VoiceFindingCode.AboveRange;
        var edge = above ? singer.High : singer.Low;
        var limit = Millicents.Of(edge);
        var excess = Millicents.Semitones(Math.Abs(height - limit)).ToDouble();
        return new Finding(
            code,
            Severity.Error,
            string.Create(
                CultureInfo.InvariantCulture,
                $"{pitch.Tone} ({pitch.Name}) lies {excess:0.0#} semitones {(above ? "above" : "below")} the {(above ? "highest" : "lowest")} comfortable note {edge}")
                + BeyondFull(height, above, singer))
        {
            Singer = singer.Alias,
            Place = score.PlaceOf(section, note),
            Measured = (100.0 * pitch.Midi) + pitch.OffsetCents,
            Limit = 100.0 * edge.Midi,
            Unit = "cents above MIDI note 0",
        };
    }

    private static string BeyondFull(long height, bool above, Singer singer)
    {
        var full = above ? singer.FullHigh : singer.FullLow;
        return full is { } edge && (above ? height - Millicents.Of(edge) : Millicents.Of(edge) - height) > Millicents.Tolerance
            ? $", and beyond the full range's {edge}"
            : string.Empty;
    }

    /// <summary>How far a drill reaches, and how far a singer does.</summary>
    private readonly record struct Span(long Lowest, long Highest, long Low, long High)
    {
        public bool Fits => Lowest >= Low - Millicents.Tolerance && Highest <= High + Millicents.Tolerance;
    }
}
