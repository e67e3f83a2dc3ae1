namespace Warmup;

/// <summary>How a kind of syllables finds the syllable of a tone. Immutable, value equality.</summary>
internal abstract record SyllableRule
{
    /// <summary>The name of the kind, in lower case.</summary>
    public abstract string Name { get; }

    /// <summary>The syllable of a tone.</summary>
    public abstract string SyllableOf(ScaleTone tone);

    /// <summary>The text that is read back to an equal kind.</summary>
    public virtual string ToText() => Name;
}
