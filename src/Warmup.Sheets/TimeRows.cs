using System.Globalization;

namespace Warmup.Sheets;

/// <summary>The rows of a sheet's header that say how the drill is counted and where it ends.</summary>
internal static class TimeRows
{
    // The project's own setting: nobody sings a drill more often to make it end on the first beat.
    private const int MostTimes = 8;

    public static IEnumerable<(string Label, string Text)> Of(Section section, MeterWords words)
    {
        var invariant = CultureInfo.InvariantCulture;
        var last = section.TempoChanges.IsEmpty ? section.Tempo : section.TempoChanges[^1].Tempo;
        var tempo = string.Create(invariant, $"{section.Tempo.ToDouble():0.###}{(last == section.Tempo ? string.Empty : $" to {last.ToDouble():0.###}")}");
        var times = section.Rounds > 1 ? $", {section.Rounds} times" : string.Empty;
        yield return ("Time", $"{section.Meter}, {tempo} {words.Beat}s a minute, {Speeds(section, words)}, {words.Delivery(section.Delivery)}{times}");
        var meter = section.Meter;
        if (meter.KriyaOf(0) is not null)
        {
            yield return ("Kriya", $"{(meter.Angas.IsEmpty || meter.Angas.Any(a => a.Sign is null) ? string.Empty : $"{string.Join(' ', meter.Angas)}: ")}{Gestures(meter)}");
        }

        if (section.Eduppu.Sign > 0)
        {
            yield return (words.IsTala ? "Eduppu" : "Begins", $"{section.Eduppu} {words.Beat} after the beat");
        }

        if (section.CountIn.Sign > 0)
        {
            yield return ("Count", $"{HeaderRows.Count((int)(section.CountIn / meter.Beats).Floor(), words.Bar)} before the first line");
        }

        if (!meter.IsFree)
        {
            yield return ("Ends", section.IsLastAvartanaFull
                ? $"on the first beat, after {HeaderRows.Count(section.Measures.Count, words.Bar)}"
                : string.Create(invariant, $"{Mixed(section.LastFilled)} {words.Beat}{(section.LastFilled == 1 ? string.Empty : "s")} into {words.Bar} {section.Measures.Count}{Full(section, words)}"));
        }
    }

    /// <summary>How it would end on the first beat: by singing it a few times, where a few are enough.</summary>
    private static string Full(Section section, MeterWords words) => section.RoundsToFirstBeat switch
    {
        null => $"; however often it is sung, it never ends on the first beat: fill lines up to the {words.Bar} for that",
        <= MostTimes and { } rounds => $"; sung {HeaderRows.Count(rounds, "time")} it ends on the first beat",
        _ => string.Empty,
    };

    /// <summary>The speeds of the first time through, in order.</summary>
    private static string Speeds(Section section, MeterWords words)
    {
        var speeds = new List<Speed>();
        foreach (var line in section.Lines)
        {
            if (line.Round == 0 && (speeds.Count == 0 || speeds[^1] != line.Speed))
            {
                speeds.Add(line.Speed);
            }
        }

        return string.Join(" then ", speeds.Select(words.Speed));
    }

    /// <summary>What the hand does on each akshara of an avartana, with a stroke between angas.</summary>
    private static string Gestures(Meter meter)
    {
        var words = new List<string>();
        for (var beat = 0; beat < meter.Beats && meter.KriyaOf(beat) is { } kriya; beat++)
        {
            var anga = beat > 0 && meter.AccentOf(beat) == BeatAccent.Anga ? "| " : string.Empty;
            words.Add(anga + KriyaWords.Of(kriya, silent: "."));
        }

        return string.Join(' ', words);
    }

    /// <summary>A fraction as a whole number and the rest: <c>23 1/3</c>.</summary>
    private static string Mixed(Rational value) => value.IsInteger || value < 1
        ? value.ToString()
        : string.Create(CultureInfo.InvariantCulture, $"{value.Floor()} {value - value.Floor()}");
}
