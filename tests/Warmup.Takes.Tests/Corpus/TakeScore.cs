namespace Warmup.Takes.Tests;

/// <summary>How reports of made takes compare with what is known of them.</summary>
internal sealed class TakeScore
{
    private const double EdgePart = 0.2;

    public int Notes { get; private set; }

    public int Right { get; private set; }

    public List<double> Cents { get; } = [];

    public int RightNotes { get; private set; }

    public int FalseOther { get; private set; }

    public int OnsetsNear { get; private set; }

    public int Onsets { get; private set; }

    public int Sure { get; private set; }

    public int SureRight { get; private set; }

    public int Unsure { get; private set; }

    /// <summary>Notes of reports that are unsure, whether or not they are right.</summary>
    public int UnsureNotes { get; private set; }

    public int UnsureRight { get; private set; }

    public int Wrong { get; private set; }

    public int WrongFound { get; private set; }

    public int LeftOut { get; private set; }

    public int LeftOutFound { get; private set; }

    public int Events { get; private set; }

    public int EventsFound { get; private set; }

    public int EventsFalse { get; private set; }

    public int Takes { get; private set; }

    public int OctavesWrong { get; private set; }

    public int OffsetsWrong { get; private set; }

    public int DriftsWrong { get; private set; }

    public int Breaths { get; private set; }

    public int BreathsFound { get; private set; }

    public int BreathsInside { get; private set; }

    public int Rings { get; private set; }

    public int NotTheDrill { get; private set; }

    public List<double> Late { get; } = [];

    public List<string> Said { get; } = [];

    public void Add(MadeTake take, TakeReport report)
    {
        Takes++;
        var name = $"{take.Plan.Condition} seed {take.Plan.Seed} voice {take.Plan.Voice} '{take.Plan.Score.Title}' drone {take.Plan.DroneDb} offset {take.Plan.OffsetCents:0} octave {take.Plan.Octave} pace {take.Plan.Pace:0.00} consonants {take.Plan.HasConsonants}";
        if (!report.IsDrill)
        {
            NotTheDrill++;
            Said.Add($"NOT THE DRILL {report.Reason}: {name}");
            Notes += take.Tones.Count;
            return;
        }

        var before = Right;
        var shift = report.OffsetCents + (1200 * report.Octave);
        OctavesWrong += Math.Abs(shift - take.Plan.OffsetCents - (1200 * take.Plan.Octave)) > 500 ? 1 : 0;
        if (Math.Abs(shift - take.Plan.OffsetCents - (1200 * take.Plan.Octave)) > 500)
        {
            Said.Add($"OCTAVE {shift}: {name}");
        }

        OffsetsWrong += Math.Abs(shift - take.Plan.OffsetCents - (1200 * take.Plan.Octave) - (take.DriftCents / 2)) > 10 ? 1 : 0;
        var drill = new DrillNotes(take.Plan.Score);

        // What drifted in truth is the line through the notes as they were made: each has an error of its own.
        var steady = take.Tones.Where(t => !t.IsOther).ToList();
        var (_, slope) = MathNet.Numerics.Fit.Line([.. steady.Select(t => t.Onset)], [.. steady.Select(t => t.Cents - drill.Notes[t.Index].Cents)]);
        DriftsWrong += Math.Abs(report.DriftCents - (slope * (take.Tones[^1].Onset - take.Tones[0].Onset))) > 5 ? 1 : 0;
        var bad = new List<string>();
        var far = new List<string>();
        foreach (var tone in take.Tones)
        {
            Notes++;
            var note = report.Notes.Where(n => n.Index == tone.Index && n.Onset is not null)
                .MaxBy(n => Overlap(n, tone));
            var overlap = note is null ? 0 : Overlap(note, tone);
            var isThere = overlap > 0.5 * (tone.End - tone.Onset);
            var isRight = isThere && (note!.Status == NoteStatus.Unsure || note.Status == (tone.IsOther ? NoteStatus.OtherNote : NoteStatus.Sung));
            Wrong += tone.IsOther ? 1 : 0;
            WrongFound += tone.IsOther && isThere && note!.Status == NoteStatus.OtherNote ? 1 : 0;
            RightNotes += tone.IsOther ? 0 : 1;
            Unsure += isThere && note!.Status == NoteStatus.Unsure ? 1 : 0;
            FalseOther += isThere && !tone.IsOther && note!.Status == NoteStatus.OtherNote ? 1 : 0;
            if (!isRight)
            {
                bad.Add($"{tone.Index}{(tone.IsOther ? "!" : "")}@{tone.Onset:0.00}-{tone.End:0.00} ({(note is null ? "none" : $"{note.Onset:0.00}-{note.End:0.00} {note.Status} {note.Cents}")})");
                continue;
            }

            Right++;
            Onsets++;
            OnsetsNear += Math.Abs(note!.Onset!.Value - tone.Onset) <= 0.05 ? 1 : 0;
            Late.Add(note.Onset.Value - tone.Onset);
            if (!tone.IsOther)
            {
                Cents.Add(Math.Abs(drill.Notes[tone.Index].Cents + note.Cents!.Value + shift - tone.Cents));
                if (Cents[^1] > 8)
                {
                    far.Add($"{tone.Index}@{tone.Onset:0.00}-{tone.End:0.00} {drill.Notes[tone.Index].Cents + note.Cents!.Value + shift - tone.Cents:0.0} ({note.Onset:0.00}-{note.End:0.00} spread {note.Spread} vibrato {note.Vibrato})");
                }
            }
        }

        // What the report says that it is sure of, note by note: a tone of that note must be there, of that kind, over half of its time.
        foreach (var note in report.Notes.Where(n => n.Onset is not null))
        {
            var isSure = note.Status != NoteStatus.Unsure;
            var isRight = take.Tones.Exists(t => t.Index == note.Index && Overlap(note, t) > 0.5 * (t.End - t.Onset) && (!isSure || note.Status == (t.IsOther ? NoteStatus.OtherNote : NoteStatus.Sung)));
            (Sure, SureRight, UnsureRight) = (Sure + (isSure ? 1 : 0), SureRight + (isSure && isRight ? 1 : 0), UnsureRight + (!isSure && isRight ? 1 : 0));
            UnsureNotes += isSure ? 0 : 1;
        }

        Rings += report.Doubts.Any(d => d.Contains("rings", StringComparison.Ordinal)) ? 1 : 0;
        for (var t = 1; t < take.Tones.Count; t++)
        {
            var (from, to) = (take.Tones[t - 1].End, take.Tones[t].Onset);
            Breaths += to - from >= 0.25 ? 1 : 0;
            BreathsFound += to - from >= 0.25 && report.Breaths.Any(b => Math.Min(to, b.Onset + b.Seconds) - Math.Max(from, b.Onset) > 0.5 * (to - from)) ? 1 : 0;
        }

        BreathsInside += report.Breaths.Count(b => take.Tones.Exists(t => b.Onset > t.Onset + 0.1 && b.Onset + b.Seconds < t.End - 0.1));
        foreach (var index in take.LeftOut)
        {
            LeftOut++;
            LeftOutFound += report.Notes.Any(n => n.Index == index && n.Status == NoteStatus.LeftOut) ? 1 : 0;
        }

        var lines = report.Events.Select(e => new MadeEvent(e.Kind, Array.FindIndex(drill.Lines, l => l.Number == e.Line && l.Round == e.Round))).ToList();
        Events += take.Events.Count;
        EventsFound += take.Events.Count(lines.Contains);
        EventsFalse += lines.Count(l => !take.Events.Contains(l));
        if (far.Count > 2)
        {
            Said.Add($"FAR {name}: {string.Join(", ", far.Take(8))}");
        }

        if (bad.Count > 0 || lines.Count != take.Events.Count)
        {
            Said.Add($"{bad.Count}/{Right - before + bad.Count} {name}\n    {string.Join(" ", bad.Take(12))}\n    events {string.Join(" ", lines)} truth {string.Join(" ", take.Events)} left out {string.Join(",", take.LeftOut.Take(4))}");
        }
    }

    public string Row(string condition)
    {
        Cents.Sort();
        Late.Sort();
        double At(List<double> list, double part) => list.Count == 0 ? double.NaN : list[(int)(part * (list.Count - 1))];
        return FormattableString.Invariant(
            $"{condition,-16} right {100.0 * Right / Math.Max(1, Notes),6:0.00} %  cents {At(Cents, 0.5),4:0.0} / {At(Cents, 0.9),4:0.0}  other {100.0 * FalseOther / Math.Max(1, RightNotes),5:0.00}  onset {100.0 * OnsetsNear / Math.Max(1, Onsets),5:0.0} % ({1000 * At(Late, 0.5),4:0} ms, {1000 * At(Late, 0.05),4:0} to {1000 * At(Late, 0.95),4:0})  unsure {100.0 * Unsure / Math.Max(1, Notes),4:0.0}  sure right {100.0 * SureRight / Math.Max(1, Sure),6:0.00} of {Sure}, unsure right {UnsureRight}/{UnsureNotes}  wrong {WrongFound}/{Wrong}  left {LeftOutFound}/{LeftOut}  events {EventsFound}/{Events} +{EventsFalse}  breaths {BreathsFound}/{Breaths} inside {BreathsInside} rings {Rings}  octave {OctavesWrong} offset {OffsetsWrong} drift {DriftsWrong} not {NotTheDrill} of {Takes}");
    }

    private static double Overlap(TakeNote note, SungTone tone) => Math.Min(note.End!.Value, tone.End) - Math.Max(note.Onset!.Value, tone.Onset);

    /// <summary>The mean distance that the edges leave.</summary>
    public static double Middle => EdgePart;
}
