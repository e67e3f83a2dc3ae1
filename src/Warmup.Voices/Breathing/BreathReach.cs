namespace Warmup.Voices;

/// <summary>Whether there is a breath plan at all, where the tempo does not change: in whole steps, and without looking for the cheapest one.</summary>
/// <remarks>
/// The longest span that can be sung on each breath is taken. Whoever begins a span later can end it wherever somebody could who began earlier,
/// so this comes to the end wherever any plan does.
/// </remarks>
internal static class BreathReach
{
    /// <summary>Whether <see cref="BreathPlan.TryMake"/> would find a plan for a section by itself.</summary>
    public static bool IsPossible(Section section, Rational tempo, BreathNeed need)
    {
        var steps = new Steps(section, tempo, need);
        for (var from = 0; from < section.Notes.Count;)
        {
            var to = steps.Farthest(from);
            if (to < from)
            {
                return false;
            }

            from = to + 1;
        }

        return true;
    }

    /// <summary>Notes and breaths in the steps of the finer grid on which planned breaths fall.</summary>
    private readonly ref struct Steps
    {
        private readonly ReadOnlySpan<ScoreNote> _notes;
        private readonly long _length;
        private readonly int _factor;
        private readonly long _grid;
        private readonly long _capacity;
        private readonly long _silence;
        private readonly long _breath;
        private readonly long _leastSound;

        public Steps(Section section, Rational tempo, BreathNeed need)
        {
            var resolution = BreathCandidates.Resolution(section.Resolution);
            var second = tempo * resolution / 60;
            _notes = section.Notes.AsSpan();
            _factor = resolution / section.Resolution;
            _length = (long)section.LengthSteps * _factor;
            _grid = resolution / BreathCandidates.Grid(section.Resolution);
            _capacity = (need.CapacitySeconds * second).Floor();
            _silence = (need.ShortestBreathSeconds * second).Ceiling();
            _breath = _grid * (need.ShortestBreathSeconds * second / _grid).Ceiling();
            _leastSound = (BreathCosts.LeastSoundSeconds * second).Ceiling();
        }

        /// <summary>The last note of the longest span that begins with a note on a full breath; -1 where there is none.</summary>
        public int Farthest(int from)
        {
            var farthest = -1;
            var start = Onset(from);
            for (var to = from; to < _notes.Length && Onset(to) - start <= _capacity; to++)
            {
                var left = _capacity - (Onset(to) - start);
                var (length, until) = ((long)_notes[to].LengthSteps * _factor, Until(to));
                var endsSpan = to + 1 == _notes.Length || until - Onset(to) - length >= _silence;
                var kept = until - Onset(to) - _breath;
                var hasBreath = !endsSpan && kept >= _leastSound && kept <= length && !IsSungAsOne(to);
                if ((endsSpan && length <= left) || (hasBreath && kept <= left) || ((endsSpan || hasBreath) && CanLetGo(to, length, left)))
                {
                    farthest = to;
                }

                if (endsSpan)
                {
                    break;
                }
            }

            return farthest;
        }

        private long Onset(int note) => (long)_notes[note].OnsetSteps * _factor;

        /// <summary>Where the next note begins, or the section ends.</summary>
        private long Until(int note) => note + 1 < _notes.Length ? Onset(note + 1) : _length;

        private bool IsSungAsOne(int note) => _notes[note + 1].LineIndex == _notes[note].LineIndex && _notes[note + 1].PitchIndex == _notes[note].PitchIndex;

        /// <summary>Whether a held note can be let go within the time that is left, and still sounds.</summary>
        private bool CanLetGo(int note, long length, long left)
        {
            var kept = Math.Min(length, left) / _grid * _grid;
            return _notes[note].IsHeld && kept >= _leastSound && kept < length;
        }
    }
}
