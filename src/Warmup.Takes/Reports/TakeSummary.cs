using System.Globalization;

namespace Warmup.Takes;

/// <summary>A kind of notes that warm-ups train, and how a take did there. Immutable, value equality.</summary>
/// <param name="Name">The kind in words, such as "starting notes of lines".</param>
/// <param name="Heard">The notes of the kind that were heard surely.</param>
/// <param name="InTune">Those of them that were in tune.</param>
/// <param name="Cents">The median distance from the drill's pitch, in whole cents.</param>
public sealed record TakeSkill(string Name, int Heard, int InTune, int Cents)
{
    /// <summary>The kind in words, such as "starting notes of lines".</summary>
    public string Name { get; init => field = Require.NotNull(value, nameof(Name)); } = Require.NotNull(Name);

    /// <summary>The share of them that was not in tune.</summary>
    internal double Missed => 1 - (InTune / (double)Heard);

    /// <summary>The kind, and how many were in tune.</summary>
    public override string ToString() => OneLine.Of(string.Create(CultureInfo.InvariantCulture, $"{Name}: {InTune} of {Heard}"));
}

/// <summary>Sums a take up by what the three levels train: starting notes, the return to S, steps, leaps by size, long notes.</summary>
public static class TakeSummary
{
    // A note of this many seconds is long (the project's own setting).
    private const double Long = 1.5;

    // One note in four may be off in a line that does not stay off.
    private const int MostOff = 4;

    /// <summary>The kinds of notes that were heard, in a fixed order.</summary>
    /// <param name="score">The drill.</param>
    /// <param name="report">What was heard of it.</param>
    public static ValueList<TakeSkill> Skills(Score score, TakeReport report)
    {
        ArgumentNullException.ThrowIfNull(score);
        ArgumentNullException.ThrowIfNull(report);
        var drill = new DrillNotes(score);
        (string Name, Func<DrillNote, bool> Is)[] kinds =
        [
            ("starting notes of lines", n => n.IsFirst),
            ("the return to S", n => !n.IsFirst && IsTonic(drill, n)),
            ("steps", n => Leap(drill, n) is (true, > 0)),
            ("leaps up to 4 semitones", n => Leap(drill, n) is (false, > 0 and <= 4)),
            ("leaps of 5 to 7 semitones", n => Leap(drill, n) is (false, >= 5 and <= 7)),
            ("leaps of 8 semitones and more", n => Leap(drill, n) is (false, >= 8)),
            ("long notes", n => n.Seconds >= Long),
        ];
        var skills = new List<TakeSkill>();
        foreach (var (name, isOne) in kinds)
        {
            var notes = report.Notes.Where(n => n.Status is NoteStatus.Sung or NoteStatus.OtherNote && n.Index < drill.Notes.Length && isOne(drill.Notes[n.Index])).ToList();
            if (notes.Count > 0)
            {
                var cents = notes.ConvertAll(n => Math.Abs(n.Cents ?? 0));
                cents.Sort();
                skills.Add(new TakeSkill(name, notes.Count, cents.Count(c => c <= TakeMarks.InTune), cents[cents.Count / 2]));
            }
        }

        return skills.ToValueList();
    }

    /// <summary>
    /// The numbers of the lines that stayed off, rising: more than a quarter of the notes that were heard surely, two at least and over all rounds,
    /// were other notes or more than <see cref="TakeMarks.InTune"/> cents off (the project's own setting).
    /// </summary>
    /// <param name="report">What was heard.</param>
    public static ValueList<int> OffLines(TakeReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return report.Lines.GroupBy(l => l.Line)
            .Where(g => g.Sum(l => l.Heard) >= 2 && MostOff * (g.Sum(l => l.Heard) - g.Sum(l => l.InTune)) > g.Sum(l => l.Heard))
            .Select(g => g.Key).Order().ToValueList();
    }

    /// <summary>What went well, and the one thing to work on, in sentences.</summary>
    /// <param name="score">The drill.</param>
    /// <param name="report">What was heard of it.</param>
    public static ValueList<string> Words(Score score, TakeReport report)
    {
        ArgumentNullException.ThrowIfNull(score);
        ArgumentNullException.ThrowIfNull(report);
        var said = new List<string>();
        if (!report.IsDrill)
        {
            said.Add($"This is not the drill: {report.Reason}. Nothing was judged.");
            return said.ToValueList();
        }

        var skills = Skills(score, report).Where(s => s.Heard >= 2).ToList();
        var heard = report.Notes.Where(n => n.Status is NoteStatus.Sung or NoteStatus.OtherNote).ToList();
        var inTune = heard.Count(n => n.Status == NoteStatus.Sung && Math.Abs(n.Cents!.Value) <= TakeMarks.InTune);
        said.Add(string.Create(CultureInfo.InvariantCulture, $"{heard.Count} notes were heard, {inTune} of them in tune, which is within {TakeMarks.InTune} cents."));
        if (skills.Count > 0)
        {
            var worst = skills.MaxBy(s => (s.Missed, s.Cents))!;
            if (skills.Where(s => s != worst || s.Missed == 0).MinBy(s => (s.Missed, s.Cents)) is { InTune: > 0 } best)
            {
                said.Add(string.Create(CultureInfo.InvariantCulture, $"What went well: {best.Name}, {best.InTune} of {best.Heard} in tune."));
            }

            said.Add(worst.InTune == worst.Heard
                ? "Nothing stands out to work on: all kinds of notes were in tune."
                : string.Create(CultureInfo.InvariantCulture, $"The one thing to work on: {worst.Name}; {worst.InTune} of {worst.Heard} were in tune, the median was {worst.Cents} cents off."));
        }

        said.Add(string.Create(
            CultureInfo.InvariantCulture,
            $"Beside it: ordinary singers are {TakeMarks.UsualCents} cents off in the median and drift {TakeMarks.UsualDrift} cents in 50 s (Mauch, Frieler and Dixon 2014); less than that is no fault."));
        if (report.OffsetCents != 0 || report.Octave != 0)
        {
            said.Add(string.Create(CultureInfo.InvariantCulture, $"The singer's own S lies {Apart(report)} the drill's; the notes are measured from it."));
        }

        said.AddRange(report.Events.Select(e => string.Create(CultureInfo.InvariantCulture, $"{Sentence(e.Kind)} line {e.Line}{(score.Sections.Count > 1 || score.Sections[0].Rounds > 1 ? $" of round {e.Round}" : string.Empty)}, at {e.Seconds:0.0} s.")));
        said.AddRange(report.Doubts);
        said.Add("Ornaments (gamaka) are not judged. The teacher's ear overrules all of this.");
        return said.ToValueList();
    }

    private static string Apart(TakeReport report)
    {
        var octaves = report.Octave == 0 ? string.Empty : string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(report.Octave)} {(Math.Abs(report.Octave) == 1 ? "octave" : "octaves")} {(report.Octave > 0 ? "above" : "below")}");
        var cents = report.OffsetCents == 0 ? string.Empty : string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(report.OffsetCents)} cents {(report.OffsetCents > 0 ? "above" : "below")}");
        return octaves.Length > 0 && cents.Length > 0 ? $"{octaves} and {cents}" : octaves + cents;
    }

    private static string Sentence(TakeEventKind kind) => kind switch
    {
        TakeEventKind.Repeat => "Sung again:",
        TakeEventKind.Skip => "Left out:",
        TakeEventKind.FalseStart => "Begun and broken off:",
        _ => "The take ends in",
    };

    private static bool IsTonic(DrillNotes drill, DrillNote note) => drill.ToneOf(note).Degree.Semitones == 0;

    /// <summary>Whether a note is reached from the one before it in its line by a step of the scale, and by how many semitones.</summary>
    private static (bool IsStep, int Semitones) Leap(DrillNotes drill, DrillNote note)
    {
        if (note.IsFirst)
        {
            return (false, 0);
        }

        var (from, to) = (drill.ToneOf(drill.Notes[note.Index - 1]).Semitones, drill.ToneOf(note).Semitones);
        var degrees = drill.Score.Sections[note.Section].Scale.Degrees;
        var between = 0;
        for (var s = Math.Min(from, to) + 1; s < Math.Max(from, to); s++)
        {
            between += degrees.Any(d => (s - d.Semitones) % 12 == 0) ? 1 : 0;
        }

        return (between == 0, Math.Abs(to - from));
    }
}
