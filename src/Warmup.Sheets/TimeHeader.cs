using System.Globalization;

namespace Warmup.Sheets;

/// <summary>The part of a sheet's head that says how the drill is counted and where it ends: rows of a label and a text.</summary>
internal static class TimeHeader
{
    public static IEnumerable<(string Label, string Text)> Rows(Section section)
    {
        var invariant = CultureInfo.InvariantCulture;
        var last = section.TempoChanges.IsEmpty ? section.Tempo : section.TempoChanges[^1].Tempo;
        var tempo = string.Create(invariant, $"{section.Tempo.ToDouble():0.###}{(last == section.Tempo ? string.Empty : $" to {last.ToDouble():0.###}")}");
        var speeds = string.Join(" then ", SpeedRun.Of(section).Where(r => r.Round == 0).Select(r => r.Speed));
        var times = section.Rounds > 1 ? $", {section.Rounds} times" : string.Empty;
        yield return ("Time", $"{section.Meter}, {tempo} aksharas a minute, {speeds}, {section.Delivery}{times}");
        var meter = section.Meter;
        if (!meter.Gestures.IsEmpty)
        {
            var at = 0;
            var angas = meter.Groups.ConvertAll(g => string.Join(' ', ((IEnumerable<Kriya>)meter.Gestures).Skip((at += g) - g).Take(g).Select(Gesture)));
            yield return ("Hand", $"{(meter.Angas.IsEmpty || meter.Angas.Any(a => a.Sign is null) ? string.Empty : $"{string.Join(' ', meter.Angas)}: ")}{string.Join(" | ", angas)}");
        }

        if (section.CountIn.Sign > 0)
        {
            yield return ("Count", $"{Count((int)(section.CountIn / meter.Beats).Floor(), "avartana")} before the first line");
        }

        if (!meter.IsFree)
        {
            var full = section.RoundsToFirstBeat is { } rounds
                ? $"sung {Count(rounds, "time")} it ends on the first beat"
                : "however often it is sung, it never ends on the first beat: fill lines up to the avartana for that";
            yield return ("Ends", section.EndsOnFirstBeat
                ? $"on the first beat, after {Count(section.Measures.Count, "avartana")}"
                : $"{Mixed(section.LastFilled)} of {Count(meter.Beats, "akshara")} into avartana {section.Measures.Count}; {full}");
        }
    }

    private static string Gesture(Kriya kriya) => kriya switch
    {
        Kriya.Clap => "clap",
        Kriya.Wave => "wave",
        Kriya.Silent => ".",
        Kriya.Thumb => "thumb",
        Kriya.LittleFinger => "little",
        Kriya.RingFinger => "ring",
        Kriya.MiddleFinger => "middle",
        _ => "index",
    };

    private static string Count(int number, string noun) =>
        string.Create(CultureInfo.InvariantCulture, $"{number} {noun}{(number == 1 ? string.Empty : "s")}");

    /// <summary>A fraction as a whole number and the rest: <c>23 1/3</c>.</summary>
    private static string Mixed(Rational value) => value.IsInteger || value < 1
        ? value.ToString()
        : string.Create(CultureInfo.InvariantCulture, $"{value.Floor()} {value - value.Floor()}");
}
