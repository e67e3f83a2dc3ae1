namespace Warmup;

/// <summary>How strongly a beat is accented: by what begins on it.</summary>
public enum BeatAccent
{
    /// <summary>Nothing begins on the beat but itself. Every beat of free rhythm is such a beat.</summary>
    None,

    /// <summary>An anga begins on the beat.</summary>
    Anga,

    /// <summary>An avartana begins on the beat, and so does its first anga.</summary>
    Avartana,
}

public sealed partial record Meter
{
    /// <summary>The accent of a beat. Avartanas follow each other without gaps, before beat 0 as after it.</summary>
    /// <param name="beat">The beat, counted from 0, the first beat of an avartana; negative before it, as in a count-in.</param>
    public BeatAccent AccentOf(long beat)
    {
        if (IsFree)
        {
            return BeatAccent.None;
        }

        var within = PlaceOf(beat);
        if (within == 0)
        {
            return BeatAccent.Avartana;
        }

        foreach (var group in Groups)
        {
            within -= group;
            if (within <= 0)
            {
                break;
            }
        }

        return within == 0 ? BeatAccent.Anga : BeatAccent.None;
    }

    /// <summary>What the hand does on a beat; <see langword="null"/> where the meter has no gestures.</summary>
    /// <param name="beat">The beat, counted from 0, the first beat of an avartana.</param>
    public Kriya? KriyaOf(long beat) => Gestures.IsEmpty ? null : Gestures[PlaceOf(beat)];

    /// <summary>The place of a beat in its avartana, from 0; the meter must not be free.</summary>
    private int PlaceOf(long beat)
    {
        var place = (int)(beat % Beats);
        return place < 0 ? place + Beats : place;
    }
}
