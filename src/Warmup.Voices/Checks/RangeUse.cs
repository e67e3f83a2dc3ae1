namespace Warmup.Voices;

/// <summary>Where in a singer's comfortable range a score lies: not only its extremes but the time spent near the top and the bottom.</summary>
/// <param name="Lines">One entry a line, in order.</param>
/// <param name="Outside">Every note more than 50 cents outside the comfortable range, in order.</param>
/// <remarks>
/// The top fifth is the part of the range from four fifths of the way up, its lower end included; notes beyond the range count with the
/// fifth they lie beyond. A fifth of the range is the project's own setting.
/// </remarks>
public sealed record RangeUse(ValueList<LineRangeUse> Lines, ValueList<NoteOutside> Outside)
{
    /// <summary>The time sung, in seconds.</summary>
    public Rational Seconds => Sum(l => l.Seconds);

    /// <summary>The time sung in the top fifth of the range or above it, in seconds.</summary>
    public Rational TopSeconds => Sum(l => l.TopSeconds);

    /// <summary>The time sung in the bottom fifth of the range or below it, in seconds.</summary>
    public Rational BottomSeconds => Sum(l => l.BottomSeconds);

    /// <summary>The time sung outside the range, in seconds.</summary>
    public Rational OutsideSeconds => Sum(l => l.OutsideSeconds);

    /// <summary>How a score uses a singer's range.</summary>
    /// <param name="score">The score.</param>
    /// <param name="singer">The singer.</param>
    public static RangeUse Of(Score score, Singer singer)
    {
        var lines = new List<LineRangeUse>();
        var outside = new List<NoteOutside>();
        var (low, high) = (Millicents.Of(singer.Low), Millicents.Of(singer.High));
        for (var s = 0; s < score.Sections.Count; s++)
        {
            var section = score.Sections[s];
            var heights = Millicents.Of(section);
            for (var l = 0; l < section.Lines.Count; l++)
            {
                lines.Add(OfLine(section, s, l, heights, low, high, outside));
            }
        }

        return new RangeUse(lines.ToValueList(), outside.ToValueList());
    }

    private static LineRangeUse OfLine(Section section, int s, int l, long[] heights, long low, long high, List<NoteOutside> outside)
    {
        Rational all = default, top = default, bottom = default, beyond = default;
        var line = section.Lines[l];
        var lowest = section.Notes[line.FirstNote].PitchIndex;
        var highest = lowest;
        for (var n = line.FirstNote; n < line.FirstNote + line.NoteCount; n++)
        {
            var note = section.Notes[n];
            var height = heights[note.PitchIndex];
            var seconds = section.SecondsAt(note.Onset + note.Length) - section.SecondsAt(note.Onset);
            all += seconds;
            lowest = height < heights[lowest] ? note.PitchIndex : lowest;
            highest = height > heights[highest] ? note.PitchIndex : highest;

            // Five times both sides, so that a fifth of the range stays a whole number.
            top += 5 * (high - height) <= high - low ? seconds : 0;
            bottom += 5 * (height - low) <= high - low ? seconds : 0;
            var excess = height > high ? Millicents.Excess(height - high) : -Millicents.Excess(low - height);
            if (excess != 0)
            {
                beyond += seconds;
                outside.Add(new NoteOutside(s, l + 1, note.Onset, section.PitchOf(note).Tone, section.PitchOf(note).Name, Millicents.Semitones(excess)));
            }
        }

        return new LineRangeUse(s, l + 1, section.Pitches[lowest].Name, section.Pitches[highest].Name, all, top, bottom, beyond);
    }

    private Rational Sum(Func<LineRangeUse, Rational> part)
    {
        var sum = Rational.Zero;
        foreach (var line in Lines)
        {
            sum += part(line);
        }

        return sum;
    }
}

/// <summary>How a line uses a singer's range; times in seconds.</summary>
/// <param name="Section">The index of the section.</param>
/// <param name="Line">The line of the section, counted from 1.</param>
/// <param name="Lowest">The lowest note.</param>
/// <param name="Highest">The highest note.</param>
/// <param name="Seconds">The time sung.</param>
/// <param name="TopSeconds">The time sung in the top fifth of the range or above it.</param>
/// <param name="BottomSeconds">The time sung in the bottom fifth of the range or below it.</param>
/// <param name="OutsideSeconds">The time sung more than 50 cents outside the range.</param>
public sealed record LineRangeUse(
    int Section, int Line, NoteName Lowest, NoteName Highest, Rational Seconds, Rational TopSeconds, Rational BottomSeconds, Rational OutsideSeconds);

/// <summary>A note outside a singer's comfortable range.</summary>
/// <param name="Section">The index of the section.</param>
/// <param name="Line">The line of the section, counted from 1.</param>
/// <param name="Beat">The onset in aksharas from the section's beginning.</param>
/// <param name="Tone">The tone.</param>
/// <param name="Name">The written note.</param>
/// <param name="Semitones">How far above the highest comfortable note; negative below the lowest.</param>
public sealed record NoteOutside(int Section, int Line, Rational Beat, ScaleTone Tone, NoteName Name, Rational Semitones);
