using System.Text.Json;

namespace Warmup.Sheets;

/// <summary>
/// The score as the page's player reads it: every time in seconds at the written tempo, computed exactly and rounded once to the nearest
/// double. The drone has its own clock and stays as it is when the tempo changes.
/// </summary>
internal static class HtmlScore
{
    /// <summary>The JSON, with the encoder that lets no text end the element it stands in.</summary>
    public static byte[] Json(Score score, HtmlOptions options, IReadOnlyList<int> cells, CancellationToken cancellation)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
        {
            var (slowest, fastest) = options.Percents(score.Sections[0].Tempo);
            json.WriteStartObject();
            json.WriteString("schema", "urn:warmup:practice-page:1");
            json.WriteString("title", score.Title);
            json.WriteNumber("slowest", slowest);
            json.WriteNumber("fastest", fastest);
            json.WriteNumber("countIn", score.Sections[0].CountIn.Sign > 0 ? 0 : options.CountInBeats);
            json.WriteNumber("seconds", score.Seconds.ToDouble());
            Notes(json, score, cells, cancellation);
            Lines(json, score);
            Beats(json, score, cancellation);
            Drone(json, score.Drone);
            json.WriteEndObject();
        }

        return stream.ToArray();
    }

    /// <summary>[Hz, begin, end, cell, line]</summary>
    private static void Notes(Utf8JsonWriter json, Score score, IReadOnlyList<int> cells, CancellationToken cancellation)
    {
        json.WriteStartArray("notes");
        var (at, line) = (0, 0);
        foreach (var (section, start) in Sections(score))
        {
            cancellation.ThrowIfCancellationRequested();
            foreach (var note in section.Notes)
            {
                json.WriteStartArray();
                json.WriteNumberValue(section.PitchOf(note).Hz);
                json.WriteNumberValue((start + section.SecondsAt(note.Onset)).ToDouble());
                json.WriteNumberValue((start + section.SecondsAt(note.Onset + note.Length)).ToDouble());
                json.WriteNumberValue(cells[at++]);
                json.WriteNumberValue(line + note.LineIndex);
                json.WriteEndArray();
            }

            line += section.Lines.Count;
        }

        json.WriteEndArray();
    }

    /// <summary>[begin, end, where the answer begins or the end, aksharas a minute]</summary>
    private static void Lines(Utf8JsonWriter json, Score score)
    {
        json.WriteStartArray("lines");
        foreach (var (section, start) in Sections(score))
        {
            foreach (var line in section.Lines)
            {
                var end = line.Onset + line.Length;
                json.WriteStartArray();
                json.WriteNumberValue((start + section.SecondsAt(line.Onset)).ToDouble());
                json.WriteNumberValue((start + section.SecondsAt(end)).ToDouble());
                json.WriteNumberValue((start + section.SecondsAt(end - line.Answer)).ToDouble());
                json.WriteNumberValue(section.TempoAt(line.Onset).ToDouble());
                json.WriteEndArray();
            }
        }

        json.WriteEndArray();
    }

    /// <summary>[begin, accent]: 2 at the first of an avartana, 1 at the first of an anga, 0 elsewhere.</summary>
    private static void Beats(Utf8JsonWriter json, Score score, CancellationToken cancellation)
    {
        json.WriteStartArray("beats");
        foreach (var (section, start) in Sections(score))
        {
            cancellation.ThrowIfCancellationRequested();
            var accents = Accents(section.Meter);
            for (var akshara = 0; akshara < section.Length; akshara++)
            {
                json.WriteStartArray();
                json.WriteNumberValue((start + section.SecondsAt(akshara)).ToDouble());
                json.WriteNumberValue(accents[akshara % accents.Length]);
                json.WriteEndArray();
            }
        }

        json.WriteEndArray();
    }

    private static int[] Accents(Meter meter)
    {
        var accents = new int[Math.Max(1, meter.Beats)];
        var at = 0;
        foreach (var group in meter.Groups)
        {
            accents[at] = at == 0 ? 2 : 1;
            at += group;
        }

        return accents;
    }

    private static void Drone(Utf8JsonWriter json, Drone? drone)
    {
        if (drone is null)
        {
            json.WriteNull("drone");
            return;
        }

        json.WriteStartObject("drone");
        json.WriteBoolean("held", drone.IsHeld);
        json.WriteNumber("stroke", drone.StrokeSeconds.ToDouble());
        json.WriteNumber("cycle", drone.CycleSeconds.ToDouble());
        json.WriteStartArray("hz");
        foreach (var each in drone.Strings)
        {
            json.WriteNumberValue(each.Pitch.Hz);
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static IEnumerable<(Section Section, Rational Start)> Sections(Score score)
    {
        var start = Rational.Zero;
        foreach (var section in score.Sections)
        {
            yield return (section, start);
            start += section.Seconds;
        }
    }
}
