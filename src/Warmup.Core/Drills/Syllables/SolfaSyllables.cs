namespace Warmup;

/// <summary>Movable-do solfa from the tonic.</summary>
internal sealed record SolfaSyllables : Syllables
{
    public static Syllables Value { get; } = new SolfaSyllables();

    public override string Name => "solfa";

    public override string SyllableOf(ScaleTone tone) => Warmup.Solfa.SyllableOf(tone.Degree);
}

/// <summary>Movable-do solfa in which the tonic is la.</summary>
internal sealed record LaBasedSolfaSyllables : Syllables
{
    public static Syllables Value { get; } = new LaBasedSolfaSyllables();

    public override string Name => "solfa-la";

    public override string SyllableOf(ScaleTone tone) => Warmup.Solfa.LaBasedSyllableOf(tone.Degree);
}
