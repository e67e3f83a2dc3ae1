using System.Globalization;
using System.Runtime.InteropServices;

namespace Warmup;

/// <summary>Puts lines in time and in tune.</summary>
internal static class ScoreBuilder
{
    public static Score Build(Drill drill, Expansion expansion, CancellationToken cancellation)
    {
        if (expansion.Lines.IsEmpty)
        {
            throw new PatternException(new Finding(
                FindingCode.PatternEmpty, Severity.Error, $"the pattern {drill.Pattern} has no lines", "use a pattern with lines, such as ladder"));
        }

        var findings = expansion.Findings;
        var tonicName = Spelling.ChooseTonic(drill.Tonic, drill.Scale, out var respelled);
        if (respelled)
        {
            var finding = new Finding(
                FindingCode.TonicRespelled,
                Severity.Note,
                $"{drill.Tonic.TypedName} would need triple accidentals in {drill.Scale.Name} and is written {tonicName}",
                "nothing need change");
            findings = [.. findings, finding];
        }

        var section = Time(drill, expansion, tonicName, cancellation);
        var drone = drill.HasDrone ? drill.DroneStyle.For(drill.Scale, drill.Tonic, drill.Tuning, tonicName) : null;
        if (drone is not null && drill.DroneStyle.Missing(drill.Scale) is { } missing)
        {
            findings = [.. findings, missing];
        }

        return new Score(drill.Title, [section], drone, findings);
    }

    /// <summary>A tone written and tuned.</summary>
    public static ScorePitch Pitch(ScaleTone tone, Tonic tonic, Tuning tuning, NoteName tonicName)
    {
        var name = Spelling.Name(tone, tonicName);
        var cents = tuning.Cents(tone);

        // Above the written note's equal pitch at A4 = 440 Hz: the tuning's deviation, the tonic's offset and the reference's.
        var reference = tonic.A4.Equals(Tonic.StandardA4) ? 0 : 1200 * Math.Log2(tonic.A4 / Tonic.StandardA4);
        var offset = cents + tonic.OffsetCents + reference - (100.0 * (name.Midi - tonic.Midi));
        return new ScorePitch(tone, name, cents, tuning.Hz(tone, tonic), offset);
    }

    private static Section Time(Drill drill, Expansion expansion, NoteName tonicName, CancellationToken cancellation)
    {
        var grid = Grid.For(drill, expansion);
        var notes = new ScoreNote[expansion.NoteCount];
        var lines = new ScoreLine[expansion.Lines.Count];
        var breaths = new List<Breath>();
        var palette = new Palette(drill, tonicName);
        var at = 0L;
        var index = 0;
        for (var l = 0; l < lines.Length; l++)
        {
            cancellation.ThrowIfCancellationRequested();
            var line = expansion.Lines[l];
            var onset = at;
            var first = index;
            for (var i = 0; i < line.Notes.Count; i++)
            {
                var note = line.Notes[i];
                var length = grid.Steps(note.Length);
                var held = drill.Delivery.IsLineByLine && i == line.Notes.Count - 1;
                if (held)
                {
                    length = grid.Hold(at, length);
                }

                var pitch = palette.IndexOf(note.Tone, l);
                notes[index++] = new ScoreNote((int)at, (int)length, grid.Resolution, pitch, l, note.Sung ?? palette.Syllable(pitch), held);
                at += length;
                if (held)
                {
                    var end = grid.EndOfBreath(at);
                    breaths.Add(new Breath(new Rational(at, grid.Resolution), new Rational(end - at, grid.Resolution), index - 1));
                    at = end;
                }

                at += grid.Steps(note.Rest);
                if (at > int.MaxValue)
                {
                    throw new PatternException(new Finding(
                        FindingCode.PatternTooLong, Severity.Error, "the drill is too long to be put in time", "take fewer lines or longer units"));
                }
            }

            lines[l] = new ScoreLine(first, index - first, new Rational(onset, grid.Resolution), new Rational(at - onset, grid.Resolution));
        }

        var measures = MeasurePlan.For(drill.Meter, lines, new Rational(at, grid.Resolution));
        return new Section
        {
            Title = drill.Title,
            Scale = drill.Scale,
            Tonic = drill.Tonic,
            TonicName = tonicName,
            Tuning = drill.Tuning,
            Meter = drill.Meter,
            Speed = drill.Speed,
            Delivery = drill.Delivery,
            Tempo = drill.Tempo,
            Resolution = grid.Resolution,
            Pitches = palette.Pitches,
            Notes = ValueList.Adopt(notes),
            Lines = ValueList.Adopt(lines),
            Breaths = breaths.ToValueList(),
            Measures = measures,
            LengthSteps = (int)grid.Aksharas(measures[^1].Onset + measures[^1].Length),
        };
    }

    /// <summary>The whole-number grid of a section.</summary>
    private readonly record struct Grid(int Resolution, Rational Unit, Drill Drill, long Breath, long LeastHold)
    {
        public static Grid For(Drill drill, Expansion expansion)
        {
            var unit = drill.Speed.Unit;
            var breath = drill.Delivery.BreathAksharas(drill.Tempo);
            long resolution = 1;
            Rational last = default;
            foreach (var line in expansion.Lines)
            {
                foreach (var note in line.Notes)
                {
                    if (note.Length != last)
                    {
                        last = note.Length;
                        resolution = Lcm(resolution, (unit * last).Denominator);
                    }

                    if (note.Rest != Rational.Zero)
                    {
                        resolution = Lcm(resolution, (unit * note.Rest).Denominator);
                    }
                }
            }

            if (drill.Delivery.IsLineByLine)
            {
                resolution = Lcm(Lcm(resolution, breath.Denominator), drill.Delivery.LeastHold.Denominator);
            }

            if (drill.Meter.IsFree)
            {
                // Bars of free rhythm fall on sixteenths of an akshara's whole at the finest.
                resolution = Lcm(resolution, MeasurePlan.FreeGrid);
            }

            if (resolution > MostResolution)
            {
                throw new PatternException(new Finding(
                    FindingCode.PatternRefused,
                    Severity.Error,
                    string.Create(CultureInfo.InvariantCulture, $"the lengths need {resolution} parts of an akshara; the most is {MostResolution}"),
                    "use simpler fractions of a unit"));
            }

            var grid = new Grid((int)resolution, unit, drill, 0, 0);
            return drill.Delivery.IsLineByLine
                ? grid with { Breath = grid.Aksharas(breath), LeastHold = grid.Aksharas(drill.Delivery.LeastHold) }
                : grid;
        }

        public long Steps(Rational units) => Aksharas(units * Unit);

        /// <summary>Whole grid steps of a number of aksharas; a number that does not fall on the grid is an error of the builder.</summary>
        public long Aksharas(Rational aksharas)
        {
            var steps = aksharas * Resolution;
            return steps.IsInteger ? steps.Numerator : throw new InvalidOperationException($"{aksharas} aksharas do not fall on the grid of 1/{Resolution}");
        }

        /// <summary>The length of a held last note that begins at a point: to the end of the avartana less the breath.</summary>
        public long Hold(long onset, long length)
        {
            var least = Math.Max(length, LeastHold);
            if (Drill.Meter.IsFree)
            {
                return least;
            }

            var avartana = (long)Drill.Meter.Beats * Resolution;
            var end = ((onset + least + Breath + avartana - 1) / avartana) * avartana;
            return end - Breath - onset;
        }

        /// <summary>Where the breath that begins at a point ends: on the next whole akshara in free rhythm.</summary>
        public long EndOfBreath(long at) => Drill.Meter.IsFree ? ((at + Breath + Resolution - 1) / Resolution) * Resolution : at + Breath;

        private const long MostResolution = 16_383;

        private static long Lcm(long a, long b)
        {
            var (x, y) = (a, b);
            while (y != 0)
            {
                (x, y) = (y, x % y);
            }

            // Beyond the bound the exact number no longer matters; it must not overflow before it is refused.
            return (long)Int128.Min((Int128)a / x * b, int.MaxValue);
        }
    }

    /// <summary>The different pitches of a section and their syllables.</summary>
    private sealed class Palette(Drill drill, NoteName tonicName)
    {
        private readonly List<ScorePitch> _pitches = [];
        private readonly List<string> _syllables = [];
        private readonly Dictionary<ScaleTone, int> _indexes = [];

        public ValueList<ScorePitch> Pitches => _pitches.ToValueList();

        public string Syllable(int index) => _syllables[index];

        public int IndexOf(ScaleTone tone, int line)
        {
            ref var index = ref CollectionsMarshal.GetValueRefOrAddDefault(_indexes, tone, out var known);
            if (known)
            {
                return index;
            }

            var midi = drill.Tonic.Midi + tone.Semitones;
            if (midi is < 0 or > 127)
            {
                throw new PatternException(new Finding(
                    FindingCode.OutsideMidi,
                    Severity.Error,
                    string.Create(CultureInfo.InvariantCulture, $"{tone} on the tonic {drill.Tonic} would be MIDI note {midi}; it must lie from 0 to 127"),
                    "choose another tonic or fewer octaves")
                { Line = line + 1 });
            }

            index = _pitches.Count;
            var pitch = Pitch(tone, drill.Tonic, drill.Tuning, tonicName);
            _pitches.Add(drill.HasSimplerSpelling ? pitch with { Name = Spelling.Simpler(pitch.Name) } : pitch);
            _syllables.Add(drill.Syllables.SyllableOf(tone));
            return index;
        }
    }
}
