using System.Globalization;
using Warmup.Plans;

namespace Warmup.Month;

/// <summary>The command line: <c>--month 2026-12 --singers FILE --scales "A, B" --out FOLDER [--minutes N] [--seed N] [--force]</c>.</summary>
internal sealed record MonthOptions(PlanRequest Request, string Folder, bool Overwrite)
{
    public const string Usage = "Warmup.Month --month 2026-12 --singers class.json --scales \"mohanam, hamsadhwani\" --out december [--minutes 8] [--seed 1] [--force]";

    /// <summary>Reads the words after the program's name.</summary>
    /// <exception cref="ArgumentException">An option is missing, unknown or wrong; the message says which and what would be right.</exception>
    /// <exception cref="WarmupFormatException">A scale or the class cannot be read.</exception>
    public static MonthOptions Read(string[] args)
    {
        var given = new Dictionary<string, string>(StringComparer.Ordinal);
        for (var i = 0; i < args.Length; i++)
        {
            var isFlag = args[i] == "--force";
            if (!isFlag && (args[i] is not ("--month" or "--singers" or "--scales" or "--out" or "--minutes" or "--seed") || i + 1 == args.Length))
            {
                throw new ArgumentException($"{TextError.Quote(args[i])} is not an option, or has no value; write {Usage}");
            }

            given[args[i]] = isFlag ? string.Empty : args[++i];
        }

        var month = Of("--month");
        if (!DateOnly.TryParseExact(month, "yyyy-MM", CultureInfo.InvariantCulture, DateTimeStyles.None, out var start))
        {
            throw new ArgumentException($"--month must be a year and a month such as 2026-12, not {TextError.Quote(month)}");
        }

        var names = Of("--scales").Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        var request = new PlanRequest
        {
            Scales = names.Select(Catalogue.Default.Read).ToValueList(),
            Singers = SingersFile.Read(File.ReadAllBytes(Of("--singers"))),
            Start = start,
            Days = DateTime.DaysInMonth(start.Year, start.Month),
        };
        if (given.TryGetValue("--minutes", out var minutes))
        {
            request = request with { Minutes = int.TryParse(minutes, NumberStyles.None, CultureInfo.InvariantCulture, out var m) ? m : throw Number("--minutes", minutes) };
        }

        if (given.TryGetValue("--seed", out var seed))
        {
            request = request with { Seed = ulong.TryParse(seed, NumberStyles.None, CultureInfo.InvariantCulture, out var s) ? s : throw Number("--seed", seed) };
        }

        return new MonthOptions(request, Of("--out"), given.ContainsKey("--force"));

        string Of(string option) => given.TryGetValue(option, out var value) ? value : throw new ArgumentException($"{option} is missing; write {Usage}");
    }

    private static ArgumentException Number(string option, string text) => new($"{option} must be a whole number, not {TextError.Quote(text)}");
}
