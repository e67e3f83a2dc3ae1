namespace Warmup;

public sealed partial record Section
{
    /// <summary>The breath taken after a note; <see langword="null"/> where none is.</summary>
    /// <param name="note">The index of the note in <see cref="Notes"/>.</param>
    public Breath? BreathAfter(int note)
    {
        var breaths = Breaths.AsSpan();
        var (low, high) = (0, breaths.Length);

        // Most drills have a breath in each line, so that the first look finds it, or the one after it.
        if (high == Lines.Count && note >= 0 && note < Notes.Count)
        {
            var guess = Notes.AsSpan()[note].LineIndex;
            (low, high) = breaths[guess].AfterNote < note ? (guess + 1, high)
                : guess > 0 && breaths[guess - 1].AfterNote >= note ? (low, guess)
                : (guess, guess);
        }

        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = breaths[middle].AfterNote < note ? (middle + 1, high) : (low, middle);
        }

        return low < breaths.Length && breaths[low].AfterNote == note ? breaths[low] : null;
    }
}
