namespace Warmup.Voices;

/// <summary>Which finding: of which singer, which code, and on which line of the pattern, whatever time and speed it is sung in.</summary>
/// <param name="Singer">The index of the singer.</param>
/// <param name="Code">The finding's code.</param>
/// <param name="Line">The index of the pattern's line; -1 where the finding concerns the whole drill.</param>
internal readonly record struct Complaint(int Singer, string Code, int Line);

/// <summary>Applies changes to one drill and says what the checks find then.</summary>
internal sealed class RemedyTrial
{
    // Amounts are doubles, made of exact fractions: what is the same differs in the last digits only.
    private const double Noise = 1e-9;

    private readonly Drill _drill;
    private readonly Expansion _lines;
    private readonly ValueList<Singer> _singers;
    private readonly ScoreChecks _checks;
    private readonly PlannedBreaths? _planned;
    private readonly CancellationToken _cancellation;
    private readonly Dictionary<Complaint, double> _before = [];

    public RemedyTrial(Drill drill, ValueList<Singer> singers, ScoreChecks checks, BreathNeed? planned, CancellationToken cancellation)
    {
        (_drill, _singers, _checks, _cancellation) = (drill, singers, checks, cancellation);
        _lines = drill.Expand(cancellation);
        _planned = planned is null ? null : new PlannedBreaths(planned);
        var plain = drill.ToScore(_lines, cancellation);
        Written = _planned?.Apply(plain, cancellation) ?? plain;
        var all = Enumerable.Range(1, LineCount).ToValueList();
        for (var s = 0; s < singers.Count; s++)
        {
            foreach (var finding in Written.Check(singers[s], checks))
            {
                var complaint = Of(s, finding, all);
                Findings.Add((complaint, finding));
                _before[complaint] = Math.Max(Excess(finding), _before.GetValueOrDefault(complaint));
            }
        }
    }

    /// <summary>The score as it is.</summary>
    public Score Written { get; }

    /// <summary>What is found as it is, singer after singer.</summary>
    public List<(Complaint Complaint, Finding Finding)> Findings { get; } = [];

    /// <summary>The complaints, each once.</summary>
    public IReadOnlyCollection<Complaint> Complaints => _before.Keys;

    /// <summary>How many lines the drill has.</summary>
    public int LineCount => _lines.Lines.Count;

    /// <summary>The notes that were looked at so far, once for each singer: what the trials have cost.</summary>
    public long Cost { get; private set; }

    /// <summary>
    /// The complaints that are left after a change; <see langword="null"/> where it cannot be made, brings a new complaint, or makes one worse.
    /// </summary>
    public HashSet<Complaint>? Left(Remedy remedy)
    {
        _cancellation.ThrowIfCancellationRequested();
        var changed = remedy.Apply(remedy is OtherScale ? _drill : _drill with { Expansion = _lines });
        if (!changed.TryToScore(out var score, out _, _cancellation))
        {
            Cost += Written.NoteCount;
            return null;
        }

        score = remedy.Apply(score, _cancellation);
        score = _planned?.Apply(score, _cancellation) ?? score;
        var lines = remedy switch
        {
            FewerLines fewer => fewer.Lines,
            TwoRemedies { First: FewerLines fewer } => fewer.Lines,
            TwoRemedies { Second: FewerLines fewer } => fewer.Lines,
            _ => Enumerable.Range(1, changed.Expand(_cancellation).Lines.Count).ToValueList(),
        };
        var left = new HashSet<Complaint>();
        for (var s = 0; s < _singers.Count; s++)
        {
            Cost += score.NoteCount;
            foreach (var check in _checks.All)
            {
                foreach (var finding in check(score, _singers[s]))
                {
                    var complaint = Of(s, finding, lines);
                    if (!_before.TryGetValue(complaint, out var before) || Excess(finding) > before + Noise)
                    {
                        return null;
                    }

                    left.Add(complaint);
                }
            }
        }

        return left;
    }

    /// <summary>The complaint of a finding, by the numbers that the lines have in the drill before the change.</summary>
    private static Complaint Of(int singer, Finding finding, ValueList<int> lines)
    {
        // The lines follow each other in every speed and every time through the drill.
        return new Complaint(singer, finding.Code, finding.Place is { } place ? lines[(place.Line - 1) % lines.Count] - 1 : -1);
    }

    private static double Excess(Finding finding) => Math.Abs((finding.Measured ?? 0) - (finding.Limit ?? 0));
}
