using System.Globalization;

namespace Warmup.Sheets;

/// <summary>What a sheet says of a section above its lines, besides its scale: rows of a label and a text.</summary>
internal static class HeaderRows
{
    public static IEnumerable<(string Label, string Text)> Of(Section section)
    {
        var invariant = CultureInfo.InvariantCulture;
        var offset = section.Tonic.OffsetCents == 0 ? string.Empty : string.Create(invariant, $", {section.Tonic.OffsetCents:+0.0;-0.0} cents");
        yield return ("Tonic", string.Create(invariant, $"S = {section.TonicName} (kattai {section.Tonic.KattaiNumber}{offset}, {section.Tonic.Hz:0.00} Hz)"));
        yield return ("Tuning", section.Tuning.Name);
        foreach (var row in TimeRows.Of(section))
        {
            yield return row;
        }

        if (SungWords.Of(section) is { } words)
        {
            yield return ("Sung", words);
        }

        yield return ("Length", string.Create(invariant, $"{section.Seconds.ToDouble():0.0} s, {section.Lines.Count} lines, {section.Notes.Count} notes"));
    }
}
