using System.CommandLine;
using System.Globalization;

namespace Warmup.Cli;

/// <summary>The options that say how a drill is counted and how its lines follow each other.</summary>
internal sealed class TimeOptions
{
    private readonly Option<string?> _tala = new("--tala")
    {
        Description = "Meter: a tala (adi, misra-jati jhampa, khanda chapu), a time signature (7/8, 2+2+3/8) or free; adi by default, or the exercise's own tala.",
    };

    private readonly Option<string?> _speed = new("--speed")
    {
        Description = "Speed: 1, 2, 3 or 4 (1, 2, 4 or 8 notes to the akshara or beat); 1 by default, 3 with a gati other than 4.",
    };

    private readonly Option<string?> _speeds = new("--speeds")
    {
        Description = "Several speeds, sung one after the other, such as 1,2,3; or trikalam: 1,2,2,3,3,3,3. Instead of --speed.",
    };

    private readonly Option<string?> _gati = new("--gati")
    {
        Description = $"Gati (nadai): {string.Join(", ", Enum.GetValues<Jati>().Select(GatiName))}, or its number: 3, 4, 5, 7 or 9 notes to the akshara or beat in the third speed.",
    };

    private readonly Option<string> _delivery = new("--delivery")
    {
        Description = "Delivery: continuous, or line-by-line (the last note is held, then a breath).",
        DefaultValueFactory = _ => "continuous",
    };

    private readonly Option<string?> _fill = new("--fill")
    {
        Description = "Hold the last note of each line to the end of the anga or the avartana (of the group or the bar): none, anga or avartana; none by default with continuous delivery, avartana line by line.",
    };

    private readonly Option<string?> _fillBy = new("--fill-by")
    {
        Description = "What fills a line up: room, hold (the last note) or rest (silence). By default room: the last note, in the room that its line leaves; line by line, where a line leaves none, only hold and rest take one more avartana or anga (bar or group), and otherwise the breath is taken out of the last note.",
    };

    private readonly Option<string?> _breath = new("--breath")
    {
        Description = "Line by line, the breath after each line in seconds, 0.2 to 10; 1 by default. A longer breath lets go of a held last note earlier.",
    };

    private readonly Option<string> _eduppu = new("--eduppu")
    {
        Description = "Eduppu: a line begins 0, 1/4, 1/2, 3/4 or 1 akshara (or beat) late. Lines that run on begin so once, others each time.",
        DefaultValueFactory = _ => "0",
    };

    private readonly Option<string> _countIn = new("--count-in")
    {
        Description = $"Avartanas or bars to count before the first line, 0 to {Drill.LongestCountIn}.",
        DefaultValueFactory = _ => "0",
    };

    private readonly Option<string> _repeat = new("--repeat")
    {
        Description = $"How often the drill is sung, 1 to {Drill.MostRepetitions}; a rising tempo takes at least as many times as it has steps.",
        DefaultValueFactory = _ => "1",
    };

    private readonly Option<bool> _endsOnFirstBeat = new("--end-on-first-beat")
    {
        Description = "Repeat the drill until its end fills an avartana or bar.",
    };

    public void AddTo(Command command)
    {
        foreach (var option in (Option[])[_tala, _speed, _speeds, _gati, _delivery, _fill, _fillBy, _breath, _eduppu, _countIn, _repeat, _endsOnFirstBeat])
        {
            command.Add(option);
        }
    }

    /// <summary>A drill with the time that the options describe; what is not typed stays as the drill has it.</summary>
    /// <exception cref="InputException">An option's value cannot be used; the message names the option.</exception>
    public Drill Read(ParseResult parsed, Drill drill)
    {
        var meter = parsed.GetValue(_tala) is { } tala ? OptionValue.Parsed<Meter>("--tala", tala, Meter.TryParse) : drill.Meter;

        var delivery = IsTyped(parsed, _delivery)
            ? OptionValue.Choice("--delivery", parsed.GetValue(_delivery)!, ("continuous", Delivery.Continuous), ("line-by-line", Delivery.LineByLine))
            : drill.Delivery;
        if (parsed.GetValue(_fill) is { } fill)
        {
            delivery = delivery with
            {
                Fill = OptionValue.Choice("--fill", fill, ("none", Fill.None), ("anga", Fill.Anga), ("avartana", Fill.Avartana)),
            };
            if (meter.IsFree && delivery.Fill != Fill.None)
            {
                throw new InputException("--fill needs a meter, since free rhythm has no anga or avartana: name one with --tala");
            }
        }

        if (parsed.GetValue(_fillBy) is { } fillBy)
        {
            var by = OptionValue.Choice("--fill-by", fillBy, ("room", FillBy.Room), ("hold", FillBy.Hold), ("rest", FillBy.Rest));
            if (by != FillBy.Room && (delivery.Fill == Fill.None || meter.IsFree))
            {
                throw new InputException("--fill-by needs lines that are filled up: use --delivery line-by-line or --fill, with a meter");
            }

            delivery = delivery with { FillBy = by };
        }

        if (parsed.GetValue(_breath) is { } breath)
        {
            delivery = delivery.IsLineByLine
                ? delivery with { BreathSeconds = OptionValue.Number("--breath", breath, new Rational(1, 5), 10, "seconds") }
                : throw new InputException("--breath needs lines with a breath after each: add --delivery line-by-line");
        }

        var countIn = IsTyped(parsed, _countIn) ? OptionValue.Whole("--count-in", parsed.GetValue(_countIn)!, 0, Drill.LongestCountIn) : meter.IsFree ? 0 : drill.CountIn;
        if (meter.IsFree && countIn > 0)
        {
            throw new InputException("--count-in needs a meter, since free rhythm has no beat: name one with --tala");
        }

        var eduppu = IsTyped(parsed, _eduppu)
            ? OptionValue.Choice("--eduppu", parsed.GetValue(_eduppu)!, [.. Enumerable.Range(0, 5).Select(n => new Rational(n, 4)).Select(e => (e.ToString(), e))])
            : meter.IsFree ? default : drill.Eduppu;
        if (meter.IsFree && eduppu.Sign > 0)
        {
            throw new InputException("--eduppu needs a meter, since free rhythm has no beat: name one with --tala");
        }

        return drill with
        {
            Meter = meter,
            Eduppu = eduppu,
            Speeds = ReadSpeeds(parsed, drill.Speeds),
            Delivery = delivery,
            CountIn = countIn,
            Repetitions = IsTyped(parsed, _repeat) ? OptionValue.Whole("--repeat", parsed.GetValue(_repeat)!, 1, Drill.MostRepetitions) : drill.Repetitions,
            IsRepeatedToFirstBeat = parsed.GetValue(_endsOnFirstBeat),
        };
    }

    /// <summary>The options that make a change of the time.</summary>
    public IEnumerable<(string Name, string? Value)> ToPairs(Remedy remedy, ParseResult parsed) => remedy switch
    {
        OtherSpeeds other => [(
            parsed.GetValue(_speeds) is null && other.Speeds.Count == 1 ? _speed.Name : _speeds.Name,
            string.Join(',', other.Speeds.Select(s => s.Kalam.ToString(CultureInfo.InvariantCulture))))],

        // A fill that was typed stays unless it is none: line by line the usual one is the avartana.
        OtherDelivery { IsLineByLine: true } when parsed.GetValue(_fill) is { } fill && fill.Trim().Equals("none", StringComparison.OrdinalIgnoreCase) && !IsFree(parsed) =>
            [(_delivery.Name, "line-by-line"), (_fill.Name, "avartana")],
        OtherDelivery other => [(_delivery.Name, other.IsLineByLine ? "line-by-line" : "continuous")],
        LongerBreath longer => [(_breath.Name, OptionValue.ToText(longer.Seconds))],
        OtherFill other => [(_fill.Name, other.Fill switch { Fill.None => "none", Fill.Anga => "anga", _ => "avartana" })],
        OtherFillBy other => [(_fillBy.Name, other.FillBy switch { FillBy.Room => "room", FillBy.Hold => "hold", _ => "rest" })],
        _ => throw new InvalidOperationException($"no option makes the change '{remedy}'"),
    };

    private static bool IsTyped(ParseResult parsed, Option option) => parsed.GetResult(option) is { Implicit: false };

    private bool IsFree(ParseResult parsed) => parsed.GetValue(_tala) is { } tala && Meter.TryParse(tala, out var meter, out _) && meter.IsFree;

    private ValueList<Speed> ReadSpeeds(ParseResult parsed, ValueList<Speed> usual)
    {
        if (parsed.GetValue(_gati) is null && parsed.GetValue(_speed) is null && parsed.GetValue(_speeds) is null)
        {
            return usual;
        }

        // The gatis are named and counted as the jatis are.
        var jatis = Enum.GetValues<Jati>().Select(j => (Name: GatiName(j), Count: Anga.Laghu(j).Aksharas)).ToList();
        var gati = OptionValue.Choice(
            "--gati", parsed.GetValue(_gati) ?? GatiName(Jati.Chatusra), [.. jatis, .. jatis.Select(j => (j.Count.ToString(CultureInfo.InvariantCulture), j.Count))]);
        var (one, many) = (parsed.GetValue(_speed), parsed.GetValue(_speeds));
        if (many is null)
        {
            return [one is null ? Speed.OfGati(gati) : new Speed(OptionValue.Choice("--speed", one, 1, 2, 3, 4), gati)];
        }

        if (one is not null)
        {
            throw new InputException("use --speed or --speeds, not both");
        }

        if (many.Trim().Equals("trikalam", StringComparison.OrdinalIgnoreCase))
        {
            return SpeedSequences.Trikalam(gati);
        }

        var speeds = many.Split(',').Select(s => new Speed(OptionValue.Choice("--speeds", s, 1, 2, 3, 4), gati)).ToValueList();
        return speeds.Count <= Drill.MostSpeeds
            ? speeds
            : throw new InputException($"--speeds must name 1 to {Drill.MostSpeeds} speeds, not {speeds.Count}");
    }

    private static string GatiName(Jati jati) => jati.ToString().ToLowerInvariant();
}
