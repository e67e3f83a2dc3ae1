namespace Warmup;

/// <summary>Another kind's syllables with dots for the octave.</summary>
internal sealed record DottedSyllables(Syllables Inner) : SyllableKind
{
    public override string Name => Inner.Name;

    public override string SyllableOf(ScaleTone tone) => OctaveDots.Mark(Inner.SyllableOf(tone), tone.Octave);

    public override string WithVariant(ScaleTone tone) => OctaveDots.Mark(Inner.SyllableWithVariant(tone), tone.Octave);

    public override string ToText() => SyllablesText.DottedText(Inner);
}
