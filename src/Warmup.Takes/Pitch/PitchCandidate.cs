namespace Warmup.Takes;

/// <summary>A pitch that a moment of sound may have.</summary>
/// <param name="Cents">Cents above MIDI note 0, so that A4 at 440 Hz is 6,900.</param>
/// <param name="Strength">How much of the spectrum its harmonics explain, 0 to 1.</param>
internal readonly record struct PitchCandidate(float Cents, float Strength);
