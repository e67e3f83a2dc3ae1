namespace Warmup.Voices;

/// <summary>A remedy by what it changes: what each part does not touch need not be looked at anew.</summary>
/// <param name="Tonic">Another tonic.</param>
/// <param name="Lines">Fewer lines; they are among the changes of time too.</param>
/// <param name="Scale">Another scale, which stands alone.</param>
/// <param name="Tempo">Another tempo.</param>
/// <param name="Breaths">Planned breaths.</param>
/// <param name="First">The first other change of time.</param>
/// <param name="Second">The second one.</param>
internal readonly record struct RemedyParts(
    OtherTonic? Tonic, FewerLines? Lines, OtherScale? Scale, OtherTempo? Tempo, PlannedBreaths? Breaths, Remedy? First, Remedy? Second)
{
    public static RemedyParts Of(Remedy remedy) => default(RemedyParts).With(remedy);

    /// <summary>The change of time where there is only one; nothing where there are two or none.</summary>
    public Remedy? OnlyTime => (Tempo, Breaths, First, Second) switch
    {
        ({ } tempo, null, null, null) => tempo,
        (null, { } breaths, null, null) => breaths,
        (null, null, { } first, null) => first,
        _ => null,
    };

    /// <summary>Whether times stay as they are.</summary>
    public bool HasNoTime => (Tempo, Breaths, First) is (null, null, null);

    private RemedyParts With(Remedy remedy) => remedy switch
    {
        TwoRemedies two => With(two.First).With(two.Second),
        OtherTonic tonic => this with { Tonic = tonic },
        OtherScale scale => this with { Scale = scale },
        OtherTempo tempo => this with { Tempo = tempo },
        PlannedBreaths breaths => this with { Breaths = breaths },
        FewerLines lines => (this with { Lines = lines }).WithTime(lines),
        _ => WithTime(remedy),
    };

    private RemedyParts WithTime(Remedy remedy) => First is null ? this with { First = remedy } : this with { Second = remedy };
}
