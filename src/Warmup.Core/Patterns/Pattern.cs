using System.Diagnostics.CodeAnalysis;

namespace Warmup;

/// <summary>
/// A rule that gives lines for any scale: a value that can be compared, printed, read back and combined.
/// </summary>
/// <remarks>
/// <para>Patterns are built from a few primitives (<see cref="Ladder"/>, <see cref="Run"/>, <see cref="Figure"/>, <see cref="Written"/>)
/// with combinators; every result is again a pattern. A program adds a combinator of its own as a <see cref="Combinator"/>.</para>
/// <para>A tree has at most 64 levels and 1,000 parts (primitives and combinators together), so comparing and printing cannot overflow the
/// stack; a pattern, or a part of it, may give at most 100,000 notes in a scale (the project's own settings). Two patterns are equal when
/// their trees are; patterns that are built differently and give the same lines are not equal. Immutable, safe to share between threads.</para>
/// </remarks>
public abstract partial record Pattern
{
    private protected Pattern(int depth, int nodes, long notes, long longest)
    {
        if (depth > PatternLimits.Levels)
        {
            throw new PatternTooLargeException(PatternLimits.TooMany("levels", PatternLimits.Levels, depth));
        }

        if (nodes > PatternLimits.Nodes)
        {
            throw new PatternTooLargeException(PatternLimits.TooMany("parts", PatternLimits.Nodes, nodes));
        }

        if (notes > PatternLimits.Notes)
        {
            throw new PatternTooLargeException(PatternLimits.TooMany("notes in a seven-note scale", PatternLimits.Notes, notes));
        }

        Depth = depth;
        Nodes = nodes;
        UsualNotes = notes;
        UsualLongest = Math.Min(notes, longest);
    }

    /// <summary>The parts of the tree; 1 for a primitive.</summary>
    public int Nodes { get; }

    /// <summary>The levels of the tree; 1 for a primitive.</summary>
    internal int Depth { get; }

    /// <summary>No more notes than this in a plain seven-note scale: what bounds a tree before it is expanded.</summary>
    internal long UsualNotes { get; }

    /// <summary>No line has more notes than this in a plain seven-note scale.</summary>
    internal long UsualLongest { get; }

    /// <summary>The canonical text.</summary>
    internal abstract string Text { get; }

    /// <summary>The text as the operand of a combinator: in parentheses where it is a sum.</summary>
    internal virtual string OperandText => Text;

    /// <summary>The pattern's lines in a scale.</summary>
    /// <param name="scale">The scale.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="PatternException">The scale has no such lines, or there would be more than 100,000 notes.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public Expansion Expand(Scale scale, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(scale);
        var expander = new Expander(cancellationToken);
        var lines = Lines(Frame.Of(scale), expander);
        return Expansion.Of(lines, expander.Findings);
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

    /// <summary>The canonical text, which <see cref="Parse(string)"/> reads back to an equal pattern.</summary>
    public sealed override string ToString() => Text;

    /// <summary>The lines in a frame.</summary>
    internal abstract Line[] Lines(Frame frame, Expander expander);

    /// <summary>The tone a number of steps forward from the home note; refuses one that the scale does not have.</summary>
    private protected static ScaleTone Tone(Frame frame, int step) => frame[step] ?? throw BeyondScale(frame, step);

    /// <summary>The steps from the home note to the far end; refuses a span that has been turned inside out.</summary>
    private protected static int Steps(Frame frame) => frame.Top >= 0 ? frame.Top : throw InsideOut(frame);

    private protected static PatternException BeyondScale(Frame frame, int step)
    {
        var place = frame.Place(frame.Direction, step);
        var below = place < 0;
        return new PatternException(new Finding(
            FindingCode.BeyondScale,
            Severity.Error,
            $"{frame.Scale.Name} does not go {(below ? "below its lowest" : "beyond its highest")} note, and the pattern needs a note {English.Count(Math.Abs(place), "step")} {(below ? "below" : "above")} the tonic",
            "choose a scale that reaches the upper tonic, or a pattern that stays inside"));
    }

    private static PatternException InsideOut(Frame frame) => new(new Finding(
        FindingCode.PatternRefused,
        Severity.Error,
        $"in {frame.Scale.Name} the pattern would end {English.Count(-frame.Top, "step")} before it begins",
        "move its beginning and its end by fewer steps"));
}
