using System.Globalization;
using Warmup.Reading;

namespace Warmup.Web;

/// <summary>What was read, as values of the page on which drills are made: the lines as written, the scale, the tonic and the time.</summary>
/// <param name="Changes">The values.</param>
/// <param name="Lines">How many of the lines an address can carry.</param>
internal sealed record ReadDrill(ValueList<(string Name, string Value)> Changes, int Lines)
{
    private static readonly ValueList<Speed> Speeds =
        Enum.GetValues<Jati>().Select(j => Anga.Laghu(j).Aksharas).Order().SelectMany(gati => Enumerable.Range(1, 4).Select(kalam => new Speed(kalam, gati))).OrderBy(s => s.Gati == 4 ? 0 : 1).ToValueList();

    /// <summary>The values for a section; nothing where its lines cannot be written out.</summary>
    public static ReadDrill? Of(ReadSection section, Limits limits)
    {
        if (section.ToPattern() is not { } pattern || !pattern.TryExpand(section.Scale, out var written, out _))
        {
            return null;
        }

        // One unit of what is written, in aksharas; the silences at the ends of lines are written too.
        var unit = section.Lines[0].Notes[0].Length / written!.Lines[0].Notes[0].Length;
        var rows = pattern.ToString()!.Trim('[', ']').Split(" / ").Zip(section.Lines, (text, line) => text + Silence(line.Notes[^1].Rest / unit)).ToList();
        var count = Fitting(rows, limits.LongestLines - 40);
        if (count == 0)
        {
            return null;
        }

        var asWritten = Speeds.FirstOrDefault(s => s.Unit == unit) is var speed && speed.Unit == unit;
        var tempo = Rational.Max(limits.SlowestTempo, Rational.Min(limits.FastestTempo, section.Tempo));
        return new ReadDrill(
        [
            .. asWritten
                ? ((string, string)[])[("from", "written"), ("written", string.Join('\n', rows.Take(count))), ("gati", Text(speed.Gati)), ("speeds", Text(speed.Kalam))]
                : [("from", "words"), ("pattern", $"[{string.Join(" / ", rows.Take(count))}].stretch({unit.Numerator}).shrink({unit.Denominator})"), ("gati", string.Empty), ("speeds", "1")],
            ("scale", DrillAddress.NameOf(section.Scale)),
            ("tonic", section.Tonic.ToString()),
            ("tempo", tempo.ToString()),
            ("tala", section.Meter.ToText()),
            ("title", Plain(section.Title)),
            ("count-in", section.CountIn == 0 || section.Meter.IsFree ? string.Empty : Text(section.CountIn)),
            ("eduppu", section.Eduppu.Sign == 0 || section.Meter.IsFree ? string.Empty : section.Eduppu.ToString()),
            ("syllables", section.Syllables is { } sung && Syllables.All.Contains(sung) ? sung.Name : string.Empty),
            ("delivery", "continuous"),
            .. ((string[])["fill", "fill-by", "breath", "breaths", "lines", "repeat", "climb", "cue"]).Select(n => (n, string.Empty)),
        ], count);
    }

    /// <summary>The values for a rule that gives the lines.</summary>
    public static IEnumerable<(string Name, string Value)> Of(FoundRule rule) => rule.Exercise is { } known && Repertoire.Find(known) is { } exercise
        ? [("from", "exercise"), ("exercise", exercise.Name)]
        : [("from", "words"), ("pattern", rule.Rule.ToString()!)];

    private static string Silence(Rational units) => units.IsInteger && units.Numerator is > 0 and <= 64 ? string.Concat(Enumerable.Repeat(" -", (int)units.Numerator)) : string.Empty;

    // As many of the first rows as have room in an address.
    private static int Fitting(List<string> rows, int most)
    {
        var length = 0;
        return rows.TakeWhile(r => (length += r.Length + 3) <= most).Count();
    }

    private static string Plain(string title) => new([.. title.Where(c => !char.IsControl(c) && !char.IsSurrogate(c) && char.GetUnicodeCategory(c) != UnicodeCategory.Format).Take(200)]);

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
