using System.Globalization;

namespace Warmup.Midi;

/// <summary>A score on the ticks of a file: what every track needs to know. It refuses what the format cannot hold.</summary>
internal sealed class MidiPlan
{
    /// <summary>The most ticks a quarter note may have: fifteen bits.</summary>
    private const int MostTicks = 32_767;

    // Programs expect a number like this one; a file has another only where the score's grid needs it.
    private const int UsualTicks = 480;

    // The spans of one tempo, which the drone alone needs: where each begins, in seconds and in ticks, and how many ticks it has a second.
    private readonly List<(Rational Seconds, long Tick, Rational Rate)>? _spans;
    private readonly SectionPlan[] _sections;

    private MidiPlan(Score score, MidiOptions options)
    {
        Score = score;
        Options = options;
        if (score.Sections.IsEmpty)
        {
            throw new ExportException("a score must have at least 1 section, not 0");
        }

        _sections = new SectionPlan[score.Sections.Count];
        for (var s = 0; s < _sections.Length; s++)
        {
            _sections[s].Quarters = score.Sections[s].Meter.BeatValue * 4;
        }

        TicksPerQuarter = Division();
        SlideSemitones = options.HasVoice ? VoiceShape.BendSemitones(score) : 0;
        for (var s = 0; s < _sections.Length; s++)
        {
            ref var plan = ref _sections[s];
            var section = score.Sections[s];
            if (section.Measures.IsEmpty || section.LengthSteps < 1)
            {
                throw new ExportException(string.Create(
                    CultureInfo.InvariantCulture, $"{PlaceOf(s)}has {section.Measures.Count} measures and {section.LengthSteps} grid steps; each must be at least 1"));
            }

            plan.Start = End;
            plan.StepTicks = (TicksPerQuarter * plan.Quarters / section.Resolution).Numerator;
            plan.Keys = options.HasVoice ? VoiceKeys(s) : [];
            End += section.LengthSteps * plan.StepTicks;
        }

        if (options.HasDrone && score.Drone is { } drone)
        {
            Drone = new DroneChannels(drone, options.Tuning);
            Seconds = score.Seconds;
            _spans = [];
            AddSpans(_spans);
        }
    }

    public Score Score { get; }

    public MidiOptions Options { get; }

    /// <summary>Ticks a quarter note.</summary>
    public int TicksPerQuarter { get; }

    /// <summary>The tick at which the score ends.</summary>
    public long End { get; }

    /// <summary>The score's length in seconds; 0 where no drone is written.</summary>
    public Rational Seconds { get; }

    /// <summary>The range of the voice's bend that its slides need, in semitones; 0 where nothing slides.</summary>
    public int SlideSemitones { get; }

    /// <summary>The drone's channels, or <see langword="null"/> where no drone is written.</summary>
    public DroneChannels? Drone { get; }

    /// <summary>The plan of a score.</summary>
    /// <exception cref="ExportException">MIDI cannot hold the score.</exception>
    public static MidiPlan For(Score score, MidiOptions options) => new(score, options);

    /// <summary>The tick at which a section begins.</summary>
    public long StartOf(int section) => _sections[section].Start;

    /// <summary>The key and the tuning of each pitch of a section.</summary>
    public KeyTuning[] KeysOf(int section) => _sections[section].Keys;

    /// <summary>The tick of a point in a section.</summary>
    /// <param name="section">The index of the section.</param>
    /// <param name="aksharas">The point, in aksharas from the section's beginning.</param>
    public long TickOf(int section, Rational aksharas)
    {
        if (aksharas.IsInteger)
        {
            return StartOf(section) + (aksharas.Numerator * AksharaTicks(section));
        }

        var (ticks, rest) = Math.DivRem(aksharas.Numerator * AksharaTicks(section), aksharas.Denominator);
        return rest == 0
            ? StartOf(section) + ticks
            : throw new ExportException($"{PlaceOf(section)}{aksharas} aksharas do not fall on the section's grid of 1/{Score.Sections[section].Resolution}");
    }

    /// <summary>The tick of a point in a section.</summary>
    /// <param name="section">The index of the section.</param>
    /// <param name="steps">The point, in grid steps from the section's beginning.</param>
    public long TickOf(int section, int steps) => StartOf(section) + (steps * _sections[section].StepTicks);

    /// <summary>The bend that raises a key of the voice by a number of cents.</summary>
    public int BendOf(double cents) => KeyTuning.BendOf(cents, BendSemitones);

    private int BendSemitones => SlideSemitones == 0 ? KeyTuning.BendSemitones : SlideSemitones;

    /// <summary>The ticks of an akshara in a section.</summary>
    public long AksharaTicks(int section) => _sections[section].StepTicks * Score.Sections[section].Resolution;

    /// <summary>The ticks of a grid step in a section.</summary>
    public long StepTicks(int section) => _sections[section].StepTicks;

    /// <summary>The tick nearest a time in seconds from the score's beginning, by the exact tempi of the sections.</summary>
    public long TickAt(Rational seconds)
    {
        var (low, high) = (1, _spans!.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = _spans[middle].Seconds <= seconds ? (middle + 1, high) : (low, middle);
        }

        var (from, start, rate) = _spans[low - 1];
        return start + Nearest(seconds - from, rate);
    }

    /// <summary>The whole number nearest a product, without a fraction of its own: a long drone needs this very often.</summary>
    private static long Nearest(Rational seconds, Rational rate)
    {
        if (!IsSmall(seconds) || !IsSmall(rate))
        {
            return NearestWide(seconds, rate);
        }

        // The floor of the exact product and a half.
        var twice = 2 * seconds.Denominator * rate.Denominator;
        var (ticks, rest) = Math.DivRem((2 * seconds.Numerator * rate.Numerator) + (twice / 2), twice);
        return ticks - (rest < 0 ? 1 : 0);
    }

    /// <summary>The same for numbers whose products need more than 64 bits.</summary>
    private static long NearestWide(Rational seconds, Rational rate)
    {
        var twice = 2 * (Int128)seconds.Denominator * rate.Denominator;
        var (ticks, rest) = Int128.DivRem((2 * (Int128)seconds.Numerator * rate.Numerator) + (twice / 2), twice);
        return (long)ticks - (rest < 0 ? 1 : 0);
    }

    // Products of two such numbers, doubled, fit 64 bits.
    private static bool IsSmall(Rational number) => number.Numerator is > -(1L << 30) and < 1L << 30 && number.Denominator < 1L << 30;

    /// <summary>A tempo of a section as the file holds it: the nearest whole number, at most half a microsecond off.</summary>
    /// <param name="section">The index of the section.</param>
    /// <param name="aksharas">The tempo in aksharas a minute.</param>
    public int MicrosecondsPerQuarter(int section, Rational aksharas)
    {
        const int Most = 0xFF_FFFF;
        var tempo = aksharas * _sections[section].Quarters;
        var slowest = 60_000_000.0 / Most;
        if (tempo.Sign > 0)
        {
            // The floor of the exact quotient and a half.
            var exact = 60_000_000 / tempo;
            var microseconds = ((2 * exact.Numerator) + exact.Denominator) / (2 * exact.Denominator);
            if (microseconds is >= 1 and <= Most)
            {
                return (int)microseconds;
            }
        }

        throw new ExportException(string.Create(
            CultureInfo.InvariantCulture,
            $"{PlaceOfTempo(section, aksharas)}the tempo must be between {slowest:0.000} and 60000000 quarter notes a minute, not {tempo}"));
    }

    /// <summary>The time signature of a measure: it counts the section's beat, or a finer one where the count does not fit a byte.</summary>
    /// <returns>The numerator, and the power of two of the denominator.</returns>
    public (int Numerator, int Power) TimeSignature(int section, int measure)
    {
        var score = Score.Sections[section];
        var length = score.Measures[measure].Length * _sections[section].Quarters;
        for (var power = score.Meter.IsFree ? 2 : Log2(score.Meter.SignatureType); power <= 6; power++)
        {
            var beats = length * (1 << power) / 4;
            if (beats.IsInteger && beats.Numerator is >= 1 and <= 255)
            {
                return ((int)beats.Numerator, power);
            }
        }

        throw new ExportException(string.Create(
            CultureInfo.InvariantCulture,
            $"{PlaceOf(section)}measure {measure + 1} of {length} quarter notes has no time signature of 1 to 255 quarters or smaller notes down to sixty-fourths"));
    }

    private void AddSpans(List<(Rational Seconds, long Tick, Rational Rate)> spans)
    {
        var starts = Score.SectionStarts();
        for (var s = 0; s < starts.Count; s++)
        {
            spans.Add(Span(s, Rational.Zero, starts[s], Score.Sections[s].Tempo));
            foreach (var change in Score.Sections[s].TempoChanges)
            {
                spans.Add(Span(s, change.Onset, starts[s] + change.Seconds, change.Tempo));
            }
        }
    }

    /// <summary>A span of one tempo.</summary>
    private (Rational Seconds, long Tick, Rational Rate) Span(int section, Rational onset, Rational seconds, Rational tempo) =>
        (seconds, TickOf(section, onset), tempo * AksharaTicks(section) / 60);

    /// <summary>A note's place for a message: <c>section 2, line 3, note 1: </c>; the section only where there are several.</summary>
    public string PlaceOf(int section, int note)
    {
        var at = Score.Sections[section].Notes[note];
        var first = at.LineIndex < Score.Sections[section].Lines.Count ? Score.Sections[section].Lines[at.LineIndex].FirstNote : 0;
        var where = PlaceOf(section).TrimEnd(' ', ':');
        return string.Create(
            CultureInfo.InvariantCulture, $"{where}{(where.Length > 0 ? ", " : string.Empty)}line {at.LineIndex + 1}, note {note - first + 1}: ");
    }

    /// <summary>The place of a tempo: the section, and the line where it is not the section's first tempo.</summary>
    private string PlaceOfTempo(int section, Rational aksharas)
    {
        var at = Score.Sections[section];
        foreach (var change in at.TempoChanges)
        {
            if (aksharas != at.Tempo && change.Tempo == aksharas)
            {
                var line = 0;
                while (line < at.Lines.Count - 1 && at.Lines[line].Onset < change.Onset)
                {
                    line++;
                }

                return string.Create(CultureInfo.InvariantCulture, $"{PlaceOf(section).Replace(": ", ", ", StringComparison.Ordinal)}line {line + 1}: ");
            }
        }

        return PlaceOf(section);
    }

    private string PlaceOf(int section) =>
        Score.Sections.Count == 1 ? string.Empty : string.Create(CultureInfo.InvariantCulture, $"section {section + 1}: ");

    private int Division()
    {
        long grid = 1;
        for (var s = 0; s < _sections.Length; s++)
        {
            var section = Score.Sections[s];
            if (section.Resolution < 1)
            {
                throw new ExportException(string.Create(
                    CultureInfo.InvariantCulture, $"a section's grid steps an akshara must be at least 1, not {section.Resolution}"));
            }

            grid = Rational.Lcm(grid, (_sections[s].Quarters / section.Resolution).Denominator);
            if (grid > MostTicks)
            {
                var all = string.Join(", ", Score.Sections.Select(s => s.Resolution).Distinct());
                throw new ExportException(string.Create(
                    CultureInfo.InvariantCulture,
                    $"the sections' grid steps an akshara ({all}) need at least {grid} ticks a quarter note; a file has at most {MostTicks}"));
            }
        }

        var usual = UsualTicks % grid == 0 ? UsualTicks : Rational.Lcm(grid, UsualTicks);
        return (int)(usual <= MostTicks ? usual : grid * ((UsualTicks + grid - 1) / grid));
    }

    private KeyTuning[] VoiceKeys(int s)
    {
        var section = Score.Sections[s];
        var keys = new KeyTuning[section.Pitches.Count];
        for (var p = 0; p < keys.Length; p++)
        {
            keys[p] = KeyTuning.Of(section.Pitches[p], Options.Tuning, BendSemitones)
                ?? throw new ExportException(PlaceOfPitch(s, p) + OutOfKeys(section.Pitches[p]));
        }

        return keys;
    }

    private string PlaceOfPitch(int section, int pitch)
    {
        var notes = Score.Sections[section].Notes;
        for (var n = 0; n < notes.Count; n++)
        {
            if (notes[n].PitchIndex == pitch)
            {
                return PlaceOf(section, n);
            }
        }

        return PlaceOf(section);
    }

    internal static string OutOfKeys(ScorePitch pitch) => string.Create(
        CultureInfo.InvariantCulture,
        $"{pitch.Tone} ({pitch.Name}, MIDI note {pitch.Midi}) with {pitch.OffsetCents:0.##} cents would need a MIDI note outside 0 to 127; choose another tonic or reference pitch");

    /// <summary>A section on the ticks of the file.</summary>
    private struct SectionPlan
    {
        /// <summary>The quarter notes of an akshara: 1 in the talas, 3/2 for a dotted quarter.</summary>
        public Rational Quarters;

        /// <summary>The tick at which it begins.</summary>
        public long Start;

        /// <summary>The ticks of a grid step.</summary>
        public long StepTicks;

        /// <summary>The key and the tuning of each pitch.</summary>
        public KeyTuning[] Keys;
    }

    private static int Log2(int value) => value > 1 ? int.Log2(value) : 0;
}
