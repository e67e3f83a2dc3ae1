namespace Warmup.Reading;

/// <summary>A tonic and a scale that the notes of a section may have, and why. Immutable, compared by value.</summary>
public sealed record TonicProposal
{
    internal TonicProposal(Tonic tonic, Scale scale, int points, ValueList<string> reasons) => (Tonic, Scale, Points, Reasons) = (tonic, scale, points, reasons);

    /// <summary>The tonic.</summary>
    public Tonic Tonic { get; }

    /// <summary>The scale.</summary>
    public Scale Scale { get; }

    /// <summary>The sum of what speaks for it, less what speaks against it (the project's own weights); more is likelier.</summary>
    public int Points { get; }

    /// <summary>Why, the weightiest first.</summary>
    public ValueList<string> Reasons { get; }


    /// <summary>The tonic, the scale and the reasons.</summary>
    public override string ToString() => OneLine.Of($"{Tonic}, {Scale.Name}: {string.Join("; ", Reasons)}");
}
