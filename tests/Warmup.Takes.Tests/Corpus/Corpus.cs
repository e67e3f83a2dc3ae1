namespace Warmup.Takes.Tests;

/// <summary>The takes of each condition, from a seed.</summary>
internal static class Corpus
{
    public static readonly string[] Conditions = ["clean", "vibrato", "noise 20 dB", "noise 10 dB", "drone -20 dB", "drone -10 dB", "room 0.4 s", "room 1.2 s", "singer's errors", "all together", "drone alone around", "loud drone"];

    private static readonly string[] Scales = ["mohanam", "mayamalavagowla", "hamsadhwani", "kalyani", "bilahari"];
    private static readonly string[] Patterns = ["ladder", "ladder.reversed", "S R G / R G M / G M P / M P D / P D N / D N S'", "S S R R / R R G G / G G M M / M M P P", "ladder.ends"];

    /// <summary>Some takes of a condition.</summary>
    public static IEnumerable<TakePlan> Plans(string condition, int seed, int count)
    {
        var random = new Random((seed * 1009) + Array.IndexOf(Conditions, condition));
        for (var n = 0; n < count; n++)
        {
            var voice = (n + seed) % (SpeechVoice.IsThere ? 4 : 3);
            var pattern = Patterns[random.Next(Patterns.Length)];
            var scale = Scales[pattern.Contains('/', StringComparison.Ordinal) ? 1 : random.Next(Scales.Length)];
            var child = voice == 1;
            var drill = new Drill
            {
                Scale = Catalogue.Default.Find(scale)!.Scale,
                Pattern = Pattern.Parse(pattern),
                Tonic = Tonic.Parse(child ? "C4" : voice == 2 ? "G3" : random.Next(2) == 0 ? "C3" : "A3"),
                Tempo = random.Next(60, 130),
                Tuning = random.Next(2) == 0 ? Tuning.Just : Tuning.Equal,
                Delivery = random.Next(2) == 0 ? Delivery.LineByLine : Delivery.Continuous,
                Syllables = Syllables.SvaraLetters,
                HasDrone = random.Next(2) == 0,
            };
            if (drill.TryToScore(out var score, out _) && score.Seconds > 55)
            {
                drill = drill with { Speeds = [Speed.Second] };
            }

            var plan = new TakePlan
            {
                Condition = condition,
                Score = drill.ToScore(),
                Voice = voice,
                Seed = random.Next(),
                VibratoCents = condition is "vibrato" ? 40 + (60 * random.NextDouble()) : condition is "all together" ? 25 + (30 * random.NextDouble()) : 0,
                NoiseDb = condition switch { "noise 20 dB" => 20, "noise 10 dB" => 10, "all together" => 22, _ => null },
                DroneDb = condition switch { "drone -20 dB" => -20, "drone -10 dB" => -10, "all together" => -15, "drone alone around" => -8 - (12 * random.NextDouble()), "loud drone" => -5 - (5 * random.NextDouble()), _ => null },
                ReverbSeconds = condition switch { "room 0.4 s" => 0.4, "room 1.2 s" => 1.2, "all together" => 0.4, _ => 0 },
                HasErrors = condition is "singer's errors" or "all together",
                OffsetCents = n % 5 == 3 && condition != "drone -10 dB" ? random.Next(-500, 500) : 15 * TakeMaker.Gauss(random),
                Octave = n % 6 == 4 && !child ? (voice == 2 ? 1 : random.Next(2)) : 0,
                DriftCents = 12 * TakeMaker.Gauss(random),
                HasConsonants = random.Next(4) > 0,
                AloneBefore = condition is "drone alone around" or "loud drone" ? 2 + (4 * random.NextDouble()) : 0,
                SilentBefore = condition is "loud drone" ? 1 : 0,
                AloneAfter = condition is "drone alone around" or "loud drone" ? 1 + (4 * random.NextDouble()) : 0,
                Pace = Math.Exp(0.12 * TakeMaker.Gauss(random)),
            };
            yield return plan;
        }
    }

    /// <summary>A low voice without vibrato that sings written lines in mohanam, line by line on C3 at 60.</summary>
    public static TakePlan Plain(string lines) => Plans("clean", 3, 1).First() with
    {
        Voice = 0,
        VibratoCents = 0,
        OffsetCents = 0,
        Score = new Drill { Scale = Catalogue.Default.Find("mohanam")!.Scale, Pattern = Pattern.Parse(lines), Tonic = Tonic.Parse("C3"), Tempo = 60, Delivery = Delivery.LineByLine }.ToScore(),
    };

    /// <summary>A drill's notes sung one after the other, with a rest after each line.</summary>
    /// <param name="drill">The drill.</param>
    /// <param name="longest">Seconds that no note is longer.</param>
    /// <param name="rest">Seconds after each line.</param>
    /// <param name="off">The cents that the note of an index is off.</param>
    public static List<SungTone> Tones(DrillNotes drill, double longest, double rest, Func<int, double> off)
    {
        var (tones, time) = (new List<SungTone>(), 0.6);
        foreach (var note in drill.Notes)
        {
            var end = time + Math.Min(note.Seconds, longest);
            tones.Add(new SungTone { Index = note.Index, Cents = note.Cents + off(note.Index), Onset = time, End = end, Touches = !note.IsLast });
            time = end + (note.IsLast ? rest : 0);
        }

        return tones;
    }
}
