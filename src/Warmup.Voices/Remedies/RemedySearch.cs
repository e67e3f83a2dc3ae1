namespace Warmup.Voices;

/// <summary>Tries changes of a drill from the smallest up, and keeps those that clear complaints and harm nobody.</summary>
internal sealed class RemedySearch
{
    /// <summary>The most remedies that are offered for a finding (the project's own setting), each of another kind.</summary>
    public const int MostRemedies = 3;

    private static readonly RemedyKind[] Heights = [RemedyKind.Tonic, RemedyKind.Lines, RemedyKind.Scale];

    private readonly RemedyTrial _trial;
    private readonly ScoreChecks _checks;
    private readonly long _mostCost;
    private readonly Dictionary<Kind, List<Remedy>> _ofKind = [];
    private readonly Dictionary<Complaint, List<Remedy>> _ofLine = [];

    /// <summary>Searches.</summary>
    /// <param name="trial">The drill and the singers.</param>
    /// <param name="drill">The drill.</param>
    /// <param name="checks">The checks.</param>
    /// <param name="need">What planned breaths must be enough for; <see langword="null"/> where they are planned already.</param>
    /// <param name="mostCost">How many notes may be looked at.</param>
    public RemedySearch(RemedyTrial trial, Drill drill, ScoreChecks checks, BreathNeed? need, long mostCost)
    {
        (_trial, _checks, _mostCost) = (trial, checks, mostCost);
        foreach (var complaint in trial.Complaints)
        {
            _ofLine[complaint] = [];
            _ofKind[Kind.Of(complaint)] = [];
        }

        var faulty = Faulty().ToList();
        foreach (var remedy in RemedyCandidates.Singles(drill, trial.LineCount, faulty, need))
        {
            if (!Try(remedy, k => _ofKind[k].Count < MostRemedies && _ofKind[k].TrueForAll(r => r.Kind != remedy.Kind) && IsUseful(k, remedy.Kind)))
            {
                return;
            }
        }

        var without = _ofKind.Keys.Where(k => _ofKind[k].Count == 0).ToList();
        foreach (var remedy in RemedyCandidates.Pairs(drill, trial.LineCount, faulty, need, (a, b) => without.Exists(k => IsUseful(k, a) && IsUseful(k, b))))
        {
            if (!Try(remedy, k => _ofKind[k].Count == 0))
            {
                return;
            }
        }
    }

    /// <summary>Whether every change was tried that could have helped.</summary>
    public bool IsComplete { get; private set; } = true;

    /// <summary>
    /// What clears all complaints of this one's code and singer, the smallest change first; where nothing does, what clears this one.
    /// </summary>
    public ValueList<Remedy> For(Complaint complaint) => (_ofKind[Kind.Of(complaint)] is { Count: > 0 } all ? all : _ofLine[complaint]).ToValueList();

    /// <summary>Tries a change where it is wanted.</summary>
    /// <returns>Whether the search goes on.</returns>
    private bool Try(Remedy remedy, Func<Kind, bool> isWanted)
    {
        var wanted = _ofKind.Keys.Where(isWanted).ToHashSet();
        if (wanted.Count == 0)
        {
            return true;
        }

        if (_trial.Cost >= _mostCost)
        {
            IsComplete = false;
            return false;
        }

        if (_trial.Left(remedy) is not { } left)
        {
            return true;
        }

        foreach (var kind in wanted.Except(left.Select(Kind.Of)))
        {
            _ofKind[kind].Add(remedy);
        }

        // A line that is left out, or is another in another scale, is no help for itself as long as others have the same fault.
        foreach (var (complaint, found) in _ofLine)
        {
            if (remedy.Kind is not (RemedyKind.Lines or RemedyKind.Scale or RemedyKind.Two)
                && wanted.Contains(Kind.Of(complaint)) && !left.Contains(complaint) && found.Count < MostRemedies && found.TrueForAll(r => r.Kind != remedy.Kind))
            {
                found.Add(remedy);
            }
        }

        return true;
    }

    /// <summary>The lines of each kind of complaint, and of all of them.</summary>
    private IEnumerable<ISet<int>> Faulty()
    {
        foreach (var group in _trial.Complaints.GroupBy(Kind.Of).Concat(_trial.Complaints.GroupBy(c => new Kind(-1, c.Code))))
        {
            yield return group.Select(c => c.Line).ToHashSet();
        }

        yield return _trial.Complaints.Select(c => c.Line).ToHashSet();
    }

    /// <summary>
    /// Whether a kind of change can clear complaints at all: heights do not depend on time, nor times on the tonic. Nothing is known of the
    /// codes of checks that are not standard ones.
    /// </summary>
    private bool IsUseful(Kind complaints, RemedyKind kind) => complaints.Code switch
    {
        VoiceFindingCode.AboveRange or VoiceFindingCode.BelowRange when !_checks.HasOwn => Heights.Contains(kind),
        VoiceFindingCode.BreathTooLong or VoiceFindingCode.TooFast when !_checks.HasOwn => kind != RemedyKind.Tonic,
        _ => true,
    };

    /// <summary>All complaints of one singer and one code.</summary>
    private readonly record struct Kind(int Singer, string Code)
    {
        public static Kind Of(Complaint complaint) => new(complaint.Singer, complaint.Code);
    }
}
