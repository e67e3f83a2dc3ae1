namespace Warmup;

/// <summary>Movable-do solfa from the tonic.</summary>
internal sealed record SolfaSyllables : SyllableRule
{
    public static Syllables Value { get; } = new(new SolfaSyllables());

    public override string Name => "solfa";

    public override string SyllableOf(ScaleTone tone) => Solfa.SyllableOf(tone.Degree);
}

/// <summary>Movable-do solfa in which the tonic is la.</summary>
internal sealed record LaBasedSolfaSyllables : SyllableRule
{
    public static Syllables Value { get; } = new(new LaBasedSolfaSyllables());

    public override string Name => "solfa-la";

    public override string SyllableOf(ScaleTone tone) => Solfa.LaBasedSyllableOf(tone.Degree);
}
