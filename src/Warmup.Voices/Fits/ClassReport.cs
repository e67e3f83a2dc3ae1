namespace Warmup.Voices;

/// <summary>Whether a singer can sing a drill.</summary>
public enum ClassVerdict
{
    /// <summary>As it stands.</summary>
    Fits,

    /// <summary>With the breaths of a plan.</summary>
    FitsWithBreaths,

    /// <summary>Not as it stands.</summary>
    DoesNotFit,
}

/// <summary>A singer and a drill.</summary>
/// <param name="Verdict">Whether it fits.</param>
/// <param name="Octaves">The octave in which this singer sings it: 0 as written, -1 an octave lower.</param>
/// <param name="Why">What does not fit, or where the added breaths are; empty where it fits as it stands.</param>
/// <param name="Fix">What would make it fit; empty where it does.</param>
/// <param name="Top">The share of the sung time in the top fifth of the comfortable range or above it, 0 to 1.</param>
/// <param name="Bottom">The share of the sung time in the bottom fifth of the comfortable range or below it, 0 to 1.</param>
public sealed record ClassCell(ClassVerdict Verdict, int Octaves, string Why, string Fix, Rational Top, Rational Bottom);

/// <summary>A singer's row of the table.</summary>
/// <param name="Singer">The singer.</param>
/// <param name="Cells">A cell a drill.</param>
public sealed record ClassRow(Singer Singer, ValueList<ClassCell> Cells);

/// <summary>What fits a class: a table singer by drill, the best common tonic, and two groups where one tonic will not do.</summary>
/// <param name="Drills">The drills' titles.</param>
/// <param name="Rows">A row a singer, in the class's order.</param>
/// <param name="Tonics">All tonics for all the drills together, the best first.</param>
/// <param name="Groups">Two groups on two tonics, or none where one tonic is as good.</param>
/// <remarks>Every singer sings in the octave that suits them best. <see cref="Cautions.All"/> belong to every report.</remarks>
public sealed record ClassReport(ValueList<string> Drills, ValueList<ClassRow> Rows, ValueList<TonicFit> Tonics, ValueList<TonicFit> Groups)
{
    /// <summary>Whether every singer can sing every drill, if need be in another octave and with breaths.</summary>
    public bool FitsAll => ((IEnumerable<ClassRow>)Rows).All(r => ((IEnumerable<ClassCell>)r.Cells).All(c => c.Verdict != ClassVerdict.DoesNotFit));

    /// <summary>The report of a class.</summary>
    /// <param name="drills">The drills, at least one.</param>
    /// <param name="singers">The singers, at least one.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ArgumentException">There are no drills or no singers.</exception>
    /// <exception cref="PatternException">A drill cannot be made.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ClassReport Of(ValueList<Drill> drills, ValueList<Singer> singers, CancellationToken cancellationToken = default)
    {
        var columns = ((IEnumerable<Drill>)drills).Select(d => new ClassColumn(d, cancellationToken)).ToList();
        var scores = columns.ConvertAll(c => c.Written).ToValueList();
        var tonics = TonicRanking.Rank(scores, singers);
        var rows = ((IEnumerable<Singer>)singers).Select(s => new ClassRow(s, columns.ConvertAll(c => c.Judge(s)).ToValueList())).ToValueList();
        ValueList<TonicFit> groups = [];
        if (!tonics.IsEmpty && !tonics[0].FitsAll && TonicRanking.Split(scores, singers) is var (first, second))
        {
            groups = [first, second];
        }

        return new ClassReport(scores.ConvertAll(s => s.Title), rows, tonics, groups);
    }
}
