namespace Warmup.Voices;

/// <summary>Two changes, one after the other. Immutable, value equality.</summary>
public sealed record TwoRemedies : Remedy
{
    /// <summary>Joins two changes.</summary>
    /// <param name="first">The change that is made first.</param>
    /// <param name="second">The change that is made of its result.</param>
    public TwoRemedies(Remedy first, Remedy second) => (First, Second) = (Require.NotNull(first), Require.NotNull(second));

    /// <summary>The change that is made first.</summary>
    public Remedy First { get; }

    /// <summary>The change that is made of its result.</summary>
    public Remedy Second { get; }

    internal override RemedyKind Kind => RemedyKind.Two;

    /// <inheritdoc/>
    public override Drill Apply(Drill drill) => Second.Apply(First.Apply(drill));

    /// <inheritdoc/>
    public override Score Apply(Score score, CancellationToken cancellationToken = default) =>
        Second.Apply(First.Apply(score, cancellationToken), cancellationToken);

    /// <inheritdoc/>
    public override string Describe(Drill drill) => $"{First.Describe(drill)}, together with {Second.Describe(First.Apply(drill))}";

    /// <summary>Both changes.</summary>
    public override string ToString() => OneLine.Of($"{First}, together with {Second}");

    internal override int Size(Drill drill) => First.Size(drill) + Second.Size(First.Apply(drill));
}
