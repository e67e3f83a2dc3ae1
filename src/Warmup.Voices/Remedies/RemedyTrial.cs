namespace Warmup.Voices;

/// <summary>Applies changes to one drill and says what the checks find then.</summary>
internal sealed class RemedyTrial
{
    private readonly TrialScores _scores;
    private readonly ValueList<Singer> _singers;
    private readonly ScoreChecks _checks;
    private readonly (bool Range, bool Breath, bool Agility, bool Own) _has;
    private readonly BreathNeed? _planned;
    private readonly Complaints _complaints = new();

    // The singers of each level: what is too quick, and what silence is long enough, goes by level.
    private readonly List<(Experience Level, Rational ShortestBreath, Rational LeastCapacity, List<(int Singer, Rational Capacity)> Singers)> _levels;

    // What is left after a change of the heights alone, and after one of the times alone; nothing where it does harm.
    private readonly Dictionary<(OtherTonic?, FewerLines?), ComplaintSet?> _heights = [];
    private readonly Dictionary<Remedy, TimeSets?> _times = [];
    private readonly Remedy _none;

    /// <summary>Checks the drill as it is.</summary>
    /// <param name="scores">The drill.</param>
    /// <param name="singers">Everyone who sings it together.</param>
    /// <param name="checks">The checks.</param>
    /// <param name="planned">What breaths have been planned for; <see langword="null"/> where they have not.</param>
    public RemedyTrial(TrialScores scores, ValueList<Singer> singers, ScoreChecks checks, BreathNeed? planned)
    {
        (_scores, _singers, _checks, _planned) = (scores, singers, checks, planned);
        _has = (checks.Has(ScoreChecks.Range), checks.Has(ScoreChecks.Breath), checks.Has(ScoreChecks.Agility), checks.HasOwn);
        _none = new OtherTempo(scores.Drill.Tempo);
        _levels = [.. singers.Select((s, i) => (Singer: s, Index: i)).GroupBy(s => s.Singer.Experience).Select(g =>
            (g.Key, g.First().Singer.ShortestBreathSeconds, g.Select(s => s.Singer.BreathSeconds).Aggregate(Rational.Min), g.Select(s => (s.Index, s.Singer.BreathSeconds)).ToList()))];
        Written = Planned(scores.Written);
        var all = Enumerable.Range(1, scores.LineCount).ToValueList();
        for (var s = 0; s < singers.Count; s++)
        {
            foreach (var finding in Written.Check(singers[s], checks))
            {
                var complaint = Of(s, finding, all);
                Findings.Add((complaint, finding));
                _complaints.Add(complaint, Excess(finding));
            }
        }
    }

    /// <summary>The score as it is.</summary>
    public Score Written { get; }

    /// <summary>What is found as it is, singer after singer.</summary>
    public List<(Complaint Complaint, Finding Finding)> Findings { get; } = [];

    /// <summary>The complaints, each once, by their numbers.</summary>
    public IReadOnlyList<Complaint> Complaints => _complaints.All;

    /// <summary>
    /// The complaints that are left after a change; <see langword="null"/> where it cannot be made, brings a new complaint, makes one worse, or
    /// clears nothing that is wanted.
    /// </summary>
    /// <param name="remedy">The change.</param>
    /// <param name="wanted">The complaints that the change is to clear, each kind as a whole or in part.</param>
    public ComplaintSet? Left(Remedy remedy, List<ComplaintKind> wanted)
    {
        _scores.Cancellation.ThrowIfCancellationRequested();
        _scores.Cost++;
        var parts = RemedyParts.Of(remedy);
        var left = new ComplaintSet(Complaints.Count);

        // What costs least comes first: most changes fail at the first look.
        return left.AddAll(HeightsAfter(parts)) && IsStillWanted(remedy, left, wanted, VoiceFindingCode.TooFast, VoiceFindingCode.BreathTooLong)
            && TimesAfter(parts) is { } times
            && left.AddAll(times.TooFast) && IsStillWanted(remedy, left, wanted, VoiceFindingCode.BreathTooLong)
            && left.AddAll(times.TooLong) && (!_has.Own || KeepOwn(remedy, left))
                ? left
                : null;
    }

    /// <summary>Whether the change can clear something that is wanted, given what is left of all codes but those that were not looked at yet.</summary>
    private bool IsStillWanted(Remedy remedy, ComplaintSet left, List<ComplaintKind> wanted, params ReadOnlySpan<string> open)
    {
        if (_has.Own)
        {
            return true;
        }

        foreach (var kind in wanted)
        {
            if (open.Contains(kind.Code) || (remedy.HelpsOnlyWhole ? !left.ContainsAny(kind.Complaints) : !left.ContainsAll(kind.Complaints)))
            {
                return true;
            }
        }

        return false;
    }

    private ComplaintSet? HeightsAfter(RemedyParts parts)
    {
        if (parts.Scale is { } scale)
        {
            return _scores.In(scale) is { } known ? KeepHeights(known.Heights, l => l) : null;
        }

        if (!_heights.TryGetValue((parts.Tonic, parts.Lines), out var left))
        {
            left = _heights[(parts.Tonic, parts.Lines)] = HeightsAfter(parts.Tonic, parts.Lines);
        }

        return left;
    }

    private ComplaintSet? HeightsAfter(OtherTonic? tonic, FewerLines? lines)
    {
        if (_scores.HeightsOn(tonic) is { } heights)
        {
            return KeepHeights(lines is null ? heights : heights.Of(lines.Lines), l => LineBefore(l, lines));
        }

        // What leaves MIDI's range may be among the lines that are left out.
        return lines is not null && tonic is not null && _scores.HeightsOf(tonic.Apply(lines.Apply(_scores.Drill))) is { } rest
            ? KeepHeights(rest, l => LineBefore(l, lines))
            : null;
    }

    private ComplaintSet? KeepHeights(LineHeights heights, Func<int, int> lineBefore)
    {
        var left = new ComplaintSet(Complaints.Count);
        for (var s = 0; s < _singers.Count && _has.Range; s++)
        {
            for (var l = 0; l < heights.Count; l++)
            {
                if ((heights.Above(l, _singers[s].High) is { } above && !_complaints.Keep(new(s, VoiceFindingCode.AboveRange, lineBefore(l)), above, left))
                    || (heights.Below(l, _singers[s].Low) is { } below && !_complaints.Keep(new(s, VoiceFindingCode.BelowRange, lineBefore(l)), below, left)))
                {
                    return null;
                }
            }
        }

        return left;
    }

    private TimeSets? TimesAfter(RemedyParts parts)
    {
        if (parts.Scale is { } scale)
        {
            return _scores.In(scale) is { } known ? new TimeSets(this, known.Times, parts) : null;
        }

        // A change of time by itself is met again beside each tonic.
        var key = parts.HasNoTime ? _none : parts.OnlyTime;
        if (key is not null && _times.TryGetValue(key, out var times))
        {
            return times;
        }

        times = _scores.TimesAfter(parts) is { } made ? new TimeSets(this, made, parts) : null;
        return key is null ? times : _times[key] = times;
    }

    private ComplaintSet? KeepTooFast(TrialTimes times, RemedyParts parts)
    {
        _scores.Cost += times.Cost;
        var left = new ComplaintSet(Complaints.Count);
        foreach (var level in _has.Agility ? _levels : [])
        {
            foreach (var fault in times.TooFast(level.Level))
            {
                foreach (var (singer, _) in level.Singers)
                {
                    if (!_complaints.Keep(new(singer, VoiceFindingCode.TooFast, LineBefore(fault.Line, parts.Lines)), fault.Excess, left))
                    {
                        return null;
                    }
                }
            }
        }

        return left;
    }

    private ComplaintSet? KeepTooLong(TrialTimes times, RemedyParts parts)
    {
        var left = new ComplaintSet(Complaints.Count);
        if (!_has.Breath)
        {
            return left;
        }

        _scores.Cost += times.Cost;
        var spans = times.Spans;
        if ((_planned ?? parts.Breaths?.Need) is { } need)
        {
            // A plan that is enough for everyone leaves no span too long, wherever its breaths are.
            if (_levels.TrueForAll(l => l.LeastCapacity >= need.CapacitySeconds && l.ShortestBreath <= need.ShortestBreathSeconds))
            {
                if (times.CanBreathe(need))
                {
                    return left;
                }
            }
            else
            {
                spans = times.SpansWithBreaths(need, _scores.Cancellation);
            }
        }

        foreach (var level in _levels)
        {
            foreach (var (line, seconds) in spans.TooLong(level.ShortestBreath, level.LeastCapacity))
            {
                foreach (var (singer, capacity) in level.Singers)
                {
                    if (seconds > capacity
                        && !_complaints.Keep(new(singer, VoiceFindingCode.BreathTooLong, LineBefore(line, parts.Lines)), seconds.ToDouble() - capacity.ToDouble(), left))
                    {
                        return null;
                    }
                }
            }
        }

        return left;
    }

    /// <summary>Whether the checks beyond the standard ones, which see the score itself, find nothing new and nothing worse.</summary>
    private bool KeepOwn(Remedy remedy, ComplaintSet left)
    {
        var changed = remedy.Apply(remedy is OtherScale ? _scores.Given : _scores.Drill);
        if (!changed.TryToScore(out var score, out _, _scores.Cancellation))
        {
            return false;
        }

        score = Planned(remedy.Apply(score, _scores.Cancellation));
        var lines = RemedyParts.Of(remedy).Lines is { } fewer ? fewer.Lines : Enumerable.Range(1, changed.Expand(_scores.Cancellation).Lines.Count).ToValueList();
        for (var s = 0; s < _singers.Count; s++)
        {
            _scores.Cost += score.NoteCount;
            foreach (var finding in _checks.FindBeyondStandard(score, _singers[s]))
            {
                if (!_complaints.Keep(Of(s, finding, lines), Excess(finding), left))
                {
                    return false;
                }
            }
        }

        return true;
    }

    private Score Planned(Score score) => _planned is null ? score : new PlannedBreaths(_planned).Apply(score, _scores.Cancellation);

    /// <summary>The index that a line has in the drill before the change.</summary>
    private static int LineBefore(int line, FewerLines? lines) => lines is null ? line : lines.Lines[line] - 1;

    /// <summary>The complaint of a finding, by the numbers that the lines have in the drill before the change.</summary>
    private static Complaint Of(int singer, Finding finding, ValueList<int> lines)
    {
        // The lines follow each other in every speed and every time through the drill.
        return new Complaint(singer, finding.Code, finding.Place is { } place ? lines[(place.Line - 1) % lines.Count] - 1 : -1);
    }

    private static double Excess(Finding finding) => Math.Abs((finding.Measured ?? 0) - (finding.Limit ?? 0));

    /// <summary>What is left after a change of time, by code; each looked for when it is asked for.</summary>
    private sealed class TimeSets(RemedyTrial trial, TrialTimes times, RemedyParts parts)
    {
        private readonly Lazy<ComplaintSet?> _tooFast = new(() => trial.KeepTooFast(times, parts));
        private readonly Lazy<ComplaintSet?> _tooLong = new(() => trial.KeepTooLong(times, parts));

        public ComplaintSet? TooFast => _tooFast.Value;

        public ComplaintSet? TooLong => _tooLong.Value;
    }
}
