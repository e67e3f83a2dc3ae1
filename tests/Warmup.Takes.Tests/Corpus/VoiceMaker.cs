namespace Warmup.Takes.Tests;

/// <summary>Turns tones into sound: three kinds of voice by rule, then room, drone and noise around them.</summary>
internal static class VoiceMaker
{
    public const int Rate = 24_000;

    // Formants in Hz and their widths for a and i (from memory, of the size that textbooks give).
    private static readonly double[][] Formants = [[730, 1090, 2440, 3400], [300, 2200, 2900, 3600]];
    private static readonly double[] Widths = [90, 110, 160, 220];

    public static float[] Sing(TakePlan plan, List<SungTone> tones, Random random)
    {
        var seconds = tones[^1].End + plan.AloneAfter + 0.8 + random.NextDouble();
        var count = (int)(seconds * Rate);
        var (cents, level, vowel) = Courses(plan, tones, random, count);
        var voice = plan.Voice switch
        {
            0 => Sines(cents, level, vowel, random, tilt: 1.1, most: 40, formants: true, breath: 0.004),
            1 => Sines(cents, level, vowel, random, tilt: 1.9, most: 7, formants: false, breath: 0.012),
            2 => Pulses(cents, level, vowel, random),
            _ => SpeechVoice.Sing(cents, level, vowel, random),
        };
        AddConsonants(plan, tones, voice, random);
        var sung = Power(voice, level);
        if (plan.ReverbSeconds > 0)
        {
            voice = Room(voice, plan.ReverbSeconds, random);
        }

        if (plan.DroneDb is { } drone)
        {
            AddDrone(plan, voice, Math.Sqrt(sung * Math.Pow(10, drone / 10)), random);
        }

        Array.Clear(voice, 0, (int)(plan.SilentBefore * Rate));
        if (plan.NoiseDb is { } noise)
        {
            var size = Math.Sqrt(sung * Math.Pow(10, -noise / 10));
            for (var i = 0; i < count; i++)
            {
                voice[i] += size * TakeMaker.Gauss(random);
            }
        }

        var peak = voice.Max(Math.Abs);
        return Array.ConvertAll(voice, v => (float)(0.6 * v / peak));
    }

    /// <summary>The drone of a take without its voice.</summary>
    public static float[] DroneAlone(TakePlan plan, double seconds, Random random)
    {
        var sound = new double[(int)(seconds * Rate)];
        AddDrone(plan, sound, 0.1, random);
        return Array.ConvertAll(sound, v => (float)v);
    }

    private static double Power(double[] voice, double[] level)
    {
        var (sum, count) = (0.0, 0);
        for (var i = 0; i < voice.Length; i++)
        {
            if (level[i] > 0.3)
            {
                sum += voice[i] * voice[i];
                count++;
            }
        }

        return sum / Math.Max(1, count);
    }

    /// <summary>Pitch, loudness and vowel, sample by sample.</summary>
    private static (double[] Cents, double[] Level, double[] Vowel) Courses(TakePlan plan, List<SungTone> tones, Random random, int count)
    {
        var (cents, level, vowel) = (new double[count], new double[count], new double[count]);
        var rate = 5.2 + (1.3 * random.NextDouble());
        var phase = 2 * Math.PI * random.NextDouble();
        for (var t = 0; t < tones.Count; t++)
        {
            var tone = tones[t];
            var (from, to) = ((int)(tone.Onset * Rate), (int)(tone.End * Rate));
            var glideBefore = t > 0 && tones[t - 1].Touches ? Math.Min(0.04 + (0.06 * random.NextDouble()), 0.35 * Math.Min(tone.End - tone.Onset, tones[t - 1].End - tones[t - 1].Onset)) : 0;
            var scoop = t == 0 || !tones[t - 1].Touches ? 60 * random.NextDouble() : 0;
            for (var i = from; i < to; i++)
            {
                var (since, left) = ((i - from) / (double)Rate, (to - i) / (double)Rate);
                cents[i] = tone.Cents - (scoop * Math.Exp(-since / 0.03));
                var swell = Math.Min(1, since / (t > 0 && tones[t - 1].Touches ? 0.001 : 0.025)) * Math.Min(1, left / (tone.Touches ? 0.001 : 0.04));
                level[i] = swell * Consonant(tone.Consonant, since);
                vowel[i] = tone.Vowel;
                var onset = Math.Min(1, since / 0.2);
                cents[i] += plan.VibratoCents * onset * Math.Sin((2 * Math.PI * rate * i / Rate) + phase);
            }

            // The glide from the tone before lies evenly about the border.
            if (glideBefore > 0)
            {
                var half = (int)(glideBefore * Rate / 2);
                var before = tones[t - 1].Cents;
                for (var i = Math.Max(0, from - half); i < Math.Min(to, from + half); i++)
                {
                    var part = 0.5 - (0.5 * Math.Cos(Math.PI * (i - from + half) / (2.0 * half)));
                    var here = i < from ? before : tone.Cents;
                    cents[i] += before + ((tone.Cents - before) * part) - here;
                }
            }
        }

        // Slow unrest of a cent or two.
        var unrest = 0.0;
        for (var i = 0; i < count; i++)
        {
            unrest += (0.05 * TakeMaker.Gauss(random)) - (0.0005 * unrest);
            cents[i] += unrest;
        }

        return (cents, level, vowel);
    }

    /// <summary>How much of the voice a voiced consonant lets through.</summary>
    private static double Consonant(char consonant, double since) => consonant switch
    {
        'm' or 'n' when since < 0.07 => 0.45,
        'r' when since < 0.03 => 0.35,
        'g' or 'd' when since < 0.045 => 0.12,
        _ => 1,
    };

    private static double[] Sines(double[] cents, double[] level, double[] vowel, Random random, double tilt, int most, bool formants, double breath)
    {
        var voice = new double[cents.Length];
        var phase = 0.0;
        var amplitudes = new double[most + 1];
        var shimmer = 0.0;
        for (var i = 0; i < voice.Length; i++)
        {
            if (level[i] <= 0)
            {
                continue;
            }

            var hz = Pitches.Hz(cents[i]);
            phase += 2 * Math.PI * hz / Rate;
            if (i % 64 == 0)
            {
                shimmer = (0.9 * shimmer) + (0.02 * TakeMaker.Gauss(random));
                for (var h = 1; h <= most; h++)
                {
                    amplitudes[h] = h * hz < 7_000 ? Math.Pow(h, -tilt) * (formants ? Shape(h * hz, (int)vowel[i]) : 1) : 0;
                }
            }

            var sum = 0.0;
            var (sin, cos) = Math.SinCos(phase);
            var (before, now) = (0.0, sin);
            for (var h = 1; h <= most && amplitudes[h] > 0; h++)
            {
                sum += amplitudes[h] * now;
                (before, now) = (now, (2 * cos * now) - before);
            }

            voice[i] = level[i] * ((sum * (1 + shimmer)) + (breath * TakeMaker.Gauss(random)));
        }

        return voice;
    }

    private static double Shape(double hz, int vowel)
    {
        var sum = 0.05;
        for (var f = 0; f < 4; f++)
        {
            var off = (hz - Formants[vowel][f]) / (Widths[f] * 1.6);
            sum += (1 - (0.18 * f)) / (1 + (off * off));
        }

        return sum;
    }

    /// <summary>Pulses of air through resonators, with the unrest of a real larynx.</summary>
    private static double[] Pulses(double[] cents, double[] level, double[] vowel, Random random)
    {
        var voice = new double[cents.Length];
        var (y1, y2) = (new double[4], new double[4]);
        var (phase, open, last, jitter) = (0.0, 0.0, 0.0, 0.0);
        for (var i = 0; i < voice.Length; i++)
        {
            var hz = Pitches.Hz(cents[i]) * (1 + jitter);
            phase += level[i] > 0 ? hz / Rate : 0;
            if (phase >= 1)
            {
                phase -= 1;
                jitter = 0.003 * TakeMaker.Gauss(random);
            }

            // A rounded pulse that closes quickly, then its derivative.
            open = phase < 0.6 ? phase * phase * (0.6 - phase) * 12 : 0;
            var source = level[i] > 0 ? (open - last) + (0.002 * TakeMaker.Gauss(random)) : 0;
            last = open;
            var sum = 0.0;
            for (var f = 0; f < 4; f++)
            {
                var r = Math.Exp(-Math.PI * Widths[f] / Rate);
                var next = source + (2 * r * Math.Cos(2 * Math.PI * Formants[(int)vowel[i]][f] / Rate) * y1[f]) - (r * r * y2[f]);
                (y2[f], y1[f]) = (y1[f], next);
                sum += next * (1 - (0.2 * f)) * (f % 2 == 0 ? 1 : -1);
            }

            voice[i] = sum * level[i];
        }

        // Singers sing all vowels about equally loud; resonators do not.
        for (var which = 0; which < 2; which++)
        {
            var own = Enumerable.Range(0, voice.Length).Where(i => level[i] > 0.5 && (int)vowel[i] == which).ToList();
            var size = own.Count == 0 ? 1 : Math.Sqrt(own.Average(i => voice[i] * voice[i])) * (which == 1 ? 1.5 : 1);
            for (var i = 0; i < voice.Length; i++)
            {
                voice[i] /= (int)vowel[i] == which ? size : 1;
            }
        }

        return voice;
    }

    private static void AddConsonants(TakePlan plan, List<SungTone> tones, double[] voice, Random random)
    {
        var loud = voice.Max(Math.Abs);
        foreach (var tone in tones)
        {
            if (plan.HasConsonants && tone.Consonant is 's' or 'p')
            {
                var length = tone.Consonant == 's' ? 0.085 : 0.015;
                var last = 0.0;
                for (var i = Math.Max(1, (int)((tone.Onset - length) * Rate)); i < (int)(tone.Onset * Rate); i++)
                {
                    var noise = TakeMaker.Gauss(random);
                    voice[i] += 0.08 * loud * (noise - last);
                    last = noise;
                }
            }
        }
    }

    /// <summary>A plucked drone on P, the upper S twice and S, each note ringing into the next.</summary>
    private static void AddDrone(TakePlan plan, double[] voice, double size, Random random)
    {
        var section = plan.Score.Sections[0];
        var tonic = Pitches.Cents(section.PitchOf(section.Notes[0]).Hz) - section.PitchOf(section.Notes[0]).Cents - 1200 + plan.OffsetCents + (plan.OffsetCents < -600 ? 1200 : 0);
        var drone = new double[voice.Length];
        double[] strings = [701.955 - 1200 + 1200, 1200, 1200, 0];
        var (string0, time) = (0, 0.0);
        while (time * Rate < drone.Length)
        {
            var hz = Pitches.Hz(tonic + strings[string0 % 4]);
            var (from, to) = ((int)(time * Rate), Math.Min(drone.Length, (int)((time + 5) * Rate)));
            for (var h = 1; h <= 14; h++)
            {
                var (amplitude, phase, decay) = (Math.Pow(h, -0.7) * (0.5 + random.NextDouble()), random.NextDouble() * 6.28, 1.1 + (2.5 / h));
                var w = 2 * Math.PI * h * hz / Rate;
                var rotate = 2 * Math.Cos(w);
                var (before, now) = (Math.Sin(phase - w), Math.Sin(phase));
                var fall = Math.Exp(-1 / (decay * Rate));
                for (var i = from; i < to; i++)
                {
                    drone[i] += amplitude * now * Math.Min(1, (i - from) / 200.0);
                    (before, now) = (now, (rotate * now) - before);
                    amplitude *= fall;
                }
            }

            string0++;
            time += string0 % 4 == 0 ? 1.3 : 0.9;
        }

        var scale = size / Math.Sqrt(drone.Average(d => d * d));
        for (var i = 0; i < voice.Length; i++)
        {
            voice[i] += scale * drone[i];
        }
    }

    /// <summary>A room: eight combs and three all-pass filters.</summary>
    public static double[] Room(double[] voice, double seconds, Random random)
    {
        var wet = new double[voice.Length];
        foreach (var ms in (double[])[29.7, 37.1, 41.1, 43.7, 31.9, 35.3, 45.9, 48.1])
        {
            var length = (int)(ms * Rate / 1000) + random.Next(20);
            var (line, feed, damped) = (new double[length], Math.Pow(10, -3 * length / (seconds * Rate)), 0.0);
            for (var i = 0; i < wet.Length; i++)
            {
                var here = line[i % length];
                damped = (0.75 * here) + (0.25 * damped);
                line[i % length] = voice[i] + (feed * damped);
                wet[i] += here;
            }
        }

        foreach (var ms in (double[])[5.0, 1.7, 0.6])
        {
            var length = (int)(ms * Rate / 1000) + 1;
            var line = new double[length];
            for (var i = 0; i < wet.Length; i++)
            {
                var here = line[i % length];
                var next = wet[i] + (0.7 * here);
                line[i % length] = next;
                wet[i] = here - (0.7 * next);
            }
        }

        var (dryPower, wetPower) = (voice.Sum(v => v * v), wet.Sum(v => v * v));
        var scale = Math.Sqrt(dryPower / wetPower) * (seconds > 1 ? 0.6 : 0.45);
        return [.. voice.Zip(wet, (d, w) => d + (scale * w))];
    }
}
