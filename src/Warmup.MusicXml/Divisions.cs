using System.Globalization;

namespace Warmup.MusicXml;

/// <summary>The divisions of a quarter note that the parts need, found by laying them out once.</summary>
internal static class Divisions
{
    public static int Of(Score score, bool withDrone, CancellationToken cancellation)
    {
        var divisions = 1L;
        foreach (var section in score.Sections)
        {
            divisions = Rational.Lcm(divisions, Of(section, false, cancellation));
            divisions = withDrone ? Rational.Lcm(divisions, Of(section, true, cancellation)) : divisions;
            if (divisions > MusicXmlFormat.MostDivisions)
            {
                throw new ExportException(string.Create(
                    CultureInfo.InvariantCulture,
                    $"the score's lengths need {divisions} divisions of a quarter note; MusicXML readers take 1 to {MusicXmlFormat.MostDivisions}"));
            }
        }

        return (int)divisions;
    }

    /// <summary>
    /// What divides every length of a section in quarters whose notes need no tuplet: notes are cut at beats and at halves, quarters and so
    /// on of a beat that lie between their ends, so no piece is finer than the ends themselves. <see langword="null"/> for other sections.
    /// </summary>
    private static long? CommonOfPlain(Section section, Clock clock)
    {
        if (section.Meter.IsFree || clock.Parts != 1 || clock.Type != 4)
        {
            return null;
        }

        var common = clock.Akshara;
        foreach (ref readonly var note in section.Notes.AsSpan())
        {
            var (start, end) = ((long)note.OnsetSteps * clock.TicksPerStep, (long)note.EndSteps * clock.TicksPerStep);
            if (start % common != 0 || end % common != 0)
            {
                common = Rational.Gcd(Rational.Gcd(common, start), end);
            }
        }

        return common % clock.Shortest == 0 ? common : null;
    }

    private static long Of(Section section, bool isHeld, CancellationToken cancellation)
    {
        var layout = new MeasureLayout(section, isHeld);
        var quarter = layout.Clock.Whole / 4;
        if (CommonOfPlain(section, layout.Clock) is { } plain)
        {
            return quarter / plain;
        }

        var common = quarter;
        foreach (var measure in section.Measures)
        {
            cancellation.ThrowIfCancellationRequested();
            foreach (ref readonly var piece in layout.Next(measure))
            {
                common = piece.Length % common == 0 ? common : Rational.Gcd(common, piece.Length);
            }
        }

        return quarter / common;
    }
}
