using System.CommandLine;
using System.Globalization;

namespace Warmup.Cli;

/// <summary>The options that say how a drill is counted and how its lines follow each other.</summary>
internal sealed class TimeOptions
{
    private const int UsualGati = 4;

    // Teachers who ask for another gati mean so many notes an akshara, which is its third speed (common practice).
    private const int KalamOfOtherGatis = 3;

    private readonly Option<string?> _tala = new("--tala")
    {
        Description = "Meter: a tala (adi, misra-jati jhampa, khanda chapu), a time signature (7/8, 2+2+3/8) or free; adi, or an exercise's own tala, if left out.",
    };

    private readonly Option<string?> _speed = new("--speed")
    {
        Description = "Speed: 1, 2, 3 or 4 (1, 2, 4 or 8 notes an akshara); 1 by default, 3 with a gati other than 4.",
    };

    private readonly Option<string?> _speeds = new("--speeds")
    {
        Description = "Speeds sung one after the other, such as 1,2,3; instead of --speed.",
    };

    private readonly Option<string> _gati = new("--gati")
    {
        Description = "Gati: 3, 4, 5, 7 or 9 parts of an akshara in the third speed.",
        DefaultValueFactory = _ => "4",
    };

    private readonly Option<string> _delivery = new("--delivery")
    {
        Description = "Delivery: continuous, or line-by-line (the last note is held, then a breath).",
        DefaultValueFactory = _ => "continuous",
    };

    private readonly Option<string?> _fill = new("--fill")
    {
        Description = "Fill each line up by a hold: none, anga or avartana; none where lines run on, avartana line by line.",
    };

    private readonly Option<string> _countIn = new("--count-in")
    {
        Description = $"Avartanas counted before the first line, 0 to {Drill.LongestCountIn}.",
        DefaultValueFactory = _ => "0",
    };

    private readonly Option<string> _repeat = new("--repeat")
    {
        Description = $"Times the drill is sung, 1 to {Drill.MostRepetitions}; a tempo that rises takes at least the times it needs.",
        DefaultValueFactory = _ => "1",
    };

    private readonly Option<bool> _endsOnFirstBeat = new("--end-on-first-beat")
    {
        Description = "Repeat the drill as often as it takes for its end to fill an avartana.",
    };

    public void AddTo(Command command)
    {
        foreach (var option in (Option[])[_tala, _speed, _speeds, _gati, _delivery, _fill, _countIn, _repeat, _endsOnFirstBeat])
        {
            command.Add(option);
        }
    }

    /// <summary>A drill with the time that the options describe.</summary>
    /// <exception cref="InputException">An option's value cannot be used; the message names the option.</exception>
    public Drill Read(ParseResult parsed, Drill drill)
    {
        var meter = drill.Meter;
        if (parsed.GetValue(_tala) is { } tala && !Meter.TryParse(tala, out meter, out var error))
        {
            throw DrillOptions.Refusal("--tala", error!);
        }

        var delivery = DrillOptions.Choice(
            "--delivery", parsed.GetValue(_delivery)!, ("continuous", Delivery.Continuous), ("line-by-line", Delivery.LineByLine));
        if (parsed.GetValue(_fill) is { } fill)
        {
            delivery = delivery with
            {
                Fill = DrillOptions.Choice("--fill", fill, ("none", Fill.None), ("anga", Fill.Anga), ("avartana", Fill.Avartana)),
            };
            if (meter!.IsFree && delivery.Fill != Fill.None)
            {
                throw new InputException("--fill needs a meter, since free rhythm has no anga or avartana: name one with --tala");
            }
        }

        var countIn = Number("--count-in", parsed.GetValue(_countIn)!, Enumerable.Range(0, Drill.LongestCountIn + 1).ToArray());
        if (meter!.IsFree && countIn > 0)
        {
            throw new InputException("--count-in needs a meter, since free rhythm has no beat: name one with --tala");
        }

        return drill with
        {
            Meter = meter,
            Speeds = ReadSpeeds(parsed),
            Delivery = delivery,
            CountIn = countIn,
            Repetitions = DrillOptions.Whole("--repeat", parsed.GetValue(_repeat)!, 1, Drill.MostRepetitions),
            IsRepeatedToFirstBeat = parsed.GetValue(_endsOnFirstBeat),
        };
    }

    private ValueList<Speed> ReadSpeeds(ParseResult parsed)
    {
        var gati = Number("--gati", parsed.GetValue(_gati)!, 3, 4, 5, 7, 9);
        var (one, many) = (parsed.GetValue(_speed), parsed.GetValue(_speeds));
        if (many is null)
        {
            return [new Speed(one is null ? (gati == UsualGati ? 1 : KalamOfOtherGatis) : Number("--speed", one, 1, 2, 3, 4), gati)];
        }

        if (one is not null)
        {
            throw new InputException("--speed and --speeds exclude each other; leave one out");
        }

        var speeds = many.Split(',').Select(s => new Speed(Number("--speeds", s, 1, 2, 3, 4), gati)).ToValueList();
        return speeds.Count <= Drill.MostSpeeds
            ? speeds
            : throw new InputException($"--speeds must name 1 to {Drill.MostSpeeds} speeds, not {speeds.Count}");
    }

    private static int Number(string option, string text, params int[] choices) =>
        DrillOptions.Choice(option, text, choices.Select(c => (c.ToString(CultureInfo.InvariantCulture), c)).ToArray());
}
