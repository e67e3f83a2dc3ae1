using System.Globalization;

namespace Warmup.MusicXml;

/// <summary>The divisions of a quarter note that the parts need, found by laying them out once.</summary>
internal static class Divisions
{
    public static int Of(Score score, bool withDrone, CancellationToken cancellation)
    {
        Int128 divisions = 1;
        foreach (var section in score.Sections)
        {
            divisions = Lcm(divisions, Of(section, false, cancellation));
            divisions = withDrone ? Lcm(divisions, Of(section, true, cancellation)) : divisions;
            if (divisions > MusicXmlFormat.MostDivisions)
            {
                throw new ExportException(string.Create(
                    CultureInfo.InvariantCulture,
                    $"the score's lengths need {divisions} divisions of a quarter note; MusicXML readers take 1 to {MusicXmlFormat.MostDivisions}"));
            }
        }

        return (int)divisions;
    }

    private static long Of(Section section, bool isHeld, CancellationToken cancellation)
    {
        var layout = new MeasureLayout(section, isHeld);
        var quarter = layout.Clock.Whole / 4;
        var common = quarter;
        foreach (var measure in section.Measures)
        {
            cancellation.ThrowIfCancellationRequested();
            foreach (var piece in layout.Next(measure))
            {
                common = (long)Gcd(common, piece.Length);
            }
        }

        return quarter / common;
    }

    private static Int128 Lcm(Int128 a, Int128 b) => a / Gcd(a, b) * b;

    private static Int128 Gcd(Int128 a, Int128 b)
    {
        while (b != 0)
        {
            (a, b) = (b, a % b);
        }

        return a;
    }
}
