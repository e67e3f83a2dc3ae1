namespace Warmup.Reading;

/// <summary>Proposes scales for letters without pitches.</summary>
internal static class TextScales
{
    private const int Most = 5;

    // A text has no pitch; middle C is as good as any (the project's own setting).
    private static Tonic AnyTonic => Tonic.Parse("C4");

    /// <summary>Proposals: by the variants that were typed, otherwise the scale in which beginners learn.</summary>
    public static ValueList<TonicProposal> Propose(Scale? scale, Tonic? tonic, List<Degree> variants, bool isSolfa)
    {
        var reason = tonic is null ? "a text has no pitch: the tonic is a setting" : "the tonic is given";
        tonic ??= AnyTonic;
        if (scale is not null)
        {
            return [new TonicProposal(tonic, scale, 0, [reason])];
        }

        if (variants.Count > 0)
        {
            // S and P have no variants; a scale that has more letters than were typed may be meant all the same.
            var typed = variants.Distinct().ToList();
            var fitting = Catalogue.Default.Entries
                .Where(e => typed.TrueForAll(e.Scale.Contains))
                .OrderBy(e => e.Scale.Degrees.Count(d => !typed.Contains(d) && d.Variant != 0))
                .Take(Most)
                .Select((e, i) => new TonicProposal(tonic, e.Scale, Most - i, [$"it has the variants that were typed: {string.Join(' ', typed)}", reason]))
                .ToValueList();
            if (!fitting.IsEmpty)
            {
                return fitting;
            }
        }

        var usual = isSolfa ? Catalogue.Default.Parent(29).Scale : Repertoire.UsualScale;
        var why = isSolfa ? "solfa without accidentals is read in the major scale" : "letters without variants are read in the scale in which beginners learn (common practice)";
        return [new TonicProposal(tonic, usual, 1, [why, reason])];
    }
}
