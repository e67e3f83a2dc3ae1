using System.Globalization;

namespace Warmup.Voices;

/// <summary>Which limit of the throat binds.</summary>
public enum ThroatLimit
{
    /// <summary>The level's most notes a second.</summary>
    NotesASecond,

    /// <summary>The time a change of pitch takes, and the steady part after it.</summary>
    Leap,
}

/// <summary>How fast notes may follow each other.</summary>
/// <remarks>
/// <para>Two limits, and the slower one binds: the level's most notes a second, and the leap rule: the time of the change of pitch plus a
/// steady part. Both are compared with the time from one onset to the next.</para>
/// <para>The times of the changes are those of Xu and Sun 2002 (J Acoust Soc Am 111:1399-1413): a complete rise of d semitones takes at
/// least 89.6 + 8.7 d ms, a fall 100.4 + 5.8 d ms. They measured speakers, not singers; singers are faster (Sundberg 1979, J Phonetics
/// 7:71-79), so the rule is careful rather than exact. A repeated note needs no change of pitch. The most notes a second and the steady
/// parts are the project's own settings. Immutable, value equality.</para>
/// </remarks>
public sealed record AgilityLimits
{
    private static readonly AgilityLimits Beginner = new();
    private static readonly AgilityLimits Intermediate = new() { NotesASecond = 5, SteadySeconds = new Rational(1, 20) };
    private static readonly AgilityLimits Advanced = new() { NotesASecond = 8, SteadySeconds = new Rational(1, 100) };

    /// <summary>The most notes a second of any level: 9 (the project's own setting, derived from the times of the changes).</summary>
    public static int MostNotesASecond => 9;

    /// <summary>The most notes a second, 1/2 to 9; 3 by default, the beginner's.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public Rational NotesASecond { get; init => field = Require.InRange(value, new Rational(1, 2), MostNotesASecond, nameof(NotesASecond)); } = 3;

    /// <summary>How long a pitch must stay after the change, in seconds, 0 to 1; 0.1 by default, the beginner's.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public Rational SteadySeconds { get; init => field = Require.InRange(value, 0, 1, nameof(SteadySeconds)); } = new(1, 10);

    /// <summary>
    /// The limits of a level: 3, 5 and 8 notes a second, steady parts of 100, 50 and 10 ms (the project's own settings: the upper ends of
    /// 2 to 3, 4 to 5 and 6 to 8).
    /// </summary>
    /// <param name="experience">The level.</param>
    /// <exception cref="ArgumentOutOfRangeException">The level is none of the three.</exception>
    public static AgilityLimits Of(Experience experience) => Require.Defined(experience) switch
    {
        Experience.Beginner => Beginner,
        Experience.Intermediate => Intermediate,
        _ => Advanced,
    };

    /// <summary>The two limits.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{NotesASecond} notes a second, {SteadySeconds} s steady");

    /// <summary>The least time of a complete change of pitch, in seconds: Xu and Sun 2002, speakers.</summary>
    /// <param name="semitones">How far, -127 to 127; negative for a fall; 0 needs no time.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public static Rational ChangeSeconds(int semitones) => Require.InRange(semitones, -127, 127) switch
    {
        0 => Rational.Zero,
        > 0 => new Rational(896 + (87L * semitones), 10_000),
        _ => new Rational(1004 - (58L * semitones), 10_000),
    };

    /// <summary>The least time from one onset to the next, in seconds.</summary>
    /// <param name="semitones">How far the second note lies above the first; negative below.</param>
    /// <param name="binding">Which limit binds; the notes a second where both need the same time.</param>
    /// <exception cref="ArgumentOutOfRangeException">The interval is wider than 127 semitones.</exception>
    public Rational LeastSeconds(int semitones, out ThroatLimit binding)
    {
        var note = Rational.One / NotesASecond;
        var leap = ChangeSeconds(semitones) + SteadySeconds;
        binding = leap > note ? ThroatLimit.Leap : ThroatLimit.NotesASecond;
        return Rational.Max(note, leap);
    }
}
