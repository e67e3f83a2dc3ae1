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
        if (SingerFaults.OfAlias(alias) is { } wrong)
        {
            throw Fail($"{who}: {wrong}");
        }

        var type = Type(row, who);
        var experience = Experience.Beginner;
        if (row.Experience is not null && !ExperienceWords.TryParse(row.Experience, out experience))
        {
            throw Fail($"{who}: experience must be beginner, intermediate or advanced, not {TextError.Quote(row.Experience)}");
        }

        var measurements = MeasurementRows.Read(row, type, who);
        return new Singer(alias, measurements[^1], experience) { Voice = type?.Name, Older = measurements[..^1].ToValueList() };
    }

    public static SingerDto? ToRow(Singer singer)
    {
        List<Measurement> all = [.. singer.Older, singer.Measurement];
        var undated = all[0].Date is null ? MeasurementRows.ToRow(all[0], singer.Voice) : new MeasurementDto();
        return new()
        {
            Alias = singer.Alias,
            Low = undated.Low,
            High = undated.High,
            SustainedSeconds = undated.SustainedSeconds,
            Trials = undated.Trials,
            TrialRule = undated.TrialRule,
            Experience = singer.Experience.ToWord(),
            Voice = singer.Voice,
            FullLow = undated.FullLow,
            FullHigh = undated.FullHigh,
            Measurements = singer.Measurement.Date is null ? null : [.. all.Where(m => m.Date is not null).Select(m => MeasurementRows.ToRow(m, singer.Voice))],
        };
    }

    private static VoiceType? Type(SingerDto row, string who) => row.Voice is null ? null : VoiceTypes.Find(row.Voice)
        ?? throw Fail($"{who}: there is no voice type {TextError.Quote(row.Voice)}; the types are {VoiceTypes.Names}");

    private static WarmupFormatException Fail(string message) => SingersFile.Fail(1, 1, message);
}
