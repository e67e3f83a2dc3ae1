namespace Warmup.Voices;

/// <summary>Counts what a score demands, note by note.</summary>
internal sealed class DifficultyWalk
{
    public int Lowest { get; private set; } = int.MaxValue;

    public int Highest { get; private set; } = int.MinValue;

    public int Largest { get; private set; }

    public int Hardest { get; private set; }

    public long Semitones { get; private set; }

    public long Ranks { get; private set; }

    public long Intervals { get; private set; }

    public int Turns { get; private set; }

    public long Chances { get; private set; }

    public long Rises { get; private set; }

    public long Moves { get; private set; }

    public long Away { get; private set; }

    public long Lines { get; private set; }

    public long Far { get; private set; }

    public long LeapCount { get; private set; }

    /// <summary>The sum of the paces, in notes a thousand seconds: whole numbers, since fractions of many tempi would not fit.</summary>
    public long Thousandths { get; private set; }

    public long Paces { get; private set; }

    public void Section(Section section, Drone drone)
    {
        var far = new bool[section.Pitches.Count];
        for (var i = 0; i < far.Length; i++)
        {
            far[i] = IsFar(section.Pitches[i], drone);
        }

        foreach (var line in section.Lines)
        {
            if (line.NoteCount == 1)
            {
                Pace(section, line.Onset, line.Onset + line.Length - line.Answer);
            }
        }

        for (var i = 0; i < section.Notes.Count; i++)
        {
            var note = section.Notes[i];
            var tone = section.Pitches[note.PitchIndex].Tone;

            // Tonics differ in a climb: the span is that of the keyboard, the intervals those of the line.
            Lowest = Math.Min(Lowest, section.Tonic.Midi + tone.Semitones);
            Highest = Math.Max(Highest, section.Tonic.Midi + tone.Semitones);
            if (i == 0 || section.Notes[i - 1].LineIndex != note.LineIndex)
            {
                Lines++;
                Away += tone.Degree == default ? 0 : 1;
                continue;
            }

            Interval(section, i, tone.Semitones, far[note.PitchIndex]);
        }
    }

    private void Interval(Section section, int at, int semitones, bool isFar)
    {
        Pace(section, section.Notes[at - 1].Onset, section.Notes[at].Onset);
        var before = SemitonesAt(section, at - 1);
        var interval = semitones - before;
        var rank = Leaps.Rank(interval);
        Intervals++;
        Semitones += Math.Abs(interval);
        Ranks += rank;
        Largest = Math.Max(Largest, Math.Abs(interval));
        Hardest = Math.Max(Hardest, rank);
        Moves += interval == 0 ? 0 : 1;
        Rises += interval > 0 ? 1 : 0;
        if (Math.Abs(interval) >= Leaps.SmallestLeap)
        {
            LeapCount++;
            Far += isFar ? 1 : 0;
        }

        if (at >= 2 && section.Notes[at - 2].LineIndex == section.Notes[at].LineIndex)
        {
            Chances++;
            Turns += interval * (before - SemitonesAt(section, at - 2)) < 0 ? 1 : 0;
        }
    }

    /// <summary>Counts one step from note to note. The tempo changes only where a line begins.</summary>
    private void Pace(Section section, Rational from, Rational to)
    {
        Paces++;
        Thousandths += (section.TempoAt(from) * 1_000 / (60 * (to - from))).Floor();
    }

    private static int SemitonesAt(Section section, int at) => section.Pitches[section.Notes[at].PitchIndex].Tone.Semitones;

    private static bool IsFar(ScorePitch pitch, Drone drone)
    {
        foreach (var tuned in drone.Strings)
        {
            for (var partial = 1; partial <= Consonance.MostPartials; partial++)
            {
                var distance = pitch.Cents - tuned.Cents - (1200 * Math.Log2(partial));
                if (Math.Abs(distance - (1200 * Math.Round(distance / 1200))) <= Difficulty.FarCents)
                {
                    return false;
                }
            }
        }

        return true;
    }
}
