using System.Globalization;

namespace Warmup.Voices;

/// <summary>How a tonic suits singers, each in the octave that suits them best.</summary>
/// <param name="Tonic">The tonic, spelled for the scale, in the lowest octave that a singer takes.</param>
/// <param name="SingersOut">How many singers have a note more than 50 cents outside their comfortable range.</param>
/// <param name="SemitonesOut">The sum of what lies outside, over singers and both ends, in semitones.</param>
/// <param name="CentreDistance">The sum over singers of the distance between the drill's middle and the range's middle, in semitones.</param>
/// <param name="Singers">The singers in the class's order.</param>
/// <param name="LowestPlace">The line that goes lowest, in words.</param>
/// <param name="HighestPlace">The line that goes highest, in words.</param>
public sealed record TonicFit(
    NoteName Tonic,
    int SingersOut,
    Rational SemitonesOut,
    Rational CentreDistance,
    ValueList<SingerFit> Singers,
    string LowestPlace,
    string HighestPlace)
{
    // So many names are listed; the rest are counted.
    private const int MostNames = 6;

    /// <summary>Whether every singer can sing all notes.</summary>
    public bool FitsAll => SingersOut == 0;

    /// <summary>The tonic's kattai, such as <c>5.5</c>.</summary>
    public string KattaiNumber => Warmup.Tonic.FromNote(Tonic).KattaiNumber;

    /// <summary>The tonics the singers take when they sing together, an octave or more apart, from the lowest.</summary>
    public ValueList<NoteName> Octaves => ((IEnumerable<SingerFit>)Singers).Select(s => s.Tonic).Distinct().OrderBy(t => t.Midi).ToValueList();

    /// <summary>Why the tonic stands where it does: who is out, on which line and by how much, how central the drill lies, and who sings in which octave.</summary>
    public string Explain()
    {
        var parts = new List<string> { Out(), Centre() };
        if (Octaves.Count > 1)
        {
            parts.Add(string.Join(", ", Octaves.ConvertAll(o => $"S on {o}: {Names(((IEnumerable<SingerFit>)Singers).Where(s => s.Tonic == o).Select(s => s.Singer.Alias))}")));
        }

        return string.Join("; ", parts);
    }

    /// <summary>The tonic and its explanation.</summary>
    public override string ToString() => $"{Tonic}: {Explain()}";

    internal static string Names(IEnumerable<string> aliases)
    {
        var all = aliases.ToList();
        return all.Count <= MostNames
            ? string.Join(" ", all)
            : string.Create(CultureInfo.InvariantCulture, $"{string.Join(" ", all.Take(MostNames))} and {all.Count - MostNames} more");
    }

    private string Out()
    {
        if (FitsAll)
        {
            return Singers.Count == 1 ? "fits" : "all fit";
        }

        var who = ((IEnumerable<SingerFit>)Singers).Where(s => s.IsOut).Select(s => $"{s.Singer.Alias} {s.HowFar(LowestPlace, HighestPlace)}");
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

/// <summary>How a tonic suits one singer.</summary>
/// <param name="Singer">The singer.</param>
/// <param name="Tonic">The tonic in the octave the singer takes.</param>
/// <param name="SemitonesAbove">How far the drill goes above the comfortable range; 0 up to 50 cents.</param>
/// <param name="SemitonesBelow">How far the drill goes below the comfortable range; 0 up to 50 cents.</param>
/// <param name="CentreDistance">How far the drill's middle lies from the range's middle, in semitones; negative below it.</param>
public sealed record SingerFit(Singer Singer, NoteName Tonic, Rational SemitonesAbove, Rational SemitonesBelow, Rational CentreDistance)
{
    /// <summary>Whether a note lies outside.</summary>
    public bool IsOut => SemitonesAbove.Sign > 0 || SemitonesBelow.Sign > 0;

    internal string HowFar(string lowestPlace, string highestPlace)
    {
        var above = $"{Amount(SemitonesAbove)} above {Singer.High} on {highestPlace}";
        var below = $"{Amount(SemitonesBelow)} below {Singer.Low} on {lowestPlace}";
        return (SemitonesAbove.Sign, SemitonesBelow.Sign) switch { (> 0, > 0) => $"{above} and {below}", (> 0, _) => above, _ => below };
    }

    private static string Amount(Rational semitones) =>
        string.Create(CultureInfo.InvariantCulture, $"{semitones.ToDouble():0.##} {(semitones == Rational.One ? "semitone" : "semitones")}");
}
