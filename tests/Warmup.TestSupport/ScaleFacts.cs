namespace Warmup.TestSupport;

/// <summary>What tests count in scales and names, from their notes and their text alone.</summary>
public static class ScaleFacts
{
    /// <summary>Steps from the tonic to the upper tonic, or to the last note where there is none; adjacent equal notes count once.</summary>
    public static int StepsUp(this Scale scale) => Steps([.. scale.Ascent]);

    /// <summary>Steps from the tonic to the upper tonic of the descent turned round.</summary>
    public static int StepsDown(this Scale scale) => Steps([.. scale.Descent.Reverse()]);

    /// <summary>The different pitches of both lists, 0 to 11 semitones above the tonic, from low to high.</summary>
    public static ValueList<int> PitchSet(this Scale scale) =>
        scale.Ascent.Concat(scale.Descent).Select(t => ((t.Semitones % 12) + 12) % 12).Distinct().Order().ToValueList();

    /// <summary>A note's name without its octave.</summary>
    public static string PitchClass(this NoteName name) => name.ToString().TrimEnd('-', '0', '1', '2', '3', '4', '5', '6', '7', '8', '9');

    private static int Steps(List<ScaleTone> rising)
    {
        var places = rising.Where((tone, i) => i == 0 || tone != rising[i - 1]).ToList();
        var (tonic, upper) = (places.IndexOf(default), places.LastIndexOf(new ScaleTone(default, 1)));
        return (upper > tonic ? upper : places.Count - 1) - tonic;
    }
}
