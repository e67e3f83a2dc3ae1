namespace Warmup.Takes.Tests;

/// <summary>Makes takes of a drill by rule: what is sung when, with a singer's faults where they are wanted. The sound comes from <see cref="VoiceMaker"/>.</summary>
internal static class TakeMaker
{
    public static MadeTake Make(TakePlan plan)
    {
        var random = new Random(plan.Seed);
        var drill = new DrillNotes(plan.Score);
        var (leftOut, events) = (new HashSet<int>(), new List<MadeEvent>());
        var order = Order(drill, plan, random, leftOut, events);
        var tones = Tones(drill, plan, order, random, leftOut);
        var made = VoiceMaker.Sing(plan, tones, random);
        return new MadeTake(plan, made, VoiceMaker.Rate, tones, leftOut, events, plan.DriftCents * (tones[^1].Onset - tones[0].Onset) / Math.Max(5, (order.Where(o => o >= 0).Sum(o => drill.Notes[o].Seconds) * plan.Pace) + 3));
    }

    /// <summary>The notes in the order in which they are sung; line ends are marked by -1.</summary>
    private static List<int> Order(DrillNotes drill, TakePlan plan, Random random, HashSet<int> leftOut, List<MadeEvent> events)
    {
        var order = new List<int>();
        var lines = drill.Lines.Length;
        var fault = plan.HasErrors ? random.Next(4) : -1;
        var at = lines < 3 ? 0 : random.Next(1, lines - 1);
        for (var l = 0; l < lines; l++)
        {
            var line = drill.Lines[l];
            var notes = Enumerable.Range(line.First, line.Count).ToList();
            if (l == at && fault == 1)
            {
                events.Add(new MadeEvent(TakeEventKind.Skip, l));
                leftOut.UnionWith(notes);
                continue;
            }

            if (l == at && fault == 2 && line.Count > 3)
            {
                events.Add(new MadeEvent(TakeEventKind.FalseStart, l));
                order.AddRange(notes.Take(random.Next(2, line.Count - 1)));
                order.Add(-1);
            }

            order.AddRange(notes);
            order.Add(-1);
            if (l == at && fault == 0)
            {
                events.Add(new MadeEvent(TakeEventKind.Repeat, l));
                order.AddRange(notes);
                order.Add(-1);
            }

            if (l == Math.Max(at, 2) && l < lines - 1 && fault == 3)
            {
                events.Add(new MadeEvent(TakeEventKind.EarlyStop, l));
                leftOut.UnionWith(Enumerable.Range(line.First + line.Count, drill.Notes.Length - line.First - line.Count));
                break;
            }
        }

        // One inner note is left out.
        if (plan.HasErrors)
        {
            var inner = Enumerable.Range(1, order.Count - 2).Where(i => order[i] >= 0 && order[i - 1] >= 0 && order[i + 1] >= 0
                && order.Count(o => o == order[i]) == 1
                && drill.Notes[order[i]].Cents != drill.Notes[order[i - 1]].Cents && drill.Notes[order[i]].Cents != drill.Notes[order[i + 1]].Cents).ToList();
            if (inner.Count > 0)
            {
                var i = inner[random.Next(inner.Count)];
                leftOut.Add(order[i]);
                order.RemoveAt(i);
            }
        }

        return order;
    }

    private static List<SungTone> Tones(DrillNotes drill, TakePlan plan, List<int> order, Random random, HashSet<int> leftOut)
    {
        var tones = new List<SungTone>();
        var time = plan.AloneBefore + 0.4 + (random.NextDouble() * 0.8);
        var wrong = plan.HasErrors ? order.Select((o, i) => (o, i)).Where(x => x.o >= 0).Select(x => x.i).OrderBy(_ => random.Next()).Take(2).ToHashSet() : [];
        var total = order.Where(o => o >= 0).Sum(o => drill.Notes[o].Seconds) * plan.Pace;
        var (pace, wander) = (plan.Pace, 0.0);
        for (var i = 0; i < order.Count; i++)
        {
            if (order[i] < 0)
            {
                time += 0.3 + (random.NextDouble() * 0.5);
                continue;
            }

            var note = drill.Notes[order[i]];
            wander = (0.9 * wander) + (0.02 * Gauss(random));
            var seconds = note.Seconds * pace * Math.Exp(wander) * (note.IsLast ? 0.7 + (0.5 * random.NextDouble()) : 0.95 + (0.1 * random.NextDouble()));
            var touches = i + 1 < order.Count && order[i + 1] >= 0;
            var next = touches ? drill.Notes[order[i + 1]] : note;
            var consonant = plan.HasConsonants ? Consonant(note) : ' ';
            var isOther = wrong.Contains(i);
            var off = isOther
                ? (random.Next(2) * 2 - 1) * (150 + (random.Next(3) * 50))
                : Math.Clamp(12 * Gauss(random), -45, 45);
            var end = time + seconds;
            tones.Add(new SungTone
            {
                Index = note.Index,
                Cents = note.Cents + off + plan.OffsetCents + (1200 * plan.Octave) + (plan.DriftCents * ((time - plan.AloneBefore - 1) / Math.Max(5, total + 3))),
                IsOther = isOther,
                Onset = time,
                End = end,
                Touches = touches,
                Consonant = consonant,
                Vowel = plan.HasConsonants ? Vowel(note) : 0,
            });
            time = end;

            // Unvoiced consonants stand before the voice: the tone before ends for them.
            if (touches && plan.HasConsonants && Consonant(next) is 's' or 'p')
            {
                tones[^1] = tones[^1] with { End = end - (Consonant(next) == 's' ? 0.09 : 0.05), Touches = false };
            }
        }

        return tones;
    }

    private static char Consonant(DrillNote note) => note.Syllable.Length == 0 ? ' ' : note.Syllable[0] switch
    {
        'S' => 's',
        'R' => 'r',
        'G' => 'g',
        'M' => 'm',
        'P' => 'p',
        'D' => 'd',
        'N' => 'n',
        _ => ' ',
    };

    private static int Vowel(DrillNote note) => note.Syllable.Length == 0 ? 0 : note.Syllable[0] is 'R' or 'N' ? 1 : 0;

    public static double Gauss(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
