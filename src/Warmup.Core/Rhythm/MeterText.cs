using System.Collections.Frozen;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup;

/// <summary>Reads talas by name or by their angas, and time signatures.</summary>
internal static class MeterText
{
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

    /// <summary>Whether a meter is read by its name alone.</summary>
    public static bool IsNamed(Meter meter) => meter.Angas.IsEmpty || (Names.TryGetValue(Fold(meter.Name), out var named) && named == meter);

    public static bool TryRead(TextCursor cursor, [NotNullWhen(true)] out Meter? meter, [NotNullWhen(false)] out TextError? error)
    {
        meter = null;
        var text = cursor.Trimmed();
        if (text.IsAtEnd)
        {
            error = TextError.At(1, $"the meter is empty; {Forms}");
            return false;
        }

        if (text.Rest.LastIndexOf(':') is var colon and >= 0)
        {
            return TryReadTala(text, text.Position + colon, out meter, out error);
        }

        // What a meter prints after its name repeats what the name says.
        var open = text.Rest[^1] == ')' ? text.Rest.LastIndexOf('(') : -1;
        var name = open < 0 ? text : text.Before(text.Position + open).Trimmed();
        if (!(char.IsAsciiDigit(text.Peek()) ? TryTimeSignature(name, out meter, out error) : TryName(name, out meter, out error)))
        {
            return false;
        }

        if (open >= 0 && !meter.ToString().EndsWith(text.Rest[open..].ToString(), StringComparison.Ordinal))
        {
            error = text.ErrorAt(text.Position + open, $"{meter.Name} is {meter}; leave out {TextError.Quote(text.Rest[open..])} or mend it");
            meter = null;
            return false;
        }

        return true;
    }

    private static bool TryReadTala(TextCursor text, int colon, [NotNullWhen(true)] out Meter? meter, [NotNullWhen(false)] out TextError? error)
    {
        meter = null;
        var name = text.Before(colon).Rest.TrimEnd().ToString();
        if (Require.NameFault(name, Meter.LongestName) is { } fault)
        {
            error = text.Error($"the name {TextError.Quote(name)} of a tala {fault}");
            return false;
        }

        var angas = new List<Anga>();
        var aksharas = 0;
        var rest = text;
        do
        {
            rest.Position = angas.Count == 0 ? colon + 1 : rest.Position + 1;
            var start = rest.Position;
            rest.TakeWhile(static c => c != '+');
            if (!AngaText.TryRead(rest.Word(start), out var anga, out error))
            {
                return false;
            }

            angas.Add(anga);
            aksharas += anga.Aksharas;
            if (aksharas > Meter.MostBeats)
            {
                error = rest.Word(start).Trimmed().Error(string.Create(CultureInfo.InvariantCulture, $"a tala must have 1 to {Meter.MostBeats} aksharas; here they are {aksharas}"));
                return false;
            }
        }
        while (!rest.IsAtEnd);

        meter = Meter.Tala(name, angas.ToValueList());
        error = null;
        return true;
    }

    private static bool TryName(TextCursor text, [NotNullWhen(true)] out Meter? meter, [NotNullWhen(false)] out TextError? error)
    {
        var folded = Fold(text.Rest.ToString());
        error = Names.TryGetValue(folded, out meter) ? null : text.Error($"unknown tala {TextError.Quote(text.Rest)}; {Suggest(folded) ?? Forms}");
        return meter is not null && error is null;
    }

    private static bool TryTimeSignature(TextCursor text, [NotNullWhen(true)] out Meter? meter, [NotNullWhen(false)] out TextError? error)
    {
        meter = null;
        var slash = text.Rest.IndexOf('/');
        if (slash < 0)
        {
            error = text.ErrorAt(text.End, $"the time signature {TextError.Quote(text.Rest)} lacks its beat; add it, such as {Cut(text.Rest)}/4");
            return false;
        }

        var groups = new List<int>();
        var upper = text.Before(text.Position + slash);
        var sum = 0;
        while (true)
        {
            var start = upper.Position;
            upper.TakeWhile(static c => c != '+');
            if (!TryNumber(upper.Word(start), "the beats of a group", 1, Meter.MostBeats, out var group, out error))
            {
                return false;
            }

            groups.Add(group);
            sum += group;
            if (!upper.TryTake('+'))
            {
                break;
            }
        }

        if (sum > Meter.MostBeats)
        {
            error = text.Error(string.Create(CultureInfo.InvariantCulture, $"the beats of an avartana must be between 1 and {Meter.MostBeats}, not {sum}"));
            return false;
        }

        var lower = text;
        lower.Position += slash + 1;
        if (!TryNumber(lower, "the lower number of a time signature", 1, Meter.FinestBeatType, out var type, out error))
        {
            return false;
        }

        if (!int.IsPow2(type))
        {
            error = lower.Error(string.Create(CultureInfo.InvariantCulture, $"the lower number of a time signature must be 1, 2, 4, 8, 16 or 32, not {type}"));
            return false;
        }

        meter = Meter.Additive(groups.ToValueList(), type);
        return true;
    }

    private static bool TryNumber(TextCursor text, string what, int low, int high, out int value, [NotNullWhen(false)] out TextError? error)
    {
        var number = text.Trimmed();
        var digits = number.Rest;
        value = 0;
        error = null;
        if (digits.IsEmpty || digits.ContainsAnyExceptInRange('0', '9'))
        {
            error = number.Error($"{TextError.Quote(digits)} is not a whole number; {Forms}");
            return false;
        }

        if (int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out value) && value >= low && value <= high)
        {
            return true;
        }

        error = number.Error(string.Create(CultureInfo.InvariantCulture, $"{what} must be between {low} and {high}, not {Cut(digits)}"));
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

        // Chapu alone is misra chapu (lvnaga.wordpress.com, Talas in Carnatic Music 3).
        names[Fold("chapu")] = names[Fold("misra chapu")];
        names[Fold("misra chapu wave")] = names[Fold("misra chapu with waves")];
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
