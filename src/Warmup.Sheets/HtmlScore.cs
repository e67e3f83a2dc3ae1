using System.Text.Json;

namespace Warmup.Sheets;

/// <summary>
/// The score as the page's player reads it: every time in seconds at the written tempo, exact and then rounded once to the nearest double. The
/// drone keeps its own time, which does not change with the tempo.
/// </summary>
internal static class HtmlScore
{
    // How far the page's tonic can be moved, in semitones: two octaves (the project's own setting).
    private const int FarthestShift = 24;

    /// <summary>The JSON. Its encoder lets no text end the element in which it stands.</summary>
    public static byte[] Json(Score score, MeterWords words, HtmlOptions options, IReadOnlyList<int> cells, CancellationToken cancellation)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
        {
            var (slowest, fastest) = options.Percents(score.Sections[0].Tempo);
            json.WriteStartObject();
            json.WriteString("schema", "urn:warmup:practice-page:1");
            json.WriteString("title", score.Title);
            json.WriteString("beatName", words.Beat + "s");
            json.WriteNumber("slowest", slowest);
            json.WriteNumber("fastest", fastest);
            json.WriteNumber("countIn", score.HasCountIn ? 0 : options.CountInBeats);
            json.WriteNumber("seconds", score.Seconds.ToDouble());
            Notes(json, score, cells, cancellation);
            Lines(json, score);
            Beats(json, score, cancellation);
            Drone(json, score.Drone);
            Tonics(json, score, words);
            json.WriteEndObject();
        }

        return stream.ToArray();
    }

    /// <summary>
    /// [Hz, begin, end, cell, line]; for a note that slides or swells besides its middle, the Hz to which it slides or 0, and 1 where it
    /// swells.
    /// </summary>
    private static void Notes(Utf8JsonWriter json, Score score, IReadOnlyList<int> cells, CancellationToken cancellation)
    {
        json.WriteStartArray("notes");
        var (at, line) = (0, 0);
        var starts = score.SectionStarts();
        for (var s = 0; s < starts.Count; s++)
        {
            cancellation.ThrowIfCancellationRequested();
            var (section, start) = (score.Sections[s], starts[s]);
            for (var n = 0; n < section.Notes.Count; n++)
            {
                var note = section.Notes[n];
                json.WriteStartArray();
                json.WriteNumberValue(section.PitchOf(note).Hz);
                json.WriteNumberValue((start + section.SecondsAt(note.Onset)).ToDouble());
                json.WriteNumberValue((start + section.SecondsAt(note.SoundEnd)).ToDouble());
                json.WriteNumberValue(cells[at++]);
                json.WriteNumberValue(line + note.LineIndex);
                var (slides, swells) = (note.Joining == Joining.Glide, note.Loudness == Loudness.SwellAndFade);
                if (slides || swells)
                {
                    json.WriteNumberValue((start + section.SecondsAt(note.Middle)).ToDouble());
                    json.WriteNumberValue(slides ? section.PitchOf(section.Notes[n + 1]).Hz : 0);
                    json.WriteNumberValue(swells ? 1 : 0);
                }

                json.WriteEndArray();
            }

            line += section.Lines.Count;
        }

        json.WriteEndArray();
    }

    /// <summary>[begin, end, where the answer begins or the end, aksharas a minute, the time through the drill from 0]</summary>
    private static void Lines(Utf8JsonWriter json, Score score)
    {
        json.WriteStartArray("lines");
        var starts = score.SectionStarts();
        for (var s = 0; s < starts.Count; s++)
        {
            var (section, start) = (score.Sections[s], starts[s]);
            foreach (var line in section.Lines)
            {
                json.WriteStartArray();
                json.WriteNumberValue((start + section.SecondsAt(line.Onset)).ToDouble());
                json.WriteNumberValue((start + section.SecondsAt(line.End)).ToDouble());
                json.WriteNumberValue((start + section.SecondsAt(line.AnswerOnset)).ToDouble());
                json.WriteNumberValue(section.TempoAt(line.Onset).ToDouble());
                json.WriteNumberValue(line.Round);
                json.WriteEndArray();
            }
        }

        json.WriteEndArray();
    }

    /// <summary>[begin, accent]: 2 on the first beat of an avartana, 1 on the first of another anga, 0 elsewhere.</summary>
    private static void Beats(Utf8JsonWriter json, Score score, CancellationToken cancellation)
    {
        json.WriteStartArray("beats");
        var starts = score.SectionStarts();
        for (var s = 0; s < starts.Count; s++)
        {
            cancellation.ThrowIfCancellationRequested();
            var (section, start) = (score.Sections[s], starts[s]);
            for (var akshara = 0; akshara < section.Length; akshara++)
            {
                json.WriteStartArray();
                json.WriteNumberValue((start + section.SecondsAt(akshara)).ToDouble());
                json.WriteNumberValue((int)section.Meter.AccentOf(akshara));
                json.WriteEndArray();
            }
        }

        json.WriteEndArray();
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
        json.WriteNumber("below", SoundBalance.DroneBelowVoice);
        json.WriteStartArray("hz");
        foreach (var each in drone.Strings)
        {
            json.WriteNumberValue(each.Hz);
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    /// <summary>
    /// The tonics the page can be moved to: [semitones above the written one, what it is called]. In a score of several tonics they are those of the
    /// first section, and the others move with it.
    /// </summary>
    private static void Tonics(Utf8JsonWriter json, Score score, MeterWords words)
    {
        var section = score.Sections[0];
        json.WriteNumber("tonicHz", section.Tonic.Hz);
        json.WriteStartArray("tonics");
        for (var shift = -FarthestShift; shift <= FarthestShift; shift++)
        {
            var midi = section.Tonic.Midi + shift;
            if (midi < Tonic.LowestMidi || midi > Tonic.HighestMidi)
            {
                continue;
            }

            var tonic = section.Tonic.Transposed(shift);
            var written = section.TonicName;
            var (octaves, rest) = Math.DivRem(shift, 12);
            var name = rest == 0 ? new NoteName(written.Letter, written.Alteration, written.Octave + octaves) : Spelling.ChooseTonic(tonic, section.Scale, out _);
            json.WriteStartArray();
            json.WriteNumberValue(shift);
            json.WriteStringValue(HeaderRows.Of(tonic, name, words));
            json.WriteEndArray();
        }

        json.WriteEndArray();
    }
}
