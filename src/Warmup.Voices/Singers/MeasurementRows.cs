using System.Globalization;

namespace Warmup.Voices;

/// <summary>Turns the measurements in a row of the class's file into values and back.</summary>
internal static class MeasurementRows
{
    private const int Most = 1_000;
    private const string DayFormat = "yyyy-MM-dd";

    /// <summary>A singer's measurements, the oldest first; the one without a date, which stands in the singer's own members, before all others.</summary>
    public static List<Measurement> Read(SingerDto row, VoiceType? type, string who)
    {
        var measurements = new List<Measurement>();
        if (row.Measurements is null || HasNumbers(row))
        {
            measurements.Add(Read(row, null, type, who));
        }

        if (row.Measurements is { } dated)
        {
            if (dated.Count is 0 or > Most)
            {
                throw Fail(string.Create(CultureInfo.InvariantCulture, $"{who}: the number of measurements must be between 1 and {Most}, not {dated.Count}; without any, leave \"measurements\" out"));
            }

            for (var m = 0; m < dated.Count; m++)
            {
                var which = string.Create(CultureInfo.InvariantCulture, $"{who}, measurement {m + 1}");
                var one = dated[m] ?? throw Fail($"{which} is empty");
                measurements.Add(Read(one, Day(one.Date, which), type, which));
            }
        }

        measurements.Sort((a, b) => Nullable.Compare(a.Date, b.Date));
        for (var m = 1; m < measurements.Count; m++)
        {
            if (measurements[m].Date == measurements[m - 1].Date)
            {
                throw Fail($"{who} has two measurements {SingerFaults.OfDay(measurements[m].Date)}; keep one of the two");
            }
        }

        return measurements;
    }

    public static MeasurementDto ToRow(Measurement measurement, string? voice)
    {
        var isFromVoice = measurement.IsRangeAssumed && voice is not null && VoiceTypes.Find(voice) is { IsComfortable: true } type
            && type.Low == measurement.Low && type.High == measurement.High;
        return new()
        {
            Date = measurement.Date?.ToString(DayFormat, CultureInfo.InvariantCulture),
            Low = isFromVoice ? null : measurement.Low.ToString(),
            High = isFromVoice ? null : measurement.High.ToString(),
            SustainedSeconds = measurement.Trials.IsEmpty ? Number(measurement.SustainedSeconds) : null,
            Trials = measurement.Trials.IsEmpty ? null : [.. measurement.Trials.ConvertAll(Number)],
            TrialRule = measurement.Trials.IsEmpty ? null : measurement.TrialRule == TrialRule.Best ? "best" : "median",
            FullLow = measurement.FullLow?.ToString(),
            FullHigh = measurement.FullHigh?.ToString(),
        };
    }

    private static bool HasNumbers(SingerDto row) => row.Low is not null || row.High is not null || row.SustainedSeconds is not null || row.Trials is not null
        || row.TrialRule is not null || row.FullLow is not null || row.FullHigh is not null;

    private static Measurement Read(IMeasurementDto row, DateOnly? date, VoiceType? type, string who)
    {
        var assumed = row.Low is null && row.High is null && type is { IsComfortable: true };
        var low = assumed ? type!.Low : Note(row.Low, "low", who, type);
        var high = assumed ? type!.High : Note(row.High, "high", who, type);
        var trials = row.Trials?.ConvertAll(t => Seconds(t, "a trial", who)).ToValueList();
        var rule = trials is null ? TrialRule.Best : Rule(row, who);
        var sustained = trials is null ? Sustained(row, who) : default;
        NoteName? fullLow = row.FullLow is null ? null : Note(row.FullLow, "fullLow", who, null);
        NoteName? fullHigh = row.FullHigh is null ? null : Note(row.FullHigh, "fullHigh", who, null);
        var fault = SingerFaults.OfRange(low, high) ?? (trials is { } some ? SingerFaults.OfTrials(some.Count) : null)
            ?? SingerFaults.OfFullLow(fullLow, low) ?? SingerFaults.OfFullHigh(fullHigh, high);
        if (fault is not null)
        {
            throw Fail($"{who}: {fault}");
        }

        var measurement = trials is { } tones ? new Measurement(date, low, high, tones, rule) : new Measurement(date, low, high, sustained);
        return measurement with { IsRangeAssumed = assumed, FullLow = fullLow, FullHigh = fullHigh };
    }

    private static DateOnly Day(string? text, string who) => text is null
        ? throw Fail($"{who} lacks \"date\"; write the day such as 2026-12-01")
        : DateOnly.TryParseExact(text, DayFormat, CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)
            ? date
            : throw Fail($"{who}: the date must be a day such as 2026-12-01, not {TextError.Quote(text)}");

    private static TrialRule Rule(IMeasurementDto row, string who)
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

    private static Rational Sustained(IMeasurementDto row, string who)
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
