namespace Warmup;

/// <summary>A combinator that a program has added, of a pattern.</summary>
internal sealed record AddedPattern : UnaryPattern
{
    public AddedPattern(Pattern inner, Combinator combinator, ValueList<int> numbers)
        : base(inner, Times(inner.UsualNotes, combinator, numbers), Longest(inner, combinator, numbers)) => (Combinator, Arguments) = (combinator, numbers);

    public Combinator Combinator { get; }

    public ValueList<int> Arguments { get; }

    internal override Operation Operation => new(PatternWord.Of(Combinator), Arguments, default);

    internal override LawClass Class => Has(CombinatorLaws.EachLine) ? LawClass.EachLine : Has(CombinatorLaws.LineOrder) ? LawClass.LineOrder : LawClass.None;

    internal override bool UndoesItself => Has(CombinatorLaws.UndoesItself);

    internal override UnaryPattern? After(UnaryPattern inner) =>
        Has(CombinatorLaws.IsIdempotent) && inner is AddedPattern first && Combinator == first.Combinator && Arguments == first.Arguments ? this : null;

    internal override Line[] Lines(Frame frame, Expander expander) => Combinator.Lines(Inner.Lines(frame, expander), Arguments, frame.Scale, expander);

    private bool Has(CombinatorLaws law) => Combinator.Laws.HasFlag(law);

    private static long Times(long notes, Combinator combinator, ValueList<int> numbers) => notes * combinator.GrowthOf(numbers);

    // What works on more than one line may put all notes into one.
    private static long Longest(Pattern inner, Combinator combinator, ValueList<int> numbers) => combinator.Laws switch
    {
        var laws when laws.HasFlag(CombinatorLaws.LineOrder) => inner.UsualLongest,
        var laws when laws.HasFlag(CombinatorLaws.EachLine) => Times(inner.UsualLongest, combinator, numbers),
        _ => Times(inner.UsualNotes, combinator, numbers),
    };
}
