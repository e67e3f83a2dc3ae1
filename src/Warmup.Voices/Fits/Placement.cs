namespace Warmup.Voices;

/// <summary>A singer on a tonic in one octave, in whole numbers: thousandths of a cent, the distance from the centre doubled.</summary>
internal readonly record struct Placement(int Tonic, long Above, long Below, long TwiceFromCentre)
{
    public long Excess => Above + Below;

    public bool IsOut => Excess > 0;

    /// <summary>The octave of a pitch class with the least excess, then the nearest centre, then the lowest; none where the drill has no place.</summary>
    public static Placement? Best(PitchSpan reach, Singer singer, int pitchClass)
    {
        Placement? best = null;
        for (var tonic = Warmup.Tonic.LowestMidi + pitchClass; tonic <= Warmup.Tonic.HighestMidi; tonic += 12)
        {
            if (reach.IsPossible(tonic))
            {
                var placement = At(reach, singer, tonic);
                best = best is not { } known || placement.IsBetterThan(known) ? placement : best;
            }
        }

        return best;
    }

    public static Placement At(PitchSpan reach, Singer singer, int tonic)
    {
        var (low, high, at) = (Millicents.Of(singer.Low), Millicents.Of(singer.High), Millicents.Semitone * tonic);
        return new Placement(
            tonic,
            Millicents.Excess(at + reach.Highest - high),
            Millicents.Excess(low - at - reach.Lowest),
            (2 * at) + reach.Lowest + reach.Highest - low - high);
    }

    /// <summary>Strictly better for its singer: less excess, or as much and nearer the centre.</summary>
    public bool IsBetterThan(Placement other) => Excess != other.Excess
        ? Excess < other.Excess
        : Math.Abs(TwiceFromCentre) < Math.Abs(other.TwiceFromCentre);
}

/// <summary>What tonics are ranked by, over the singers added: fewest out, least excess, nearest the centre.</summary>
internal readonly record struct Standing(int Out, long Excess, long TwiceFromCentre, int LowestTonic) : IComparable<Standing>
{
    public static Standing Nobody => new(0, 0, 0, int.MaxValue);

    public Standing With(Placement singer) => new(
        Out + (singer.IsOut ? 1 : 0), Excess + singer.Excess, TwiceFromCentre + Math.Abs(singer.TwiceFromCentre), Math.Min(LowestTonic, singer.Tonic));

    public Standing And(Standing other) =>
        new(Out + other.Out, Excess + other.Excess, TwiceFromCentre + other.TwiceFromCentre, Math.Min(LowestTonic, other.LowestTonic));

    public int CompareTo(Standing other) =>
        (Out, Excess, TwiceFromCentre, LowestTonic).CompareTo((other.Out, other.Excess, other.TwiceFromCentre, other.LowestTonic));
}
