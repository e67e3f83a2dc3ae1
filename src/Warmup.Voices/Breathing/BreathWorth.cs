namespace Warmup.Voices;

/// <summary>What breaths after the notes of a score cost, and the breaths themselves.</summary>
internal sealed class BreathWorth
{
    private readonly BreathPlaces _places;
    private readonly int[][] _shortestNotes;

    public BreathWorth(BreathPlaces places)
    {
        _places = places;
        _shortestNotes = [.. places.Sections.Select(s => ShortestNotes(s.Section))];
    }

    /// <summary>The cost and the harm of a breath.</summary>
    /// <param name="after">The number of the note before it.</param>
    /// <param name="begin">The step at which it begins.</param>
    /// <param name="isLetGo">Whether a held note is let go for it.</param>
    public (int Cost, int Harm) Of(int after, long begin, bool isLetGo)
    {
        ref readonly var place = ref _places[after];
        var section = _places.SectionOf(place).Section;
        var (note, isLast) = (section.Notes[place.Note], place.Note + 1 == section.Notes.Count);
        var next = isLast ? default : section.Notes[place.Note + 1];
        var length = _places.SectionOf(place).Until(place.Note) - begin;
        var rest = begin + length - place.End;
        var shortest = isLetGo ? note.LengthSteps : _shortestNotes[place.Section][note.LineIndex];
        var harm = rest * 2 >= length ? BreathCosts.FromRest
            : note.IsHeld || note.LengthSteps >= 2L * shortest ? BreathCosts.AfterHeldNote
            : !isLast && Math.Abs(section.PitchOf(next).Midi - section.PitchOf(note).Midi) >= BreathCosts.Leap ? BreathCosts.BeforeLeap
            : BreathCosts.Elsewhere;
        harm += (begin - place.Start) * 2 < place.End - place.Start ? BreathCosts.HalfLost : 0;
        return (SungTime.IsInside(section, place.Note) ? BreathCosts.InsideLine : BreathCosts.AtLineEnd, harm);
    }

    /// <summary>The breath itself.</summary>
    /// <param name="score">The score of which these are the places.</param>
    /// <param name="after">The number of the note before it.</param>
    /// <param name="begin">The step at which it begins.</param>
    /// <param name="isLetGo">Whether a held note is let go for it.</param>
    public PlannedBreath Breath(Score score, int after, long begin, bool isLetGo)
    {
        ref readonly var place = ref _places[after];
        var sung = _places.SectionOf(place);
        var section = sung.Section;
        var note = section.Notes[place.Note];
        var (cost, harm) = Of(after, begin, isLetGo);
        return new PlannedBreath(
            score.PlaceOf(place.Section, note.LineIndex, new Rational(begin, sung.Resolution)),
            place.Note,
            place.Note - section.Lines[note.LineIndex].FirstNote + 1,
            new Rational(sung.Until(place.Note) - begin, sung.Resolution),
            !SungTime.IsInside(section, place.Note),
            cost,
            harm)
        { IsEarlyRelease = isLetGo };
    }

    /// <summary>The shortest note of each line, in grid steps.</summary>
    private static int[] ShortestNotes(Section section)
    {
        var shortest = new int[section.Lines.Count];
        Array.Fill(shortest, int.MaxValue);
        foreach (var note in section.Notes)
        {
            shortest[note.LineIndex] = Math.Min(shortest[note.LineIndex], note.LengthSteps);
        }

        return shortest;
    }
}
