using System.Globalization;

namespace Warmup.Voices;

/// <summary>Turns a row of the class's file into a singer and back.</summary>
internal static class SingerRows
{
    public static Singer ToSinger(SingerDto? row, int number)
    {
        var who = string.Create(CultureInfo.InvariantCulture, $"singer {number}")
            + (string.IsNullOrWhiteSpace(row?.Alias) ? string.Empty : $" ({TextError.Quote(row.Alias)})");
        if (row is null)
        {
            throw Fail($"{who} is empty");
        }

        var alias = row.Alias ?? throw Fail($"{who} lacks \"alias\"");
        var type = Type(row, who);
        var assumed = row.Low is null && row.High is null && type is { IsComfortable: true };
        var low = assumed ? type!.Low : Note(row.Low, "low", who, type);
        var high = assumed ? type!.High : Note(row.High, "high", who, type);
        var experience = Experience.Beginner;
        if (row.Experience is not null && !ExperienceWords.TryParse(row.Experience, out experience))
        {
            throw Fail($"{who}: experience must be beginner, intermediate or advanced, not {TextError.Quote(row.Experience)}");
        }

        var trials = row.Trials?.ConvertAll(t => Seconds(t, "a trial", who)).ToValueList();
        var rule = trials is null ? TrialRule.Best : Rule(row, who);
        var sustained = trials is null ? Sustained(row, who) : default;
        NoteName? fullLow = row.FullLow is null ? null : Note(row.FullLow, "fullLow", who, null);
        NoteName? fullHigh = row.FullHigh is null ? null : Note(row.FullHigh, "fullHigh", who, null);
        var fault = SingerFaults.OfAlias(alias) ?? SingerFaults.OfRange(low, high) ?? (trials is { } some ? SingerFaults.OfTrials(some.Count) : null)
            ?? SingerFaults.OfFullLow(fullLow, low) ?? SingerFaults.OfFullHigh(fullHigh, high);
        if (fault is not null)
        {
            throw Fail($"{who}: {fault}");
        }

        var singer = trials is { } tones ? new Singer(alias, low, high, tones, rule, experience) : new Singer(alias, low, high, sustained, experience);
        return singer with { Voice = type?.Name, IsRangeAssumed = assumed, FullLow = fullLow, FullHigh = fullHigh };
    }

    public static SingerDto? ToRow(Singer singer) => new()
    {
        Alias = singer.Alias,
        Low = IsFromVoice(singer) ? null : singer.Low.ToString(),
        High = IsFromVoice(singer) ? null : singer.High.ToString(),
        SustainedSeconds = singer.Trials.IsEmpty ? Number(singer.SustainedSeconds) : null,
        Trials = singer.Trials.IsEmpty ? null : [.. singer.Trials.ConvertAll(Number)],
        TrialRule = singer.Trials.IsEmpty ? null : singer.TrialRule == TrialRule.Best ? "best" : "median",
        Experience = singer.Experience.ToWord(),
        Voice = singer.Voice,
        FullLow = singer.FullLow?.ToString(),
        FullHigh = singer.FullHigh?.ToString(),
    };

    private static bool IsFromVoice(Singer singer) => singer is { IsRangeAssumed: true, Voice: { } voice }
        && VoiceTypes.Find(voice) is { IsComfortable: true } type && type.Low == singer.Low && type.High == singer.High;

    private static VoiceType? Type(SingerDto row, string who) => row.Voice is null ? null : VoiceTypes.Find(row.Voice)
        ?? throw Fail($"{who}: there is no voice type {TextError.Quote(row.Voice)}; the types are {VoiceTypes.Names}");

    private static TrialRule Rule(SingerDto row, string who)
    {
        if (row.SustainedSeconds is not null)
        {
            throw Fail($"{who} has both \"sustainedSeconds\" and \"trials\"; leave out one");
        }

        return row.TrialRule switch
        {
            null or "best" => TrialRule.Best,
            "median" => TrialRule.Median,
            _ => throw Fail($"{who}: trialRule must be best or median, not {TextError.Quote(row.TrialRule)}"),
        };
    }

    private static Rational Sustained(SingerDto row, string who)
    {
        if (row.TrialRule is not null)
        {
            throw Fail($"{who} has \"trialRule\" without \"trials\"; leave it out or list the trials");
        }

        return Seconds(
            row.SustainedSeconds ?? throw Fail($"{who} lacks \"sustainedSeconds\"; measure the longest comfortable tone in seconds"),
            "\"sustainedSeconds\"",
            who);
    }

    private static Rational Seconds(decimal seconds, string what, string who) => seconds >= SustainedTone.Shortest && seconds <= SustainedTone.Longest
        ? Rational.FromDecimal(Math.Round(seconds, 3))
        : throw Fail(string.Create(
            CultureInfo.InvariantCulture, $"{who}: {what} must be between {SustainedTone.Shortest} and {SustainedTone.Longest}, not {seconds}"));

    private static decimal Number(Rational seconds) => Math.Round((decimal)seconds.Numerator / seconds.Denominator, 3);

    private static NoteName Note(string? text, string member, string who, VoiceType? type)
    {
        if (text is null)
        {
            throw Fail(type is { IsComfortable: false }
                ? $"{who} lacks \"{member}\"; the range of '{type.Name}' is not a comfortable one, so low and high must be measured"
                : $"{who} lacks \"{member}\"; write a note name such as A3");
        }

        return NoteName.TryParse(text, out var name, out _)
            ? name
            : throw Fail($"{who}: \"{member}\" must be a note name such as A3, not {TextError.Quote(text)}");
    }

    private static WarmupFormatException Fail(string message) => SingersFile.Fail(1, 1, message);
}
