using System.Globalization;

namespace Warmup.Voices;

/// <summary>How much of the time is sung, and how many breaths break a line. Immutable, value equality.</summary>
public sealed record SungTime
{
    private SungTime(Rational seconds, Rational sung, int lines, int breathsInside) =>
        (Seconds, SungSeconds, Lines, BreathsInside) = (seconds, sung, lines, breathsInside);

    /// <summary>No time at all.</summary>
    public static SungTime None { get; } = new(Rational.Zero, Rational.Zero, 0, 0);

    /// <summary>The whole time in seconds, count-ins, breaths and rests included.</summary>
    public Rational Seconds { get; }

    /// <summary>The time in which a note sounds, in seconds.</summary>
    public Rational SungSeconds { get; }

    /// <summary>The number of lines.</summary>
    public int Lines { get; }

    /// <summary>The number of breaths inside lines: between two notes of the same line.</summary>
    public int BreathsInside { get; }

    /// <summary>The share of the time that is sung, 0 to 1; 0 of no time.</summary>
    public Rational Share => Seconds.Sign == 0 ? Rational.Zero : SungSeconds / Seconds;

    /// <summary>The time of a score.</summary>
    /// <param name="score">The score.</param>
    public static SungTime Of(Score score)
    {
        ArgumentNullException.ThrowIfNull(score);
        var (time, sung, lines, inside) = (Rational.Zero, Rational.Zero, 0, 0);
        foreach (var section in score.Sections)
        {
            time = SecondsSum.Of(time, section.Seconds);
            lines += section.Lines.Count;
            sung = SecondsSum.Of(sung, Sung(section));
            foreach (var breath in section.Breaths)
            {
                inside += IsInside(section, breath.AfterNote) ? 1 : 0;
            }
        }

        return new SungTime(time, sung, lines, inside);
    }

    /// <summary>This time and another one together.</summary>
    /// <param name="other">The other time.</param>
    /// <param name="times">How often the other time is added, 1 or more; once by default.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="times"/> is below 1.</exception>
    public SungTime Plus(SungTime other, int times = 1)
    {
        ArgumentNullException.ThrowIfNull(other);
        Require.InRange(times, 1, int.MaxValue);
        return new SungTime(
            SecondsSum.Of(Seconds, times * other.Seconds),
            SecondsSum.Of(SungSeconds, times * other.SungSeconds),
            Lines + (times * other.Lines),
            BreathsInside + (times * other.BreathsInside));
    }

    /// <summary>The share and the breaths: <c>66 % of 7:51 minutes sung, 12 breaths inside 36 lines</c>.</summary>
    public override string ToString()
    {
        var seconds = Seconds.Ceiling();
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{100 * Share.ToDouble():0} % of {seconds / 60}:{seconds % 60:00} minutes sung, {BreathsInside} {(BreathsInside == 1 ? "breath" : "breaths")} inside {Lines} {(Lines == 1 ? "line" : "lines")}");
    }

    /// <summary>Whether a note and the next one belong to the same line.</summary>
    internal static bool IsInside(Section section, int note) =>
        note + 1 < section.Notes.Count && section.Notes[note + 1].LineIndex == section.Notes[note].LineIndex;

    /// <summary>The seconds in which notes sound; notes that touch are counted together.</summary>
    private static Rational Sung(Section section)
    {
        var sung = Rational.Zero;
        for (var n = 0; n < section.Notes.Count; n++)
        {
            var onset = section.Notes[n].Onset;
            while (n + 1 < section.Notes.Count && section.Notes[n + 1].OnsetSteps == section.Notes[n].EndSteps)
            {
                n++;
            }

            sung = SecondsSum.Of(sung, section.SecondsAt(section.Notes[n].End) - section.SecondsAt(onset));
        }

        return sung;
    }
}
