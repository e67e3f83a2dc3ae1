using System.Globalization;

namespace Warmup.Midi;

/// <summary>What changes while a key sounds.</summary>
internal enum ShapeKind
{
    /// <summary>The bend of the channel.</summary>
    Bend,

    /// <summary>The expression controller.</summary>
    Expression,

    /// <summary>The syllable of a note that the key has slid to.</summary>
    Syllable,
}

/// <summary>A change while a key sounds.</summary>
/// <param name="Tick">When.</param>
/// <param name="Kind">What changes.</param>
/// <param name="Value">Its new value; for a syllable the index of the note.</param>
internal readonly record struct ShapeEvent(long Tick, ShapeKind Kind, int Value);

/// <summary>
/// The changes while a key sounds: notes that slide into each other are one key, bent from pitch to pitch, so that nothing is struck anew; a
/// note that swells is led by the expression controller.
/// </summary>
internal static class VoiceShape
{
    /// <summary>The expression of an even note.</summary>
    public const int Even = 127;

    // The project's own settings: about 12 dB softer at both ends of a swell, by the curve that General MIDI 2 recommends (from memory); slides
    // in steps that are not heard as steps.
    private const int Softest = 64;
    private const double CentsAStep = 5;

    // The widest range of the bend that players commonly take.
    private const int WidestBend = 24;

    /// <summary>The expression at the beginning of a note.</summary>
    public static int ExpressionOf(in ScoreNote note) => note.Loudness == Loudness.SwellAndFade ? Softest : Even;

    /// <summary>Whether something changes while the note's key sounds.</summary>
    public static bool IsNeeded(in ScoreNote note) => note.Joining == Joining.Glide || note.Loudness == Loudness.SwellAndFade;

    /// <summary>The last of the notes that slide into each other from a note on.</summary>
    public static int LastOf(ReadOnlySpan<ScoreNote> notes, int first)
    {
        var last = first;
        while (notes[last].Joining == Joining.Glide)
        {
            last++;
        }

        return last;
    }

    /// <summary>The whole semitones that the slides of a score need as the range of the bend; 0 where nothing slides.</summary>
    public static int BendSemitones(Score score)
    {
        var most = 0.0;
        foreach (var section in score.Sections)
        {
            var notes = section.Notes.AsSpan();
            var first = 0;
            for (var n = 0; n < notes.Length; n++)
            {
                if (notes[n].Joining != Joining.Glide)
                {
                    first = n + 1;
                    continue;
                }

                most = Math.Max(most, Math.Abs(Cents(section, notes[first], notes[n + 1], isEqual: false)));
            }
        }

        if (most == 0)
        {
            return 0;
        }

        // Room for the tuning of the first note besides.
        var semitones = (int)Math.Ceiling(most / 100) + KeyTuning.BendSemitones;
        return semitones <= WidestBend
            ? semitones
            : throw new ExportException(string.Create(
                CultureInfo.InvariantCulture,
                $"notes that slide into each other lie {most:0} cents apart; MIDI bends a key by at most {(WidestBend - KeyTuning.BendSemitones) * 100} cents: slide over fewer notes"));
    }

    /// <summary>Adds the changes of a key that begins with a note, in the order of their time.</summary>
    /// <param name="events">Where they go.</param>
    /// <param name="section">The section.</param>
    /// <param name="first">The note whose key sounds.</param>
    /// <param name="bend">The bend with which it begins.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="tickOf">The tick of a grid step.</param>
    public static void Add(List<ShapeEvent> events, Section section, int first, int bend, MidiPlan plan, Func<int, long> tickOf)
    {
        var isEqual = plan.Options.Tuning == MidiTuning.EqualOnly;
        var notes = section.Notes.AsSpan();
        var last = LastOf(notes, first);
        for (var n = first; n <= last; n++)
        {
            ref readonly var note = ref notes[n];
            var (onset, middle, end) = (tickOf(note.OnsetSteps), tickOf(note.MiddleSteps), tickOf(note.EndSteps));
            if (n > first)
            {
                events.Add(new ShapeEvent(onset, ShapeKind.Syllable, n));
            }

            var begins = events.Count;
            if (note.Loudness == Loudness.SwellAndFade)
            {
                Ramp(events, ShapeKind.Expression, onset, Softest, middle, Even, Even - Softest);
                Ramp(events, ShapeKind.Expression, middle, Even, end - 1, Softest, Even - Softest);
            }
            else if (n > first && notes[n - 1].Loudness == Loudness.SwellAndFade)
            {
                events.Add(new ShapeEvent(onset, ShapeKind.Expression, Even));
            }

            if (n < last)
            {
                var (from, to) = (Cents(section, notes[first], note, isEqual), Cents(section, notes[first], notes[n + 1], isEqual));
                var steps = (int)Math.Ceiling(Math.Abs(to - from) / CentsAStep);
                Ramp(events, ShapeKind.Bend, middle, bend + plan.BendOf(from), end, bend + plan.BendOf(to), steps);
            }

            events.Sort(begins, events.Count - begins, Comparer<ShapeEvent>.Create(static (a, b) => (a.Tick, a.Kind).CompareTo((b.Tick, b.Kind))));
        }
    }

    private static double Cents(Section section, in ScoreNote from, in ScoreNote to, bool isEqual)
    {
        var (a, b) = (section.Pitches[from.PitchIndex], section.Pitches[to.PitchIndex]);
        return isEqual ? 100 * (b.Midi - a.Midi) : b.Cents - a.Cents;
    }

    /// <summary>Adds equal steps from one value at a tick to another at a later one; the first value has been sent already.</summary>
    private static void Ramp(List<ShapeEvent> events, ShapeKind kind, long start, int from, long end, int to, int steps)
    {
        steps = (int)Math.Min(steps, end - start);
        for (var s = 1; s <= steps; s++)
        {
            events.Add(new ShapeEvent(start + ((end - start) * s / steps), kind, from + (int)((long)(to - from) * s / steps)));
        }
    }
}
