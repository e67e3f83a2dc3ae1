namespace Warmup;

/// <summary>How a kind of syllables is named and finds the syllable of a tone.</summary>
internal abstract record SyllableKind
{
    public abstract string Name { get; }

    public abstract string SyllableOf(ScaleTone tone);

    /// <summary>The syllable with the variant after a letter that stands for several svaras; the same as without where the syllable tells them apart.</summary>
    public virtual string WithVariant(ScaleTone tone) => SyllableOf(tone);

    /// <summary>What <see cref="Syllables.Parse"/> reads back as this kind.</summary>
    public virtual string ToText() => Name;
}
