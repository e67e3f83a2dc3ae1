namespace Warmup.Reading;

/// <summary>Where another tempo begins in a section that was read. Immutable, compared by value.</summary>
/// <param name="Onset">Aksharas from the section's beginning.</param>
/// <param name="Tempo">Aksharas a minute, as the file says it.</param>
public readonly record struct ReadTempo(Rational Onset, Rational Tempo);
