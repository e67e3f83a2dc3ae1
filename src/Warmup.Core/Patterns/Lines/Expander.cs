using System.Globalization;

namespace Warmup;

/// <summary>What is shared while a pattern becomes lines: the bound on notes, the findings, and the wish to stop.</summary>
internal sealed class Expander(CancellationToken cancellation)
{
    // Most patterns have nothing to be noted.
    private HashSet<Finding>? _seen;
    private List<Finding>? _findings;

    public ValueList<Finding> Findings => _findings is null ? default : ValueList.Adopt(_findings.ToArray());

    /// <summary>Notes something; the same thing once.</summary>
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
        if (notes > Pattern.MostNotes)
        {
            throw new PatternException(new Finding(
                FindingCode.PatternTooLong,
                Severity.Error,
                string.Create(CultureInfo.InvariantCulture, $"the pattern would give {notes} notes; the most is {Pattern.MostNotes}"),
                "repeat less, or take fewer lines"));
        }
    }

    /// <summary>Refuses so many repetitions of the lines' notes before memory is spent on them.</summary>
    public void BoundTimes(Line[] lines, int times) => Bound(times * Line.CountNotes(lines));

    public void Bound(IEnumerable<Line> lines) => Bound(lines.Sum(l => (long)l.Notes.Count));
}
