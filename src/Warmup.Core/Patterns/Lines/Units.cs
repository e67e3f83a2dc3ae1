using System.Globalization;

namespace Warmup;

/// <summary>Lengths within their bounds.</summary>
internal static class Units
{
    /// <summary>Refuses a length outside 1/4096 to 4096 units or with finer parts.</summary>
    public static Rational Bounded(Rational units) =>
        units <= LineNote.LongestUnits && units.Denominator <= LineNote.LongestUnits ? units : throw new PatternException(new Finding(
            FindingCode.PatternRefused,
            Severity.Error,
            string.Create(CultureInfo.InvariantCulture, $"a note would last {units} units; lengths lie from 1/{LineNote.LongestUnits} to {LineNote.LongestUnits}"),
            "stretch or shrink less"));

    public static Line WithLast(Line line, Func<LineNote, LineNote> change)
    {
        var notes = line.Notes.AsSpan().ToArray();
        notes[^1] = change(notes[^1]);
        return new Line(ValueList.Adopt(notes));
    }
}
