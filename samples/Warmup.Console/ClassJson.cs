namespace Warmup.Cli;

/// <summary>The report of <c>warmup fit</c> as JSON.</summary>
internal sealed record ClassJson(
    string Schema,
    string Title,
    string Tonic,
    string Tempo,
    List<ClassJson.Person> Singers,
    List<ClassJson.TonicRow> Tonics,
    List<ClassJson.TonicRow> Groups,
    ClassJson.BreathRow Breaths,
    List<ClassJson.ClassBreathRow> OwnBreaths,
    List<ClassJson.WindowRow> Windows,
    List<ClassJson.CautionRow> Cautions)
{
    public const string Name = "urn:warmup:fit:1";

    public static ClassJson Of(ClassFit fit) => new(
        Name,
        fit.Score.Title,
        fit.Score.Sections[0].TonicName.ToString(),
        fit.Drill.Tempo.Start.ToString(),
        fit.Report.Rows.Select(ToPerson).ToList(),
        fit.Report.Tonics.Select(t => ToTonic(t, fit.Words, false)).ToList(),
        fit.Report.Groups.Select(t => ToTonic(t, fit.Words, true)).ToList(),
        new BreathRow(
            fit.Plan is not null,
            fit.Plan?.Cost,
            fit.Plan is null ? null : fit.Plan.Breaths.Select(b => new BreathCandidate(b.Place.Line, b.NoteInLine, b.IsAtLineEnd, b.Onset.ToString(), b.Length.ToString())).ToList(),
            fit.NoPlan?.Describe()),
        fit.ClassBreaths.Select(b => new ClassBreathRow(b.Singer.Alias, b.OwnBreathsInside, b.Together, b.WithoutSinger, b.Time.Share.ToDouble())).ToList(),
        fit.Windows.Select(w => new WindowRow(
            w.Speed.Kalam,
            w.Intervals.Select(i => new IntervalRow(i.Slowest, i.Fastest, i.Below, i.Above)).ToList(),
            [.. w.ClosedBy],
            [.. w.OpenedBy])).ToList(),
        Warmup.Cautions.All.Select(c => new CautionRow(c.Text, c.Source)).ToList());

    private static Person ToPerson(ClassRow row)
    {
        var cell = row.Cells[0];
        var verdict = cell.Verdict switch { ClassVerdict.Fits => "fits", ClassVerdict.FitsWithBreaths => "fitsWithBreaths", _ => "doesNotFit" };
        return new Person(
            row.Singer.Alias,
            row.Singer.Low.ToString(),
            row.Singer.High.ToString(),
            row.Singer.IsRangeAssumed,
            row.Singer.BreathSeconds.ToDouble(),
            verdict,
            cell.Octaves,
            cell.TopShare.ToDouble(),
            cell.BottomShare.ToDouble(),
            cell.Why,
            cell.Fix);
    }

    private static TonicRow ToTonic(TonicFit fit, MeterWords words, bool withNames) => new(
        fit.Tonic.ToString(),
        fit.KattaiNumber,
        fit.SingersOut,
        fit.SemitonesOut.ToDouble(),
        fit.CentreDistance.ToDouble(),
        fit.Explain(words.TonicSyllable),
        withNames ? fit.Singers.Select(s => s.Singer.Alias).ToList() : null);

    internal sealed record Person(
        string Alias, string Low, string High, bool RangeAssumed, double BreathSeconds, string Verdict, int Octaves, double TopShare, double BottomShare, string Why, string Fix);

    internal sealed record TonicRow(
        string Tonic, string Kattai, int SingersOut, double SemitonesOut, double CentreDistance, string Explanation, List<string>? Singers);

    internal sealed record BreathRow(bool Possible, int? Cost, List<BreathCandidate>? Places, string? Why);

    internal sealed record BreathCandidate(int Line, int AfterNote, bool AtLineEnd, string Onset, string Length);

    internal sealed record ClassBreathRow(string Singer, int OwnInside, int? InsideTogether, int? InsideWithoutSinger, double SungShare);

    internal sealed record WindowRow(int Speed, List<IntervalRow> Intervals, List<string> ClosedBy, List<string> OpenedBy);

    internal sealed record IntervalRow(int Slowest, int Fastest, string Below, string Above);

    internal sealed record CautionRow(string Text, string Source);
}
