using System.Globalization;

namespace Warmup.MusicXml;

/// <summary>The divisions of a quarter note that the parts need; laying the parts out once finds them.</summary>
internal static class Divisions
{
    public static int Of(Score score, bool withDrone, CancellationToken cancellation)
    {
        var divisions = 1L;
        foreach (var section in score.Sections)
        {
            // The middle of a note that swells is half as fine as its ends.
            divisions = Rational.Lcm(divisions, Of(section, false, cancellation) * (HasSwells(section) ? 2 : 1));
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

    private static bool HasSwells(Section section)
    {
        foreach (ref readonly var note in section.Notes.AsSpan())
        {
            if (note.Loudness == Loudness.SwellAndFade)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>
    /// What divides every length of a section that counts quarters and needs no tuplet: notes are cut at beats, and at halves, quarters and so on
    /// of a beat between their ends, so no piece is finer than the ends themselves. <see langword="null"/> for other sections.
    /// </summary>
    private static long? CommonOfPlain(Section section, TickGrid grid)
    {
        if (section.Meter.IsFree || grid.Parts != 1 || grid.Type != 4)
        {
            return null;
        }

        var common = grid.Akshara;
        foreach (ref readonly var note in section.Notes.AsSpan())
        {
            var (start, end) = ((long)note.OnsetSteps * grid.TicksPerStep, (long)note.EndSteps * grid.TicksPerStep);
            if (start % common != 0 || end % common != 0)
            {
                common = Rational.Gcd(Rational.Gcd(common, start), end);
                if (grid.TicksPerStep % common == 0)
                {
                    // All other notes fall on whole steps too.
                    break;
                }
            }
        }

        return common % grid.Shortest == 0 ? common : null;
    }

    private static long Of(Section section, bool isHeld, CancellationToken cancellation)
    {
        var grid = TickGrid.Of(section);
        var quarter = grid.Whole / 4;
        if (CommonOfPlain(section, grid) is { } plain)
        {
            return quarter / plain;
        }

        var layout = new MeasureLayout(section, isHeld);
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
