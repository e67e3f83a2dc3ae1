namespace Warmup;

/// <summary>How a kind of syllables is named and finds the syllable of a tone.</summary>
internal abstract record SyllableKind
{
    public abstract string Name { get; }

    public abstract string SyllableOf(ScaleTone tone);

    /// <summary>What <see cref="Syllables.Parse"/> reads back as this kind.</summary>
    public virtual string ToText() => Name;
}
