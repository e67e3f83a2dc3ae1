namespace Warmup.Voices;

/// <summary>Tries changes of a drill from the smallest up, and keeps those that clear complaints and harm nobody.</summary>
internal sealed class RemedySearch
{
    /// <summary>The most remedies that are offered for a finding (the project's own setting), each of another kind.</summary>
    public const int MostRemedies = 3;

    private static readonly RemedyKind[] Heights = [RemedyKind.Tonic, RemedyKind.Lines, RemedyKind.Scale];

    private readonly TrialScores _scores;
    private readonly RemedyTrial _trial;
    private readonly bool _hasOwnChecks;
    private readonly long _mostCost;
    private readonly List<ComplaintKind> _kinds = [];
    private readonly (ComplaintKind Kind, List<Remedy> Remedies)[] _complaints;

    /// <summary>Searches.</summary>
    /// <param name="scores">The drill.</param>
    /// <param name="trial">The drill with the singers.</param>
    /// <param name="checks">The checks.</param>
    /// <param name="need">What planned breaths must be enough for; <see langword="null"/> where they are planned already.</param>
    /// <param name="mostCost">How many notes may be looked at, those that were looked at before included.</param>
    public RemedySearch(TrialScores scores, RemedyTrial trial, ScoreChecks checks, BreathNeed? need, long mostCost)
    {
        (_scores, _trial, _hasOwnChecks, _mostCost) = (scores, trial, checks.HasOwn, mostCost);
        _complaints = new (ComplaintKind, List<Remedy>)[trial.Complaints.Count];
        for (var number = 0; number < _complaints.Length; number++)
        {
            var complaint = trial.Complaints[number];
            var kind = KindOf(complaint);
            if (kind is null)
            {
                _kinds.Add(kind = new ComplaintKind(complaint.Singer, complaint.Code, _complaints.Length));
            }

            kind.Complaints.Add(number);
            _complaints[number] = (kind, []);
        }

        var candidates = new RemedyCandidates(scores, Faulty().ToList(), need);
        foreach (var remedy in candidates.Singles())
        {
            if (!Try(remedy, k => k.Remedies.Count < MostRemedies && k.Remedies.TrueForAll(r => r.Kind != remedy.Kind) && IsUseful(k.Code, remedy.Kind)))
            {
                return;
            }
        }

        var without = _kinds.FindAll(k => k.Remedies.Count == 0);
        foreach (var remedy in candidates.Pairs((a, b) => without.Exists(k => IsUseful(k.Code, a) && IsUseful(k.Code, b))))
        {
            if (!Try(remedy, k => k.Remedies.Count == 0))
            {
                return;
            }
        }
    }

    /// <summary>Whether every change was tried that could have helped.</summary>
    public bool IsComplete { get; private set; } = true;

    /// <summary>
    /// What clears all complaints of this one's code and singer, the smallest change first; where nothing does, what clears this one. Nothing
    /// where there is no such complaint.
    /// </summary>
    public ValueList<Remedy> For(Complaint complaint)
    {
        for (var number = 0; number < _complaints.Length; number++)
        {
            if (_trial.Complaints[number] == complaint)
            {
                var (kind, own) = _complaints[number];
                return (kind.Remedies.Count > 0 ? kind.Remedies : own).ToValueList();
            }
        }

        return [];
    }

    /// <summary>Tries a change where it is wanted.</summary>
    /// <returns>Whether the search goes on.</returns>
    private bool Try(Remedy remedy, Predicate<ComplaintKind> isWanted)
    {
        var wanted = _kinds.FindAll(isWanted);
        if (wanted.Count == 0)
        {
            return true;
        }

        if (_scores.Cost >= _mostCost)
        {
            IsComplete = false;
            return false;
        }

        if (_trial.Left(remedy, wanted) is not { } left)
        {
            return true;
        }

        foreach (var kind in wanted)
        {
            if (!left.ContainsAny(kind.Complaints))
            {
                kind.Remedies.Add(remedy);
            }
        }

        for (var number = 0; number < _complaints.Length && !remedy.HelpsOnlyWhole; number++)
        {
            var (kind, found) = _complaints[number];
            if (wanted.Contains(kind) && !left.Contains(number) && found.Count < MostRemedies && found.TrueForAll(r => r.Kind != remedy.Kind))
            {
                found.Add(remedy);
            }
        }

        return true;
    }

    private ComplaintKind? KindOf(Complaint complaint) => _kinds.Find(k => k.Singer == complaint.Singer && k.Code == complaint.Code);

    /// <summary>The lines of each kind of complaint, of each code for all singers, and of all of them.</summary>
    private IEnumerable<ISet<int>> Faulty()
    {
        foreach (var group in _trial.Complaints.GroupBy(c => (c.Singer, c.Code)).Concat(_trial.Complaints.GroupBy(c => (Singer: -1, c.Code))))
        {
            yield return group.Select(c => c.Line).ToHashSet();
        }

        yield return _trial.Complaints.Select(c => c.Line).ToHashSet();
    }

    /// <summary>
    /// Whether a kind of change can clear complaints of a code at all: heights do not depend on time, nor times on the tonic. Nothing is known of
    /// the codes of checks that are not standard ones.
    /// </summary>
    private bool IsUseful(string code, RemedyKind kind) => code switch
    {
        VoiceFindingCode.AboveRange or VoiceFindingCode.BelowRange when !_hasOwnChecks => Heights.Contains(kind),
        VoiceFindingCode.BreathTooLong or VoiceFindingCode.TooFast when !_hasOwnChecks => kind != RemedyKind.Tonic,
        _ => true,
    };
}
