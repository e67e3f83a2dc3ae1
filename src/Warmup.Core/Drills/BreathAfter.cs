namespace Warmup;

public sealed partial record Section
{
    /// <summary>The breath taken after a note; <see langword="null"/> where none is.</summary>
    /// <param name="note">The index of the note in <see cref="Notes"/>.</param>
    public Breath? BreathAfter(int note)
    {
        var breaths = Breaths.AsSpan();
        var (low, high) = (0, breaths.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = breaths[middle].AfterNote < note ? (middle + 1, high) : (low, middle);
        }

        return low < breaths.Length && breaths[low].AfterNote == note ? breaths[low] : null;
    }
}
