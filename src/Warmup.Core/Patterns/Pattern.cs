using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup;

/// <summary>
/// A rule that gives lines for any scale: a value that can be compared, printed, read back and combined.
/// </summary>
/// <remarks>
/// <para>Patterns are built from a few primitives (<see cref="Ladder"/>, <see cref="Run"/>, <see cref="Figure"/>, <see cref="Written"/>)
/// with combinators; every result is again a pattern. The tree is closed: a combinator of your own is a function from pattern to pattern.</para>
/// <para>A tree has at most <see cref="DeepestNesting"/> levels and <see cref="MostNodes"/> parts, so comparing and printing cannot
/// overflow the stack; an expansion has at most <see cref="MostNotes"/> notes. Two patterns are equal when their trees are; patterns
/// that are built differently and give the same lines are not equal. Immutable, safe to share between threads.</para>
/// </remarks>
public abstract partial record Pattern
{
    /// <summary>The most levels of a pattern's tree.</summary>
    public const int DeepestNesting = 64;

    /// <summary>The most parts (primitives and combinators) of a pattern's tree.</summary>
    public const int MostNodes = 1_000;

    /// <summary>The most notes of an expansion, of every part of a pattern too.</summary>
    public const int MostNotes = 100_000;

    // The scale for which a tree's size is bounded when it is built; the expansion bounds the true size once more.
    private const int UsualSteps = 7;

    private protected Pattern(int depth, int nodes, long notes, long longest)
    {
        if (depth > DeepestNesting)
        {
            throw new ArgumentException(Limit("levels", DeepestNesting, depth));
        }

        if (nodes > MostNodes)
        {
            throw new ArgumentException(Limit("parts", MostNodes, nodes));
        }

        if (notes > MostNotes)
        {
            throw new ArgumentException(Limit("notes in a seven-note scale", MostNotes, notes));
        }

        Depth = depth;
        Nodes = nodes;
        UsualNotes = notes;
        UsualLongest = Math.Min(notes, longest);
    }

    /// <summary>The levels of the tree; 1 for a primitive.</summary>
    public int Depth { get; }

    /// <summary>The parts of the tree; 1 for a primitive.</summary>
    public int Nodes { get; }

    /// <summary>No more notes than this in a plain seven-note scale: what bounds a tree before it is expanded.</summary>
    internal long UsualNotes { get; }

    /// <summary>No line has more notes than this in a plain seven-note scale.</summary>
    internal long UsualLongest { get; }

    /// <summary>Reads a pattern's text: <c>ladder.reversed + ladder.ends</c>.</summary>
    /// <param name="text">The text, at most 10,000 characters.</param>
    /// <param name="pattern">The pattern, or <see langword="null"/>.</param>
    /// <param name="error">The place and what was expected, or <see langword="null"/>.</param>
    /// <returns>Whether the text was a pattern.</returns>
    public static bool TryParse(string text, [NotNullWhen(true)] out Pattern? pattern, [NotNullWhen(false)] out TextError? error) => PatternText.TryRead(text, out pattern, out error);

    /// <summary>Reads a pattern as <see cref="TryParse"/> does.</summary>
    /// <param name="text">The text, at most 10,000 characters.</param>
    /// <exception cref="WarmupFormatException">The text is no pattern.</exception>
    public static Pattern Parse(string text) => TryParse(text, out var pattern, out var error) ? pattern! : throw error!.ToException();

    /// <summary>The words of the patterns' text, primitives first.</summary>
    public static ValueList<PatternWordInfo> Words =>
        PatternWord.All.ConvertAll(word => new PatternWordInfo(word.Name, word.Form, word.Meaning, !word.TakesPattern));

    /// <summary>The pattern's lines in a scale.</summary>
    /// <param name="scale">The scale.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="PatternException">The scale has no such lines, or there would be more than 100,000 notes.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public Expansion Expand(Scale scale, CancellationToken cancellationToken = default)
    {
        var expander = new Expander(cancellationToken);
        var lines = Lines(Frame.Of(scale), expander);
        return new Expansion(ValueList.Adopt(lines), expander.Findings);
    }

    /// <summary>The pattern's lines in a scale, or why there are none.</summary>
    /// <param name="scale">The scale.</param>
    /// <param name="expansion">The lines, or <see langword="null"/>.</param>
    /// <param name="refusal">What was refused and what would clear it, or <see langword="null"/>.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <returns>Whether the scale has such lines.</returns>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public bool TryExpand(Scale scale, [NotNullWhen(true)] out Expansion? expansion, [NotNullWhen(false)] out Finding? refusal, CancellationToken cancellationToken = default)
    {
        try
        {
            expansion = Expand(scale, cancellationToken);
            refusal = null;
            return true;
        }
        catch (PatternException refused)
        {
            expansion = null;
            refusal = refused.Finding;
            return false;
        }
    }

    /// <summary>The canonical text, which <see cref="Parse"/> reads back to an equal pattern.</summary>
    public sealed override string ToString() => Text;

    /// <summary>The canonical text.</summary>
    internal abstract string Text { get; }

    /// <summary>The lines in a frame.</summary>
    internal abstract Line[] Lines(Frame frame, Expander expander);

    /// <summary>The text as the operand of a combinator: in parentheses where it is a sum.</summary>
    internal virtual string OperandText => Text;

    /// <summary>Refuses a tone beyond the scale.</summary>
    private protected static ScaleTone Tone(Frame frame, int step) => frame[step] ?? throw new PatternException(new Finding(
        FindingCode.BeyondScale,
        Severity.Error,
        string.Create(CultureInfo.InvariantCulture, $"{frame.Scale.Name} does not go {(step < 0 ? "below" : "beyond")} its {(step < 0 ? "lowest" : "highest")} note, and the pattern needs step {step}"),
        "choose a scale that reaches the upper tonic, or a pattern that stays inside"));

    /// <summary>Refuses a span that has been turned inside out.</summary>
    private protected static int Span(Frame frame) => frame.Top >= 0 ? frame.Top : throw new PatternException(new Finding(
        FindingCode.PatternRefused,
        Severity.Error,
        string.Create(CultureInfo.InvariantCulture, $"the span in {frame.Scale.Name} would end {-frame.Top} steps before it begins"),
        "reach less far"));

    private protected static long TriangularNotes => UsualSteps * (UsualSteps + 3) / 2;

    private protected static int UsualTop => UsualSteps;

    private static string Limit(string what, int most, long found) =>
        string.Create(CultureInfo.InvariantCulture, $"a pattern must have at most {most} {what}, not {found}");
}
