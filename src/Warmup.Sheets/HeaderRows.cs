using System.Globalization;

namespace Warmup.Sheets;

/// <summary>What a sheet says of a section above its lines, besides its scale: rows of a label and a text.</summary>
internal static class HeaderRows
{
    /// <summary>The label of the row that says what is sung.</summary>
    public const string Sung = "Sung";

    /// <summary>How notes are sung that do not just last: slides, short notes, swells.</summary>
    private static string Manner(Section section)
    {
        string[] all =
        [
            .. section.Notes.Any(n => n.Joining == Joining.Glide) ? (ReadOnlySpan<string>)["slide to the next note in the second half of each"] : [],
            .. section.Notes.Any(n => n.Joining == Joining.Staccato) ? (ReadOnlySpan<string>)["staccato: each note sounds for half its length"] : [],
            .. section.Notes.Any(n => n.Loudness == Loudness.SwellAndFade) ? (ReadOnlySpan<string>)["softly, swell to the middle of each note, and fade"] : [],
        ];
        return string.Join("; ", all);
    }

    public static IEnumerable<(string Label, string Text)> Of(Section section, MeterWords words)
    {
        var invariant = CultureInfo.InvariantCulture;
        yield return ("Tonic", Of(section.Tonic, section.TonicName, words));
        yield return ("Tuning", section.Tuning.Name);
        foreach (var row in TimeRows.Of(section, words))
        {
            yield return row;
        }

        if (SungWords.Of(section) is { } sung)
        {
            yield return (Sung, sung);
        }

        if (Manner(section) is { Length: > 0 } manner)
        {
            yield return ("How", manner);
        }

        yield return ("Length", string.Create(invariant, $"{section.Seconds.ToDouble():0.0} s, {Count(section.Lines.Count, "line")}, {Count(section.Notes.Count, "note")}"));
    }

    internal static string Count(int number, string noun) => string.Create(CultureInfo.InvariantCulture, $"{number} {noun}{(number == 1 ? string.Empty : "s")}");

    /// <summary>What a sheet says of a tonic: <c>S = G3 (kattai 5, 196.00 Hz)</c>.</summary>
    /// <param name="tonic">The tonic.</param>
    /// <param name="name">Its written name.</param>
    /// <param name="words">The words of the talas or of solfege.</param>
    public static string Of(Tonic tonic, NoteName name, MeterWords words)
    {
        var invariant = CultureInfo.InvariantCulture;
        var offset = tonic.OffsetCents == 0 ? string.Empty : string.Create(invariant, $", {tonic.OffsetCents:+0.0;-0.0} cents");
        var kattai = !words.IsSolfege ? $"kattai {tonic.KattaiNumber}{offset}, " : offset.Length == 0 ? string.Empty : $"{offset[2..]}, ";
        return string.Create(invariant, $"{words.Tonic(name)} ({kattai}{tonic.Hz:0.00} Hz)");
    }
}
