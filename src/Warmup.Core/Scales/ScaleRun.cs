namespace Warmup;

/// <content>Runs: walking from pitch to pitch.</content>
public sealed partial record Scale
{
    // The octaves that a run may lie from the middle one: no singer goes further (the project's own setting).
    private const int FarthestRun = 3;

    /// <summary>
    /// A run from one tone to another: rising it takes every note of the ascent between its ends, falling every note of the descent.
    /// </summary>
    /// <param name="from">The first tone.</param>
    /// <param name="to">The last tone. An end that is not in the list is sung too.</param>
    /// <returns>The tones, both ends included; one tone where the ends are equal.</returns>
    /// <remarks>
    /// Beyond one octave the lists repeat. Where a zigzag list holds an end twice, the occurrence nearest the other end counts.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">An end lies more than three octaves from the middle one.</exception>
    /// <exception cref="ArgumentException">The scale ends below the upper tonic and an end lies beyond its lists.</exception>
    public ValueList<ScaleTone> Run(ScaleTone from, ScaleTone to)
    {
        Require.InRange(from.Octave, -FarthestRun, FarthestRun, "the octave of a run's first tone");
        Require.InRange(to.Octave, -FarthestRun, FarthestRun, "the octave of a run's last tone");
        if (from == to)
        {
            return [from];
        }

        var rises = to.Semitones > from.Semitones;
        if (!HasUpperTonic)
        {
            RequireWithin(from, rises);
            RequireWithin(to, rises);
        }

        var between = rises ? _rising.Between(from, to) : _falling.Between(to, from);
        var tones = new ScaleTone[between.Length + 2];
        between.CopyTo(tones, 1);
        if (!rises)
        {
            Array.Reverse(tones);
        }

        tones[0] = from;
        tones[^1] = to;
        return ValueList.Adopt(tones);
    }

    private void RequireWithin(ScaleTone tone, bool rises)
    {
        var tones = rises ? Ascent : Descent;
        var (low, high) = (tones.Min(), tones.Max());
        if (tone.CompareTo(low) < 0 || tone.CompareTo(high) > 0)
        {
            throw new ArgumentException($"{Name} never goes beyond {low} and {high} in its {(rises ? "ascent" : "descent")}, so no run reaches {tone}");
        }
    }
}
