namespace Warmup;

public sealed partial record Score
{
    /// <summary>Whether the score counts itself in: its first section begins with beats alone, so that a player need add none.</summary>
    public bool HasCountIn => !Sections.IsEmpty && Sections[0].CountIn.Sign > 0;

    /// <summary>
    /// When each section begins, in seconds from the beginning of the score; the last ends at <see cref="Seconds"/>. All are exact where
    /// parts of 1e-12 of a second are fine enough, and else all lie on the nearest millionth: sums over many tempi do not fit exact fractions
    /// of 64 bits.
    /// </summary>
    public ValueList<Rational> SectionStarts() => ValueList.Adopt(SectionEnds()[..^1]);

    /// <summary>The beginning of the score, and the end of each section.</summary>
    private Rational[] SectionEnds()
    {
        var ends = new Rational[Sections.Count + 1];
        var parts = 1L;
        for (var s = 0; s < Sections.Count; s++)
        {
            ends[s + 1] = Sections[s].Seconds;
            parts = Rational.Lcm(parts, ends[s + 1].Denominator);
        }

        var isExact = SecondsSum.IsExact(parts);
        for (var s = 1; s < ends.Length; s++)
        {
            ends[s] = ends[s - 1] + (isExact || Sections.Count == 1 ? ends[s] : SecondsSum.Rounded(ends[s]));
        }

        return ends;
    }
}

public readonly partial record struct ScoreLine
{
    /// <summary>Its end in grid steps from the section's beginning, with the hold, the breath and the answer.</summary>
    public int EndSteps => OnsetSteps + LengthSteps;

    /// <summary>Its end in aksharas from the section's beginning, as <see cref="EndSteps"/>.</summary>
    public Rational End => new(EndSteps, _resolutionLessOne + 1);

    /// <summary>Whether the singer answers the line.</summary>
    public bool HasAnswer => AnswerSteps > 0;

    /// <summary>Where the answer begins, in grid steps from the section's beginning; the line's end where there is none.</summary>
    public int AnswerOnsetSteps => EndSteps - AnswerSteps;

    /// <summary>Where the answer begins, in aksharas from the section's beginning, as <see cref="AnswerOnsetSteps"/>.</summary>
    public Rational AnswerOnset => new(AnswerOnsetSteps, _resolutionLessOne + 1);
}
