namespace Warmup.Voices;

/// <summary>The octave in which the files of singers are written who sing together, each in an octave of their own.</summary>
public static class WrittenTonic
{
    /// <summary>The highest tonic that is sung; who sings lower reads an octave higher, as common practice has it for men's voices.</summary>
    /// <param name="tonics">The tonics that the singers take, as MIDI notes; at least one.</param>
    /// <exception cref="ArgumentException">There are none.</exception>
    public static Tonic Of(IEnumerable<int> tonics)
    {
        ArgumentNullException.ThrowIfNull(tonics);
        var highest = tonics.Select(t => (int?)t).Max() ?? throw new ArgumentException("at least 1 tonic must be sung, not 0", nameof(tonics));
        return Tonic.FromMidi(highest);
    }
}
