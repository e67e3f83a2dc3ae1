using System.Globalization;

namespace Warmup.Voices;

/// <summary>Whether the notes follow each other more quickly than a level of singing allows.</summary>
internal static class AgilityCheck
{
    public static IEnumerable<Finding> Check(Score score, Singer singer)
    {
        foreach (var worst in WorstOfEachLine(score, AgilityLimits.Of(singer.Experience)))
        {
            yield return Say(score, worst, singer);
        }
    }

    /// <summary>The most hurried change of each line that is too quick, in order.</summary>
    public static IEnumerable<Hurry> WorstOfEachLine(Score score, AgilityLimits limits)
    {
        Hurry? worst = null;
        foreach (var hurry in All(score, limits))
        {
            if (worst is { } known && (known.Section, known.Note.LineIndex) != (hurry.Section, hurry.Note.LineIndex))
            {
                yield return known;
                worst = null;
            }

            // The one that would have to be slowed most, compared as fractions.
            if (worst is not { } other || hurry.Needed * other.Available > other.Needed * hurry.Available)
            {
                worst = hurry;
            }
        }

        if (worst is { } last)
        {
            yield return last;
        }
    }

    /// <summary>Every pair of notes whose onsets lie too close.</summary>
    public static IEnumerable<Hurry> All(Score score, AgilityLimits limits)
    {
        var starts = score.SectionStarts();
        (Rational Seconds, ScorePitch Pitch)? before = null;
        for (var s = 0; s < score.Sections.Count; s++)
        {
            var (section, sectionStart) = (score.Sections[s], starts[s]);
            var enough = EnoughSteps(section, limits);
            for (var n = 0; n < section.Notes.Count; n = NextQuick(section, n + 1, enough))
            {
                if (n > 0)
                {
                    before = At(section, section.Notes[n - 1], sectionStart);
                }

                var note = section.Notes[n];
                var (onset, pitch) = At(section, note, sectionStart);
                if (before is { } from)
                {
                    var needed = limits.LeastSeconds(pitch.Midi - from.Pitch.Midi, out var binding);
                    if (onset - from.Seconds < needed)
                    {
                        yield return new Hurry(s, note, from.Pitch, pitch, onset - from.Seconds, needed, binding);
                    }
                }
            }

            if (!section.Notes.IsEmpty)
            {
                before = At(section, section.Notes[^1], sectionStart);
            }
        }
    }

    /// <summary>The first note, from one on, that may follow the note before it too quickly; the number of the notes where none does.</summary>
    private static int NextQuick(Section section, int note, long enough)
    {
        // Where the tempo changes, from one line to the next, the time between two notes is partly of each.
        var notes = section.Notes.AsSpan();
        var isSteady = section.TempoChanges.IsEmpty;
        while (note < notes.Length && notes[note].OnsetSteps - notes[note - 1].OnsetSteps >= enough && (isSteady || notes[note].LineIndex == notes[note - 1].LineIndex))
        {
            note++;
        }

        return note;
    }

    private static (Rational Seconds, ScorePitch Pitch) At(Section section, ScoreNote note, Rational sectionStart) =>
        (sectionStart + section.SecondsAt(note.Onset), section.PitchOf(note));

    /// <summary>How quick the notes are and what the limit is, in words.</summary>
    public static string Describe(Hurry hurry, Experience experience)
    {
        var (available, needed) = (hurry.Available.ToDouble() * 1000, hurry.Needed.ToDouble() * 1000);
        if (hurry.Binding == ThroatLimit.NotesASecond)
        {
            return string.Create(
                CultureInfo.InvariantCulture,
                $"{1000 / available:0.0#} notes a second; the most for this level ({experience.ToWord()}) is {1000 / needed:0.#}, this project's own setting");
        }

        // Never one semitone: at each level the notes a second bind up to two.
        var semitones = hurry.To.Midi - hurry.From.Midi;
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{hurry.From.Tone} to {hurry.To.Tone} ({Math.Abs(semitones)} semitones {(semitones > 0 ? "up" : "down")}) has {available:0} ms; the leap rule needs {needed:0} ms (Xu and Sun 2002, measured with speakers, and this project's steady part)");
    }

    private static Finding Say(Score score, Hurry hurry, Singer singer)
    {
        return new Finding(
            VoiceFindingCode.TooFast,
            Severity.Error,
            Describe(hurry, singer.Experience))
        {
            Singer = singer.Alias,
            Place = score.PlaceOf(hurry.Section, hurry.Note),
            Measured = hurry.Available.ToDouble(),
            Limit = hurry.Needed.ToDouble(),
            Unit = "s",
        };
    }

    /// <summary>Two notes whose onsets lie too close: the index of the section, the second note, the pitches, and times in seconds.</summary>
    internal readonly record struct Hurry(
        int Section, ScoreNote Note, ScorePitch From, ScorePitch To, Rational Available, Rational Needed, ThroatLimit Binding);

    /// <summary>
    /// The grid steps from one onset to the next that are enough for every change of pitch in a section at its fastest tempo: most pairs of
    /// notes keep them and need not be compared in seconds. The widest changes need most.
    /// </summary>
    private static long EnoughSteps(Section section, AgilityLimits limits)
    {
        var (lowest, highest) = (int.MaxValue, int.MinValue);
        foreach (var pitch in section.Pitches)
        {
            (lowest, highest) = (Math.Min(lowest, pitch.Midi), Math.Max(highest, pitch.Midi));
        }

        var fastest = section.Tempo;
        foreach (var change in section.TempoChanges)
        {
            fastest = Rational.Max(fastest, change.Tempo);
        }

        var widest = Math.Min(127, highest - lowest);
        var most = Rational.Max(limits.LeastSeconds(widest, out _), limits.LeastSeconds(-widest, out _));
        return (most * fastest * section.Resolution / 60).Ceiling();
    }
}
