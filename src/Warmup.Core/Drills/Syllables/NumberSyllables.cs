namespace Warmup;

/// <summary>Scale numbers with accidentals.</summary>
internal sealed record NumberSyllables : SyllableRule
{
    public static Syllables Value { get; } = new(new NumberSyllables());

    public override string Name => "numbers";

    public override string SyllableOf(ScaleTone tone) => tone.Degree.ToNumber();
}
