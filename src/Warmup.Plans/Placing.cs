namespace Warmup.Plans;

/// <summary>The tonic of the files, and for each singer how many octaves above it they sing.</summary>
internal sealed record Placing(Tonic Tonic, ValueList<int> Octaves)
{
    /// <summary>The MIDI note of the tonic that a singer takes.</summary>
    public int TonicOf(int singer) => Tonic.Midi + (12 * Octaves[singer]);
}
