using System.Globalization;

namespace Warmup.Voices;

/// <summary>How a tonic suits singers, each in the octave that suits them best. Immutable, value equality.</summary>
public sealed record TonicFit
{
    internal TonicFit(
        NoteName tonic,
        int singersOut,
        Rational semitonesOut,
        Rational centreDistance,
        ValueList<SingerFit> singers,
        ScorePlace lowestPlace,
        ScorePlace highestPlace)
    {
        Tonic = tonic;
        SingersOut = singersOut;
        SemitonesOut = semitonesOut;
        CentreDistance = centreDistance;
        Singers = singers;
        LowestPlace = lowestPlace;
        HighestPlace = highestPlace;
    }

    // The most names that are listed; the rest are counted.
    private const int MostNames = 6;

    /// <summary>The tonic, spelled for the scale, in the lowest octave that a singer takes.</summary>
    public NoteName Tonic { get; }

    /// <summary>How many singers have a note more than 50 cents outside their comfortable range.</summary>
    public int SingersOut { get; }

    /// <summary>The sum of what lies outside, over singers and both ends, in semitones.</summary>
    public Rational SemitonesOut { get; }

    /// <summary>The sum over singers of the distance between the drill's middle and the range's middle, in semitones.</summary>
    public Rational CentreDistance { get; }

    /// <summary>The singers in the class's order.</summary>
    public ValueList<SingerFit> Singers { get; }

    /// <summary>The first note that goes lowest; of several scores, the sections are counted through all of them.</summary>
    public ScorePlace LowestPlace { get; }

    /// <summary>The first note that goes highest; of several scores, the sections are counted through all of them.</summary>
    public ScorePlace HighestPlace { get; }

    /// <summary>Whether every singer can sing all notes.</summary>
    public bool IsFitForAll => SingersOut == 0;

    /// <summary>The tonic's kattai, such as <c>5.5</c>.</summary>
    public string KattaiNumber => Warmup.Tonic.FromNote(Tonic).KattaiNumber;

    /// <summary>The tonics the singers take when they sing together, an octave or more apart, from the lowest.</summary>
    public ValueList<NoteName> Octaves => Singers.Select(s => s.Tonic).Distinct().OrderBy(t => t.Midi).ToValueList();

    /// <summary>Why the tonic has its rank: who is out, on which line and by how much, how central the drill lies, and who sings in which octave.</summary>
    /// <param name="tonic">What the tonic is called: S by default, do in solfege.</param>
    public string Explain(string tonic = "S")
    {
        ArgumentNullException.ThrowIfNull(tonic);
        var parts = new List<string> { Out(), Centre() };
        if (Octaves.Count > 1)
        {
            parts.Add(string.Join(", ", Octaves.ConvertAll(o => $"{tonic} on {o}: {Names(Singers.Where(s => s.Tonic == o).Select(s => s.Singer.Alias))}")));
        }

        return string.Join("; ", parts);
    }

    /// <summary>The tonic and its explanation, cut to 200 characters; <see cref="Explain"/> gives all of it.</summary>
    public override string ToString() => OneLine.Of($"{Tonic}: {Explain()}");

    internal static string Names(IEnumerable<string> aliases)
    {
        var all = aliases.ToList();
        return all.Count <= MostNames
            ? string.Join(" ", all)
            : string.Create(CultureInfo.InvariantCulture, $"{string.Join(" ", all.Take(MostNames))} and {all.Count - MostNames} more");
    }

    private string Out()
    {
        if (IsFitForAll)
        {
            return Singers.Count == 1 ? "fits" : "all fit";
        }

        var who = Singers.Where(s => s.IsOut).Select(s => $"{s.Singer.Alias} {s.HowFar(LowestPlace, HighestPlace)}");
        var list = who.Take(MostNames).ToList();
        var more = SingersOut > list.Count ? string.Create(CultureInfo.InvariantCulture, $", and {SingersOut - list.Count} more") : string.Empty;
        return string.Create(CultureInfo.InvariantCulture, $"{SingersOut} of {Singers.Count} out: {string.Join(", ", list)}{more}");
    }

    private string Centre()
    {
        var mean = (CentreDistance / Singers.Count).ToDouble();
        return string.Create(
            CultureInfo.InvariantCulture,
            $"the drill's middle lies {mean:0.0} semitones from the middle of the range{(Singers.Count == 1 ? string.Empty : " on average")}");
    }
}

/// <summary>How a tonic suits one singer. Immutable, value equality.</summary>
public sealed record SingerFit
{
    internal SingerFit(Singer singer, NoteName tonic, Rational semitonesAbove, Rational semitonesBelow, Rational centreDistance) =>
        (Singer, Tonic, SemitonesAbove, SemitonesBelow, CentreDistance) = (singer, tonic, semitonesAbove, semitonesBelow, centreDistance);

    /// <summary>The singer.</summary>
    public Singer Singer { get; }

    /// <summary>The tonic in the octave the singer takes.</summary>
    public NoteName Tonic { get; }

    /// <summary>How far the drill goes above the comfortable range; 0 up to 50 cents.</summary>
    public Rational SemitonesAbove { get; }

    /// <summary>How far the drill goes below the comfortable range; 0 up to 50 cents.</summary>
    public Rational SemitonesBelow { get; }

    /// <summary>How far the drill's middle lies from the range's middle, in semitones; negative below it.</summary>
    public Rational CentreDistance { get; }

    /// <summary>Whether a note lies outside.</summary>
    public bool IsOut => SemitonesAbove.Sign > 0 || SemitonesBelow.Sign > 0;

    /// <summary>The singer, the tonic and how far outside the drill goes.</summary>
    public override string ToString() => OneLine.Of(string.Create(
        CultureInfo.InvariantCulture, $"{Singer.Alias} on {Tonic}: {SemitonesAbove.ToDouble():0.##} semitones above, {SemitonesBelow.ToDouble():0.##} below"));

    internal string HowFar(ScorePlace lowestPlace, ScorePlace highestPlace)
    {
        var above = $"{Amount(SemitonesAbove)} above {Singer.High} on {highestPlace}";
        var below = $"{Amount(SemitonesBelow)} below {Singer.Low} on {lowestPlace}";
        return (SemitonesAbove.Sign, SemitonesBelow.Sign) switch { (> 0, > 0) => $"{above} and {below}", (> 0, _) => above, _ => below };
    }

    private static string Amount(Rational semitones) =>
        string.Create(CultureInfo.InvariantCulture, $"{semitones.ToDouble():0.##} {(semitones == Rational.One ? "semitone" : "semitones")}");
}
