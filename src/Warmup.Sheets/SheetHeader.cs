using System.Globalization;

namespace Warmup.Sheets;

/// <summary>What a sheet says of a section above its lines, the scale's notes aside: rows of a label and a text.</summary>
internal static class SheetHeader
{
    public static IEnumerable<(string Label, string Text)> Rows(Section section)
    {
        var invariant = CultureInfo.InvariantCulture;
        var offset = section.Tonic.OffsetCents == 0 ? string.Empty : string.Create(invariant, $", {section.Tonic.OffsetCents:+0.0;-0.0} cents");
        yield return ("Tonic", string.Create(invariant, $"S = {section.TonicName} (kattai {section.Tonic.KattaiNumber}{offset}, {section.Tonic.Hz:0.00} Hz)"));
        yield return ("Tuning", section.Tuning.Name);
        foreach (var row in TimeHeader.Rows(section))
        {
            yield return row;
        }

        if (SungWords.Of(section) is { } words)
        {
            yield return ("Sung", words);
        }

        yield return ("Length", string.Create(invariant, $"{section.Seconds.ToDouble():0.0} s, {section.Lines.Count} lines, {section.Notes.Count} notes"));
    }

    /// <summary>What stands over lines of one speed where a section has several.</summary>
    public static string Of(Section section, SpeedRun run) => string.Create(
        CultureInfo.InvariantCulture,
        $"{(section.Rounds > 1 ? $"Time {run.Round + 1} of {section.Rounds}, " : "From here: ")}{run.Speed}, {section.TempoAt(section.Lines[run.First].Onset).ToDouble():0.###} aksharas a minute");
}
