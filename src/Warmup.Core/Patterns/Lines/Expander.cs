using System.Globalization;

namespace Warmup;

/// <summary>What is shared while a pattern becomes lines: the bound on notes, the findings, and the wish to stop.</summary>
internal sealed class Expander(CancellationToken cancellation)
{
    // Most patterns leave nothing to remark.
    private HashSet<Finding>? _seen;
    private List<Finding>? _findings;

    // What was made last and before: the parts of a sum often ask for the same lines again, in one frame or the other.
    private (PrimitivePattern? Pattern, Frame Frame, Line[] Lines) _last;
    private (PrimitivePattern? Pattern, Frame Frame, Line[] Lines) _before;

    public ValueList<Finding> Findings => _findings is null ? default : ValueList.Adopt(_findings.ToArray());

    public CancellationToken Cancellation => cancellation;

    /// <summary>A primitive's lines in a frame, made once where they are asked for again. Nobody writes to the array.</summary>
    public Line[] Once(PrimitivePattern pattern, Frame frame)
    {
        if (!Is(_last, pattern, frame))
        {
            (_last, _before) = Is(_before, pattern, frame) ? (_before, _last) : ((pattern, frame, pattern.Make(frame, this)), _last);
        }

        return _last.Lines;
    }

    private static bool Is(in (PrimitivePattern? Pattern, Frame Frame, Line[] Lines) made, PrimitivePattern pattern, Frame frame) =>
        ReferenceEquals(made.Pattern, pattern) && made.Frame == frame;

    /// <summary>Keeps a remark; the same one once.</summary>
    public void Note(Finding finding)
    {
        _seen ??= [];
        if (_seen.Add(finding))
        {
            (_findings ??= []).Add(finding);
        }
    }

    /// <summary>Refuses a result of too many notes before memory is spent on it.</summary>
    public void Bound(long notes)
    {
        cancellation.ThrowIfCancellationRequested();
        if (notes > PatternLimits.Notes)
        {
            throw TooMany(notes);
        }
    }

    /// <summary>Refuses to repeat the lines' notes too many times before memory is spent on them.</summary>
    public void BoundTimes(Line[] lines, int times) => Bound(times * Line.CountNotes(lines));

    public void Bound(Line[] lines) => Bound(Line.CountNotes(lines));

    /// <summary>Refuses a note or a silence that would last too long, or too short.</summary>
    public static Rational BoundUnits(Rational units) => LineNote.Fits(units) ? units : throw TooLong(units);

    private static PatternException TooMany(long notes) => new(new Finding(
        FindingCode.PatternTooLong,
        Severity.Error,
        string.Create(CultureInfo.InvariantCulture, $"the pattern would give {notes} notes; the most is {PatternLimits.Notes}"),
        "repeat it fewer times, or take fewer lines"));

    private static PatternException TooLong(Rational units) => new(new Finding(
        FindingCode.PatternRefused,
        Severity.Error,
        string.Create(
            CultureInfo.InvariantCulture,
            $"a note or a silence would last {units} units; lengths are from 1/{LineNote.LongestUnits} to {LineNote.LongestUnits} units"),
        "stretch or shrink less"));
}
