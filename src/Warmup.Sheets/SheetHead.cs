using System.Globalization;

namespace Warmup.Sheets;

/// <summary>What stands above the lines of a section on every sheet: a word and what it says.</summary>
internal static class SheetHead
{
    /// <summary>The rows in order; a word with spaces in front belongs to the row before.</summary>
    public static IEnumerable<(string Word, string Text)> Rows(Section section)
    {
        var invariant = CultureInfo.InvariantCulture;
        yield return ("Scale", section.Scale.Name);
        yield return ("  up", string.Join(' ', section.Scale.Ascent));
        yield return ("  down", string.Join(' ', section.Scale.Descent));
        var offset = section.Tonic.OffsetCents == 0 ? string.Empty : string.Create(invariant, $", {section.Tonic.OffsetCents:+0.0;-0.0} cents");
        yield return ("Tonic", string.Create(invariant, $"S = {section.TonicName} (kattai {section.Tonic.KattaiNumber}{offset}, {section.Tonic.Hz:0.00} Hz)"));
        yield return ("Tuning", section.Tuning.Name);
        foreach (var row in TimeHead.Rows(section))
        {
            yield return row;
        }

        yield return ("Length", string.Create(invariant, $"{section.Seconds.ToDouble():0.0} s, {section.Lines.Count} lines, {section.Notes.Count} notes"));
    }
}
