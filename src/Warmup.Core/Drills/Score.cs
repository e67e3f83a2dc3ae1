namespace Warmup;

/// <summary>A drill or a whole warm-up in time: exact onsets and lengths, tuned pitches, breaths, measures, and a drone.</summary>
/// <param name="Title">The title.</param>
/// <param name="Sections">The sections, sung one after the other; at least one.</param>
/// <param name="Drone">The drone, or <see langword="null"/> for none.</param>
/// <param name="Findings">Remarks from making the score, such as a respelled tonic.</param>
/// <remarks>The core computes every part; exporters only write. Immutable, value equality.</remarks>
public sealed partial record Score(string Title, ValueList<Section> Sections, Drone? Drone, ValueList<Finding> Findings)
{
    /// <summary>The length of the whole score in seconds, exactly.</summary>
    public Rational Seconds
    {
        get
        {
            var sum = Rational.Zero;
            foreach (var section in Sections)
            {
                sum += section.Seconds;
            }

            return sum;
        }
    }

    /// <summary>The number of sung notes.</summary>
    public int NoteCount
    {
        get
        {
            var sum = 0;
            foreach (var section in Sections)
            {
                sum += section.Notes.Count;
            }

            return sum;
        }
    }
}
