using System.Globalization;

namespace Warmup;

/// <summary>Which line and note leaves a singer's comfortable range, and by how much.</summary>
internal static class RangeCheck
{
    // A note up to this much beyond the range's last note still counts as that note: just thirds lie 14, a just D 18 cents off.
    private const double Tolerance = 50;

    public static IEnumerable<Finding> Check(Score score, Singer singer)
    {
        var low = 100.0 * singer.Low.Midi;
        var high = 100.0 * singer.High.Midi;
        foreach (var section in score.Sections)
        {
            var (lowest, highest) = Extremes(section);
            if (lowest >= low - Tolerance && highest <= high + Tolerance)
            {
                continue;
            }

            var fix = Fix(section, low, high, lowest, highest);
            for (var l = 0; l < section.Lines.Count; l++)
            {
                if (Worst(section, l, high, 1) is { } above)
                {
                    yield return Say(FindingCode.AboveRange, section, above, high, singer, singer.High, fix);
                }

                if (Worst(section, l, low, -1) is { } below)
                {
                    yield return Say(FindingCode.BelowRange, section, below, low, singer, singer.Low, fix);
                }
            }
        }
    }

    /// <summary>The sounding height in cents above MIDI note 0 of a keyboard at A4 = 440 Hz.</summary>
    private static double Height(ScorePitch pitch) => (100.0 * pitch.Midi) + pitch.OffsetCents;

    private static (double Lowest, double Highest) Extremes(Section section)
    {
        var lowest = double.MaxValue;
        var highest = double.MinValue;
        foreach (var pitch in section.Pitches)
        {
            lowest = Math.Min(lowest, Height(pitch));
            highest = Math.Max(highest, Height(pitch));
        }

        return (lowest, highest);
    }

    private static ScoreNote? Worst(Section section, int line, double limit, int direction)
    {
        ScoreNote? worst = null;
        var most = Tolerance;
        var (first, count) = (section.Lines[line].FirstNote, section.Lines[line].NoteCount);
        foreach (var note in section.Notes.AsSpan().Slice(first, count))
        {
            var excess = (Height(section.PitchOf(note)) - limit) * direction;
            if (excess > most)
            {
                (worst, most) = (note, excess);
            }
        }

        return worst;
    }

    private static Finding Say(string code, Section section, ScoreNote note, double limit, Singer singer, NoteName edge, string fix)
    {
        var pitch = section.PitchOf(note);
        var excess = Math.Abs(Height(pitch) - limit);
        var above = code == FindingCode.AboveRange;
        return new Finding(
            code,
            Severity.Error,
            string.Create(
                CultureInfo.InvariantCulture,
                $"{pitch.Tone} ({pitch.Name}) lies {excess / 100:0.0#} semitones {(above ? "above" : "below")} the {(above ? "highest" : "lowest")} comfortable note {edge}"),
            fix)
        {
            Singer = singer.Alias,
            Line = note.LineIndex + 1,
            Beat = note.Onset,
            Measured = Height(pitch),
            Limit = limit,
            Unit = "cents above MIDI note 0",
        };
    }

    private static string Fix(Section section, double low, double high, double lowest, double highest)
    {
        // The least shift in whole semitones that brings both ends inside.
        var down = (int)Math.Ceiling((highest - high - Tolerance) / 100);
        var up = (int)Math.Ceiling((low - Tolerance - lowest) / 100);
        if (down > 0 && lowest - (100 * down) >= low - Tolerance && section.Tonic.Midi - down >= Tonic.LowestMidi)
        {
            return Shift(section, -down);
        }

        if (up > 0 && highest + (100 * up) <= high + Tolerance && section.Tonic.Midi + up <= Tonic.HighestMidi)
        {
            return Shift(section, up);
        }

        return string.Create(
            CultureInfo.InvariantCulture,
            $"no tonic fits, since the drill spans {(highest - lowest) / 100:0.#} semitones and the range {(high - low) / 100:0}: leave out the lines named, or take a narrower pattern");
    }

    private static string Shift(Section section, int semitones)
    {
        // A tonic that lies off its key is moved as it is: the key alone might not fit.
        var tonic = section.Tonic.OffsetCents == 0
            ? NoteName.FromMidi(section.Tonic.Midi + semitones).ToString()
            : string.Create(CultureInfo.InvariantCulture, $"{section.Tonic.Hz * Math.Pow(2, semitones / 12.0):0.###}Hz");
        var way = semitones < 0 ? "lower" : "higher";
        var count = Math.Abs(semitones);
        return string.Create(
            CultureInfo.InvariantCulture, $"a tonic {count} {(count == 1 ? "semitone" : "semitones")} {way} fits: {tonic}");
    }
}
