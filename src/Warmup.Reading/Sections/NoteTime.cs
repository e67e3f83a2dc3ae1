namespace Warmup.Reading;

/// <summary>When a note begins, how long it is, and how long the silence after it, in aksharas.</summary>
internal readonly record struct NoteTime(Rational Onset, Rational Length, Rational Rest)
{
    // As the core bounds the notes of lines.
    private const int Most = 4_096;

    public bool Fits => Fit(Length) && Length.Sign > 0 && Fit(Rest);

    /// <summary>The same with the silence up to the next note; a note that reaches over it ends there.</summary>
    public NoteTime Before(Rational next) => Onset + Length > next
        ? this with { Length = next - Onset, Rest = default }
        : this with { Rest = next - Onset - Length };

    public NoteTime Bounded() => this with { Length = Rational.Min(Length, Most), Rest = Rational.Min(Rest, Most) };

    private static bool Fit(Rational units) => units.Denominator <= Most && units <= Most;
}
