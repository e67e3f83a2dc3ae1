using System.Collections.Frozen;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup;

/// <summary>Reads the names of talas and time signatures.</summary>
internal static class MeterText
{
    private const int LongestText = 200;
    private const int MostSuggestions = 3;
    private const string Forms = "write a tala such as adi or misra-jati jhampa, a time signature such as 7/8 or 2+2+3/8, or free";

    // Folded names and their meters, each spelling beside the first (common practice; folding takes care of case, marks and h's).
    private static readonly string[][] JatiNames =
    [
        ["tisra", "trisra", "tryasra", "tisram"],
        ["chatusra", "caturasra", "chaturashra", "chathurasra"],
        ["khanda", "kanda"],
        ["misra", "mishra"],
        ["sankirna", "sankeerna", "sangeerna"],
    ];

    private static readonly string[][] FamilyNames =
    [
        ["dhruva", "druva", "dhruvam"],
        ["matya", "mathya", "mattiya", "matyam"],
        ["rupaka", "roopaka", "rupakam"],
        ["jhampa", "jampa", "jhampai"],
        ["triputa", "thriputa", "tripuda"],
        ["ata", "atta", "ada"],
        ["eka", "ekam"],
    ];

    private static readonly FrozenDictionary<string, Meter> Names = MakeNames();

    public static bool TryParse(string? text, [NotNullWhen(true)] out Meter? meter, [NotNullWhen(false)] out TextError? error)
    {
        meter = null;
        error = null;
        if (string.IsNullOrWhiteSpace(text))
        {
            error = TextError.At(1, $"the meter is empty; {Forms}");
            return false;
        }

        if (text.Length > LongestText)
        {
            error = TextError.At(
                LongestText + 1, string.Create(CultureInfo.InvariantCulture, $"a meter must be at most {LongestText} characters long, not {text.Length}"));
            return false;
        }

        return char.IsAsciiDigit(text.AsSpan().TrimStart()[0])
            ? TryTimeSignature(text, out meter, out error)
            : TryName(text, out meter, out error);
    }

    private static bool TryName(string text, [NotNullWhen(true)] out Meter? meter, [NotNullWhen(false)] out TextError? error)
    {
        error = null;
        var folded = Fold(text);
        if (Names.TryGetValue(folded, out meter))
        {
            return true;
        }

        var column = text.Length - text.AsSpan().TrimStart().Length + 1;
        error = TextError.At(column, $"unknown tala {TextError.Quote(text.AsSpan().Trim())}; {Suggest(folded) ?? Forms}");
        return false;
    }

    private static bool TryTimeSignature(string text, [NotNullWhen(true)] out Meter? meter, [NotNullWhen(false)] out TextError? error)
    {
        meter = null;
        var slash = text.IndexOf('/', StringComparison.Ordinal);
        if (slash < 0)
        {
            error = TextError.At(text.Length + 1, $"the time signature {TextError.Quote(text.AsSpan().Trim())} lacks its beat; add it, such as {Cut(text)}/4");
            return false;
        }

        var groups = new List<int>();
        var from = 0;
        while (from <= slash)
        {
            var to = text.IndexOf('+', from, slash - from);
            to = to < 0 ? slash : to;
            if (!TryNumber(text, from, to, "the beats of a group", 1, Meter.MostBeats, out var group, out error))
            {
                return false;
            }

            groups.Add(group);
            from = to + 1;
        }

        if (groups.Sum() > Meter.MostBeats)
        {
            error = TextError.At(
                1, string.Create(CultureInfo.InvariantCulture, $"the beats of an avartana must be between 1 and {Meter.MostBeats}, not {groups.Sum()}"));
            return false;
        }

        if (!TryNumber(text, slash + 1, text.Length, "the lower number of a time signature", 1, Meter.FinestBeatType, out var type, out error))
        {
            return false;
        }

        if (!int.IsPow2(type))
        {
            error = TextError.At(
                slash + 2, string.Create(CultureInfo.InvariantCulture, $"the lower number of a time signature must be 1, 2, 4, 8, 16 or 32, not {type}"));
            return false;
        }

        meter = Meter.Additive(groups.ToValueList(), type);
        return true;
    }

    private static bool TryNumber(string text, int from, int to, string what, int low, int high, out int value, [NotNullWhen(false)] out TextError? error)
    {
        var digits = text.AsSpan(from, to - from).Trim();
        value = 0;
        error = null;
        if (digits.IsEmpty || digits.ContainsAnyExceptInRange('0', '9'))
        {
            error = TextError.At(from + 1, $"{TextError.Quote(digits)} is no whole number; {Forms}");
            return false;
        }

        if (int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out value) && value >= low && value <= high)
        {
            return true;
        }

        error = TextError.At(from + 1, string.Create(CultureInfo.InvariantCulture, $"{what} must be between {low} and {high}, not {Cut(digits)}"));
        return false;
    }

    private static string Cut(ReadOnlySpan<char> text) => TextError.Quote(text.Trim()).Trim('\'');

    private static string? Suggest(string folded)
    {
        if (folded.Length == 0)
        {
            return null;
        }

        var near = new List<(int Distance, string Name)>();
        foreach (var (spelling, meter) in Names)
        {
            near.Add((ScaleName.Distance(folded, spelling), meter.Name));
        }

        var limit = Math.Max(2, folded.Length / 3);
        var best = near.Where(n => n.Distance <= limit).OrderBy(n => n.Distance).ThenBy(n => n.Name, StringComparer.Ordinal)
            .Select(n => n.Name).Distinct().Take(MostSuggestions).ToList();
        return best.Count == 0 ? null : $"perhaps {string.Join(" or ", best)}";
    }

    private static FrozenDictionary<string, Meter> MakeNames()
    {
        var names = new Dictionary<string, Meter>(StringComparer.Ordinal) { [Fold("free")] = Meter.Free, [Fold("adi")] = Meter.Adi };
        for (var f = 0; f < FamilyNames.Length; f++)
        {
            foreach (var family in FamilyNames[f])
            {
                names[Fold(family)] = Meter.Tala((TalaFamily)f);
                for (var j = 0; j < JatiNames.Length; j++)
                {
                    foreach (var jati in JatiNames[j])
                    {
                        names[Fold($"{jati} {family}")] = Meter.Tala((TalaFamily)f, (Jati)j);
                    }
                }
            }
        }

        foreach (var chapu in Meter.Chapus)
        {
            names[Fold(chapu.Name)] = chapu;
        }

        foreach (var (jati, index) in JatiNames.Select((n, i) => (n, i)))
        {
            foreach (var spelling in jati)
            {
                if (names.TryGetValue(Fold($"{JatiNames[index][0]} chapu"), out var chapu))
                {
                    names[Fold($"{spelling} chapu")] = chapu;
                }
            }
        }

        foreach (var family in FamilyNames[(int)TalaFamily.Rupaka])
        {
            names[Fold($"{family} chapu")] = names[Fold("rupaka-chapu")];
        }

        return names.ToFrozenDictionary(StringComparer.Ordinal);
    }

    /// <summary>The name as <see cref="ScaleName.Fold"/> has it, without the words jati and tala.</summary>
    private static string Fold(string text)
    {
        var words = text.Split([' ', '-', '_', '\t'], StringSplitOptions.RemoveEmptyEntries)
            .Select(w => ScaleName.Fold(w))
            .Where(w => w is not ("jati" or "jaati" or "tala" or "tal" or "taal" or "talam"));
        return string.Concat(words);
    }
}
