namespace Warmup.Voices;

/// <summary>
/// A change of a drill that can be applied: another tonic, tempo, speed, scale or delivery, fewer lines, planned breaths, or two of these.
/// </summary>
/// <remarks>
/// <see cref="Advising.Advise"/> finds the remedies that clear a finding. You may make one yourself and apply it to any drill; whether it
/// helps there is for the checks to say. Immutable, value equality.
/// </remarks>
public abstract record Remedy
{
    private protected Remedy()
    {
    }

    /// <summary>What the change is about: of two remedies of one kind the smaller is offered.</summary>
    internal abstract RemedyKind Kind { get; }

    /// <summary>
    /// Whether the change helps only where it clears all complaints of a kind: a line that is left out, or is another in another scale, is no
    /// help for itself as long as others have the same fault.
    /// </summary>
    internal bool HelpsOnlyWhole => Kind is RemedyKind.Lines or RemedyKind.Scale or RemedyKind.Two;

    /// <summary>The drill after the change; what is done to the score, such as planned breaths, is not in it.</summary>
    /// <param name="drill">The drill.</param>
    /// <exception cref="ArgumentException">The change cannot be made in this drill, as where a line is named that it has not.</exception>
    /// <exception cref="PatternException">The drill's scale has no such lines.</exception>
    public virtual Drill Apply(Drill drill) => Require.NotNull(drill);

    /// <summary>The score after the change, where the score and not the drill is changed; otherwise the score itself.</summary>
    /// <param name="score">The score of the changed drill.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public virtual Score Apply(Score score, CancellationToken cancellationToken = default) => Require.NotNull(score);

    /// <summary>The whole change: the score of the changed drill.</summary>
    /// <param name="drill">The drill.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ArgumentException">The change cannot be made in this drill.</exception>
    /// <exception cref="PatternException">The changed drill cannot be made.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public Score ToScore(Drill drill, CancellationToken cancellationToken = default) =>
        Apply(Apply(drill).ToScore(cancellationToken), cancellationToken);

    /// <summary>The change in words, compared with the drill that it changes: <c>a tonic 2 semitones lower: F3</c>.</summary>
    /// <param name="drill">The drill before the change.</param>
    public abstract string Describe(Drill drill);

    /// <summary>How large the change is in the project's own units: about 5 percent, or a semitone.</summary>
    internal abstract int Size(Drill drill);
}

/// <summary>
/// The kinds, in the order in which two of them are applied, and in which equally small ones are offered.
/// </summary>
internal enum RemedyKind
{
    Delivery,
    Fill,
    FillBy,
    LongerBreath,
    PlannedBreaths,
    Tonic,
    Speeds,
    Lines,
    Tempo,
    Scale,
    Two,
}
