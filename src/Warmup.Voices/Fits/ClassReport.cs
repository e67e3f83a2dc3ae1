using System.Globalization;

namespace Warmup.Voices;

/// <summary>Whether a singer can sing a drill.</summary>
public enum ClassVerdict
{
    /// <summary>It fits without a change.</summary>
    Fits,

    /// <summary>It fits with the breaths of a plan.</summary>
    FitsWithBreaths,

    /// <summary>It does not fit without a change.</summary>
    DoesNotFit,
}

/// <summary>Whether and how one singer can sing one drill. Immutable, value equality.</summary>
public sealed record ClassCell
{
    internal ClassCell(ClassVerdict verdict, int octaves, string why, string fix, Rational top, Rational bottom) =>
        (Verdict, Octaves, Why, Fix, TopShare, BottomShare) = (verdict, octaves, why, fix, top, bottom);

    /// <summary>Whether it fits.</summary>
    public ClassVerdict Verdict { get; }

    /// <summary>The octave in which this singer sings it: 0 as written, -1 an octave lower.</summary>
    public int Octaves { get; }

    /// <summary>What does not fit, or where the added breaths are; empty where it fits without a change.</summary>
    public string Why { get; }

    /// <summary>What checks of your own say would help; <see cref="Advising.Advise"/> finds what does.</summary>
    public string Fix { get; }

    /// <summary>The share of the sung time in the top fifth of the comfortable range or above it, 0 to 1.</summary>
    public Rational TopShare { get; }

    /// <summary>The share of the sung time in the bottom fifth of the comfortable range or below it, 0 to 1.</summary>
    public Rational BottomShare { get; }

    /// <summary>The verdict and why.</summary>
    public override string ToString() => OneLine.Of(Why.Length == 0 ? $"{Verdict}" : $"{Verdict}: {Why}");
}

/// <summary>A singer's row of the table. Immutable, value equality.</summary>
public sealed record ClassRow
{
    internal ClassRow(Singer singer, ValueList<ClassCell> cells) => (Singer, Cells) = (singer, cells);

    /// <summary>The singer.</summary>
    public Singer Singer { get; }

    /// <summary>A cell for each drill.</summary>
    public ValueList<ClassCell> Cells { get; }

    /// <summary>The singer and the verdicts.</summary>
    public override string ToString() => OneLine.Of($"{Singer.Alias}: {string.Join(", ", Cells.ConvertAll(c => c.Verdict))}");
}

/// <summary>What fits a class: a table of singers and drills, the best common tonic, and two groups where one tonic is not enough.</summary>
/// <remarks>
/// Every singer sings in the octave that suits them best. <see cref="Cautions.All"/> belong to every report. Immutable, value equality.
/// </remarks>
public sealed record ClassReport
{
    private ClassReport(ValueList<string> drills, ValueList<ClassRow> rows, ValueList<TonicFit> tonics, ValueList<TonicFit> groups) =>
        (Drills, Rows, Tonics, Groups) = (drills, rows, tonics, groups);

    /// <summary>The drills' titles.</summary>
    public ValueList<string> Drills { get; }

    /// <summary>A row for each singer, in the class's order.</summary>
    public ValueList<ClassRow> Rows { get; }

    /// <summary>All tonics for all the drills together, the best first.</summary>
    public ValueList<TonicFit> Tonics { get; }

    /// <summary>Two groups on two tonics, or none where one tonic is as good.</summary>
    public ValueList<TonicFit> Groups { get; }

    /// <summary>Whether every singer can sing every drill, if need be in another octave and with breaths.</summary>
    public bool IsFitForAll => Rows.All(r => r.Cells.All(c => c.Verdict != ClassVerdict.DoesNotFit));

    /// <summary>The report of a class.</summary>
    /// <param name="drills">The drills, at least one.</param>
    /// <param name="singers">The singers, at least one.</param>
    /// <param name="checks">
    /// The checks; <see cref="ScoreChecks.Standard"/> by default. Where breath is among them, a drill with too long a span still fits if a
    /// breath plan clears it.
    /// </param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ArgumentException">There are no drills or no singers.</exception>
    /// <exception cref="PatternException">A drill cannot be made.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ClassReport Of(ValueList<Drill> drills, ValueList<Singer> singers, ScoreChecks? checks = null, CancellationToken cancellationToken = default)
    {
        var columns = drills.Select(d => new ClassColumn(d, checks ?? ScoreChecks.Standard, cancellationToken)).ToList();
        var scores = columns.ConvertAll(c => c.Written).ToValueList();
        var tonics = TonicRanking.Rank(scores, singers);
        var rows = singers.Select(s => new ClassRow(s, columns.ConvertAll(c => c.Judge(s)).ToValueList())).ToValueList();
        ValueList<TonicFit> groups = [];
        if (!tonics.IsEmpty && !tonics[0].IsFitForAll && TonicRanking.Split(scores, singers) is var (first, second))
        {
            groups = [first, second];
        }

        return new ClassReport(scores.ConvertAll(s => s.Title), rows, tonics, groups);
    }
    /// <summary>How many singers and drills there are, and whether all fits.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Rows.Count} {(Rows.Count == 1 ? "singer" : "singers")}, {Drills.Count} {(Drills.Count == 1 ? "drill" : "drills")}: {(IsFitForAll ? "all fit" : "not all fit")}");
}
