using System.Globalization;

namespace Warmup.Voices;

/// <summary>Where in a singer's comfortable range a score lies: not only its extremes but the time spent near the top and the bottom.</summary>
/// <remarks>
/// The top fifth is the part of the range from four fifths of the way up, its lower end included; notes beyond the range count with the
/// fifth they lie beyond. A fifth of the range is the project's own setting. Immutable, value equality.
/// </remarks>
public sealed record RangeUse
{
    private RangeUse(ValueList<LineRangeUse> lines, ValueList<NoteOutside> outside) => (Lines, Outside) = (lines, outside);

    /// <summary>The lines of all sections, in order.</summary>
    public ValueList<LineRangeUse> Lines { get; }

    /// <summary>Every note more than 50 cents outside the comfortable range, in order.</summary>
    public ValueList<NoteOutside> Outside { get; }

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
        ArgumentNullException.ThrowIfNull(score);
        ArgumentNullException.ThrowIfNull(singer);
        var lines = new List<LineRangeUse>();
        var outside = new List<NoteOutside>();
        var (low, high) = (Millicents.Of(singer.Low), Millicents.Of(singer.High));
        for (var s = 0; s < score.Sections.Count; s++)
        {
            var section = score.Sections[s];
            var heights = Millicents.Of(section);
            for (var l = 0; l < section.Lines.Count; l++)
            {
                lines.Add(OfLine(score, s, l, heights, low, high, outside));
            }
        }

        return new RangeUse(lines.ToValueList(), outside.ToValueList());
    }

    /// <summary>How much is sung, and how much of it outside.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Seconds.ToDouble():0.0} s sung: {TopSeconds.ToDouble():0.0} s in the top fifth, {BottomSeconds.ToDouble():0.0} s in the bottom fifth, {OutsideSeconds.ToDouble():0.0} s outside");

    private static LineRangeUse OfLine(Score score, int s, int l, long[] heights, long low, long high, List<NoteOutside> outside)
    {
        var section = score.Sections[s];
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
                outside.Add(new NoteOutside(score.PlaceOf(s, note), section.PitchOf(note).Tone, section.PitchOf(note).Name, Millicents.Semitones(excess)));
            }
        }

        return new LineRangeUse(score.PlaceOf(s, l, line.Onset), section.Pitches[lowest].Name, section.Pitches[highest].Name, all, top, bottom, beyond);
    }

    private Rational Sum(Func<LineRangeUse, Rational> part)
    {
        var sum = Rational.Zero;
        foreach (var line in Lines)
        {
            sum = SecondsSum.Of(sum, part(line));
        }

        return sum;
    }
}

/// <summary>How a line uses a singer's range; times in seconds. Immutable, value equality.</summary>
public sealed record LineRangeUse
{
    internal LineRangeUse(
        ScorePlace place, NoteName lowest, NoteName highest, Rational seconds, Rational topSeconds, Rational bottomSeconds, Rational outsideSeconds) =>
        (Place, Lowest, Highest, Seconds, TopSeconds, BottomSeconds, OutsideSeconds) =
        (place, lowest, highest, seconds, topSeconds, bottomSeconds, outsideSeconds);

    /// <summary>Where the line begins.</summary>
    public ScorePlace Place { get; }

    /// <summary>The lowest note.</summary>
    public NoteName Lowest { get; }

    /// <summary>The highest note.</summary>
    public NoteName Highest { get; }

    /// <summary>The time sung.</summary>
    public Rational Seconds { get; }

    /// <summary>The time sung in the top fifth of the range or above it.</summary>
    public Rational TopSeconds { get; }

    /// <summary>The time sung in the bottom fifth of the range or below it.</summary>
    public Rational BottomSeconds { get; }

    /// <summary>The time sung more than 50 cents outside the range.</summary>
    public Rational OutsideSeconds { get; }

    /// <summary>The place, the lowest and the highest note.</summary>
    public override string ToString() => $"{Place}: {Lowest} to {Highest}";
}

/// <summary>A note outside a singer's comfortable range. Immutable, value equality.</summary>
public sealed record NoteOutside
{
    internal NoteOutside(ScorePlace place, ScaleTone tone, NoteName name, Rational semitones) =>
        (Place, Tone, Name, Semitones) = (place, tone, name, semitones);

    /// <summary>Where it is.</summary>
    public ScorePlace Place { get; }

    /// <summary>The tone.</summary>
    public ScaleTone Tone { get; }

    /// <summary>The written note.</summary>
    public NoteName Name { get; }

    /// <summary>How far above the highest comfortable note, in semitones; negative below the lowest.</summary>
    public Rational Semitones { get; }

    /// <summary>The place, the note and how far outside it lies.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Place}: {Tone} ({Name}), {Semitones.ToDouble():+0.##;-0.##} semitones");
}
