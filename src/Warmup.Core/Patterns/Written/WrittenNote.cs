namespace Warmup;

/// <summary>A note of a written line: a letter or a step, how long it is held, and how long the silence after it lasts.</summary>
/// <param name="Position">A letter as its number above the middle S (7 for the upper S), or a step.</param>
/// <param name="Units">1 to 64 units.</param>
/// <param name="Rest">0 to 64 units.</param>
internal readonly record struct WrittenNote(int Position, int Units, int Rest);
