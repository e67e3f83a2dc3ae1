using System.Globalization;

namespace Warmup.Web;

/// <summary>Reads how a drill is counted and how its lines follow each other.</summary>
internal static class TimeQuery
{
    /// <summary>The meter; that of the exercise, or Adi, where none is named.</summary>
    public static Meter? Meter(QueryValues values, Exercise? exercise) =>
        values.Peek("tala") is null ? exercise?.Meter ?? Warmup.Meter.Adi : values.Parsed<Meter>("tala", null, Warmup.Meter.TryParse);

    /// <summary>The speeds; that of the exercise, or the first, where none is named.</summary>
    public static ValueList<Speed> Speeds(QueryValues values, Exercise? exercise)
    {
        var jatis = Enum.GetValues<Jati>().Select(j => Anga.Laghu(j).Aksharas).Select(n => (n.ToString(CultureInfo.InvariantCulture), n)).ToArray();
        var gati = values.OneOf("gati", "4", jatis);
        if (gati == 0 || values.Text("speeds", string.Empty) is not { } text)
        {
            return [Speed.First];
        }

        if (text.Length == 0)
        {
            return [gati != 4 ? Speed.OfGati(gati) : exercise?.Speed ?? Speed.First];
        }

        if (text.Trim().Equals("trikalam", StringComparison.OrdinalIgnoreCase))
        {
            return SpeedSequences.Trikalam(gati);
        }

        var kalams = text.Split(',').Select(k => int.TryParse(k, NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out var kalam) ? kalam : 0).ToList();
        if (kalams.Count > Drill.MostSpeeds || kalams.Exists(k => k is < 1 or > 4))
        {
            values.Wrong("speeds", string.Create(CultureInfo.InvariantCulture, $"must be 1 to {Drill.MostSpeeds} of the speeds 1, 2, 3 and 4 with commas between them, or trikalam, not {TextError.Quote(text)}"));
            return [Speed.First];
        }

        return kalams.ConvertAll(k => new Speed(k, gati)).ToValueList();
    }

    /// <summary>The avartanas that are counted before the first line.</summary>
    public static int CountIn(QueryValues values, Meter? meter)
    {
        var avartanas = values.Whole("count-in", 0, Drill.LongestCountIn, 0);
        if (avartanas > 0 && meter is { IsFree: true })
        {
            values.Wrong("count-in", "needs a meter, since free rhythm has no beat: name a tala");
        }

        return avartanas;
    }

    /// <summary>How long after the beat a line begins, in aksharas.</summary>
    public static Rational Eduppu(QueryValues values, Meter? meter)
    {
        var eduppu = values.Peek("eduppu") is null ? Rational.Zero : values.OneOf("eduppu", "0", [.. EduppuWords]);
        if (eduppu.Sign > 0 && meter is { IsFree: true })
        {
            values.Wrong("eduppu", "needs a meter, since free rhythm has no beat: name a tala");
        }

        return eduppu;
    }

    /// <summary>The places after the beat at which a line can begin.</summary>
    public static ValueList<(string Word, Rational Aksharas)> EduppuWords { get; } =
        Enumerable.Range(0, 5).Select(n => new Rational(n, 4)).Select(e => (e.ToString(), e)).ToValueList();

    /// <summary>The delivery.</summary>
    public static Delivery? Delivery(QueryValues values, Meter? meter)
    {
        var delivery = values.OneOf("delivery", "continuous", ("continuous", Warmup.Delivery.Continuous), ("line-by-line", Warmup.Delivery.LineByLine));
        if (delivery is null)
        {
            return null;
        }

        if (values.Peek("fill") is not null)
        {
            delivery = delivery with { Fill = values.OneOf("fill", "none", ("none", Fill.None), ("anga", Fill.Anga), ("avartana", Fill.Avartana)) };
            if (delivery.Fill != Fill.None && meter is { IsFree: true })
            {
                values.Wrong("fill", "needs a meter, since free rhythm has no anga or avartana: name a tala");
            }
        }

        if (values.Peek("fill-by") is not null)
        {
            delivery = delivery with { FillBy = values.OneOf("fill-by", "room", ("room", FillBy.Room), ("hold", FillBy.Hold), ("rest", FillBy.Rest)) };
            if (delivery.FillBy != FillBy.Room && (delivery.Fill == Fill.None || meter is { IsFree: true }))
            {
                values.Wrong("fill-by", "needs lines that are filled up: sing line by line, or fill to the anga or the avartana, with a meter");
            }
        }

        if (values.Peek("breath") is not { } breath)
        {
            return delivery;
        }

        if (LinesQuery.Seconds(breath, 10) is not { } seconds || seconds < new Rational(1, 5))
        {
            values.Wrong("breath", $"must be a number of seconds between 0.2 and 10, not {TextError.Quote(breath)}");
        }
        else if (!delivery.IsLineByLine)
        {
            values.Wrong("breath", "needs lines with a breath after each: sing line by line");
        }
        else
        {
            return delivery with { BreathSeconds = seconds };
        }

        return delivery;
    }
}
