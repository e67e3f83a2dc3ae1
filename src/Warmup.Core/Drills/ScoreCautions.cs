namespace Warmup;

public sealed partial record Score
{
    /// <summary>The usual cautions (<see cref="Warmup.Cautions.All"/>), and after them those of what the score asks a voice to do.</summary>
    public ValueList<Caution> Cautions =>
        Has(static note => note.Syllable == HalfClosedSyllables.LipTrill.Text || note.Syllable == HalfClosedSyllables.Straw.Text)
            ? [.. Warmup.Cautions.All, Warmup.Cautions.HalfClosed]
            : Warmup.Cautions.All;

    private bool Has(Predicate<ScoreNote> what)
    {
        foreach (var section in Sections)
        {
            foreach (ref readonly var note in section.Notes.AsSpan())
            {
                if (what(note))
                {
                    return true;
                }
            }
        }

        return false;
    }
}
