namespace Warmup.Voices;

/// <summary>What a breath costs at a place: the project's own weights.</summary>
/// <remarks>
/// First the cost: <see cref="AtLineEnd"/> or <see cref="InsideLine"/>. Among plans of equal cost the least sum of harm: one of
/// <see cref="FromRest"/>, <see cref="AfterHeldNote"/>, <see cref="BeforeLeap"/> and <see cref="Elsewhere"/>, the first that holds, and
/// <see cref="HalfLost"/> on top where the note before keeps less than half of its length. Among these the plan that breathes earliest.
/// A line's held last note may be let go earlier than the shortest breath needs, as early as the capacity needs: that too is a breath at
/// a line's end, and it costs the same where a rest follows the note already.
/// </remarks>
public static class BreathCosts
{
    /// <summary>The cost of a breath at the end of a line: 1.</summary>
    public static int AtLineEnd => 1;

    /// <summary>The cost of a breath inside a line: 3.</summary>
    public static int InsideLine => 3;

    /// <summary>The harm where a rest gives at least half of the breath: 0.</summary>
    public static int FromRest => 0;

    /// <summary>The harm after a note that is held, a line's held last note or one at least twice as long as the line's shortest: 1.</summary>
    public static int AfterHeldNote => 1;

    /// <summary>The harm before a leap, a fourth (5 semitones) or more: 2.</summary>
    public static int BeforeLeap => 2;

    /// <summary>The harm at any other place: 3.</summary>
    public static int Elsewhere => 3;

    /// <summary>The further harm where the note before keeps less than half of its length: 2.</summary>
    public static int HalfLost => 2;

    /// <summary>The least interval that counts as a leap, in semitones: 5.</summary>
    public static int Leap => 5;

    /// <summary>The least that a note keeps, in seconds: 1/10.</summary>
    public static Rational LeastSoundSeconds => BreathCheck.LeastSoundSeconds;
}
