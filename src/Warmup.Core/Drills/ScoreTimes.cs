namespace Warmup;

public sealed partial record Score
{
    /// <summary>Whether the score counts itself in: its first section begins with beats alone, so that a player need add none.</summary>
    public bool HasCountIn => !Sections.IsEmpty && Sections[0].CountIn.Sign > 0;

    /// <summary>When each section begins, in seconds from the beginning of the score, exactly. The last ends at <see cref="Seconds"/>.</summary>
    /// <exception cref="OverflowException">A sum does not fit an exact fraction of 64 bits.</exception>
    public ValueList<Rational> SectionStarts()
    {
        var starts = new Rational[Sections.Count];
        for (var s = 1; s < starts.Length; s++)
        {
            starts[s] = starts[s - 1] + Sections[s - 1].Seconds;
        }

        return ValueList.Adopt(starts);
    }
}

public readonly partial record struct ScoreLine
{
    /// <summary>Its end in aksharas from the section's beginning, with the hold, the breath and the answer.</summary>
    public Rational End => Onset + Length;

    /// <summary>Whether the singer answers the line.</summary>
    public bool HasAnswer => Answer.Sign > 0;

    /// <summary>Where the answer begins, in aksharas from the section's beginning; the line's end where there is none.</summary>
    public Rational AnswerOnset => End - Answer;
}
