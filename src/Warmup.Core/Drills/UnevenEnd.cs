using System.Globalization;

namespace Warmup;

public sealed partial record Section
{
    /// <summary>
    /// What is to be said where the lines end inside the avartana: how far it is filled, and what makes the end fall on the first beat.
    /// <see langword="null"/> where it does, and in free rhythm.
    /// </summary>
    /// <param name="exercise">The exercise that the section sings; the finding names it and its own tala. <see langword="null"/>, the default, for none.</param>
    /// <remarks>The score of a drill in several speeds has the finding by itself; one in a single speed may run on on purpose.</remarks>
    public Finding? UnevenEnd(Exercise? exercise = null)
    {
        if (IsLastAvartanaFull)
        {
            return null;
        }

        var isForeign = exercise is not null && exercise.Meter != Meter;
        var words = Meter.Gestures.IsEmpty ? ("bar", "beats") : ("avartana", "aksharas");
        var where = string.Create(CultureInfo.InvariantCulture, $"the lines end inside the {words.Item1} of {Meter}, after {LastFilled} of its {Meter.Beats} {words.Item2}");
        var fixes = new List<string>();
        if (isForeign)
        {
            fixes.Add($"take its own {(exercise!.Meter.Gestures.IsEmpty ? "meter" : "tala")}, {exercise.Meter.Name}");
        }

        if (RoundsToFirstBeat is { } rounds)
        {
            fixes.Add($"sing all of it {English.Times(rounds)}");
        }

        fixes.Add($"fill each line up to the {words.Item1}");
        return new Finding(
            FindingCode.EndsInsideAvartana,
            Severity.Note,
            isForeign ? $"{exercise!.Name} is written for {exercise.Meter}: {where}" : where,
            string.Join(", or ", fixes))
        {
            Measured = LastFilled.ToDouble(),
            Limit = Meter.Beats,
        };
    }
}
