namespace Warmup.Reading;

/// <summary>A tonic and a scale that the notes of a section may have, and why. Immutable, compared by value.</summary>
/// <param name="Tonic">The tonic.</param>
/// <param name="Scale">The scale.</param>
/// <param name="Points">The sum of what speaks for it, less what speaks against it (the project's own weights); more is likelier.</param>
/// <param name="Reasons">Why, the weightiest first.</param>
public sealed record TonicProposal(Tonic Tonic, Scale Scale, int Points, ValueList<string> Reasons)
{
    /// <summary>The tonic, the scale and the reasons.</summary>
    public override string ToString() => OneLine.Of($"{Tonic}, {Scale.Name}: {string.Join("; ", Reasons)}");
}
