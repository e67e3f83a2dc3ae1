namespace Warmup.Web;

/// <summary>All that the page shows, made from what was chosen.</summary>
/// <param name="State">What was chosen.</param>
/// <param name="Errors">What is wrong with it.</param>
/// <param name="Request">The drill that was asked for; nothing where something is wrong.</param>
/// <param name="Made">The drill with the lines that are sung, and its score; nothing where there is none.</param>
/// <param name="Refusal">Why there is no score.</param>
/// <param name="Singers">The class.</param>
/// <param name="Findings">What does not fit whom.</param>
/// <param name="Help">What does not fit whom, and what would help; nothing where that was not asked for yet.</param>
/// <param name="Tonics">The tonics for the class, the best first.</param>
/// <param name="Windows">The tempi that the class can sing, speed by speed.</param>
/// <param name="ShorterClimb">The farthest shorter climb that the class can sing; nothing where none does or the drill does not climb.</param>
/// <param name="IsQuick">Whether what is searched for was left out.</param>
internal sealed record PageModel(
    PageState State,
    List<QueryError> Errors,
    DrillRequest? Request,
    (Drill Drill, Score Score)? Made,
    Finding? Refusal,
    ValueList<Singer> Singers,
    ValueList<(Singer Singer, Finding Finding)> Findings,
    ValueList<Advice>? Help,
    ValueList<TonicFit> Tonics,
    ValueList<TempoWindow> Windows,
    int? ShorterClimb,
    bool IsQuick)
{
    /// <summary>The scale; nothing where the text names none.</summary>
    public Scale? Scale => Catalogue.Default.TryRead(State["scale"], out var scale, out _) ? scale : null;

    /// <summary>Makes everything.</summary>
    /// <param name="state">What was chosen.</param>
    /// <param name="limits">What is allowed.</param>
    /// <param name="errors">What is wrong already.</param>
    /// <param name="isQuick">Whether the remedies and the tempi, which are searched for, are left out: another request brings them.</param>
    /// <param name="stop">Stops the work.</param>
    public static PageModel Of(PageState state, Limits limits, List<QueryError> errors, bool isQuick, CancellationToken stop)
    {
        var singers = ClassText.Read(state["class"], limits, errors);
        if (state["class"].TrimStart().StartsWith('{') && !singers.IsEmpty)
        {
            state = state.With(("class", ClassText.ToTable(singers)));
        }

        var plain = new PageModel(state, errors, null, null, null, singers, [], null, [], [], null, isQuick);
        if (DrillQuery.Read(state.ToDrill(), limits, errors) is not { } request)
        {
            return plain;
        }

        if (!request.TryMake(limits, stop, out var drill, out var score, out var refusal))
        {
            return plain with { Request = request, Refusal = refusal };
        }

        plain = plain with { Request = request, Made = (drill, score) };
        if (singers.IsEmpty)
        {
            return plain;
        }

        plain = plain with
        {
            Findings = singers.SelectMany(s => score.Check(s).Select(f => (s, f))).ToValueList(),
            Tonics = score.RankTonics(singers),
        };
        if (isQuick)
        {
            return plain;
        }

        // Remedies are those of a drill that stays on its tonic.
        return request.Climb is not null ? plain with { ShorterClimb = plain.Findings.IsEmpty ? null : request.ShorterClimb(drill, singers, stop) } : plain with
        {
            Help = drill.Advise(singers, planned: request.Breaths, cancellationToken: stop),
            Windows = score.NoteCount <= TempoWindow.MostNotes ? TempoWindow.OfSpeeds(drill, singers, cancellationToken: stop) : [],
        };
    }
}
