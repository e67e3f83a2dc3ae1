using System.Globalization;

namespace Warmup.Drawing;

/// <summary>What became of a note that was to be sung: in the picture each has a colour, a kind of line and a sign of its own.</summary>
public enum SungMark
{
    /// <summary>It was in tune.</summary>
    InTune,

    /// <summary>It was high.</summary>
    High,

    /// <summary>It was low.</summary>
    Low,

    /// <summary>Another note was sung.</summary>
    AnotherNote,

    /// <summary>What was sung is not sure.</summary>
    Unsure,

    /// <summary>It was left out.</summary>
    LeftOut,
}

/// <summary>A note that was to be sung, and what was sung of it, for the picture of a <see cref="PrintedForm"/>. Immutable, value equality.</summary>
public sealed record SungNote
{
    // The project's own bounds.
    private const int LongestName = 20;
    private const double LongestSeconds = 3600;
    private const double FarthestSemitones = 200;
    private const int MostPoints = 100_000;

    private readonly ValueList<SungPoint> _course;

    /// <summary>Makes a note.</summary>
    /// <param name="name">Its name, at most 20 characters without control characters.</param>
    /// <param name="onset">When it began in seconds, 0 to 3,600.</param>
    /// <param name="seconds">How long it lasted in seconds, at most 3,600; 0 where it was left out.</param>
    /// <param name="semitones">The pitch that was wanted in semitones above any fixed one, -200 to 200.</param>
    /// <param name="mark">What became of it.</param>
    /// <exception cref="ArgumentException">The name is missing, too long or holds control characters; a number lies outside its range, or no mark is meant.</exception>
    public SungNote(string name, double onset, double seconds, double semitones, SungMark mark)
    {
        Name = Require.PlainText(name, LongestName);
        Onset = Require.InRange(onset, 0, LongestSeconds);
        Seconds = Require.InRange(seconds, 0, LongestSeconds);
        Semitones = Require.InRange(semitones, -FarthestSemitones, FarthestSemitones);
        Mark = Require.Defined(mark);
    }

    /// <summary>Its name.</summary>
    public string Name { get; }

    /// <summary>When it began, in seconds.</summary>
    public double Onset { get; }

    /// <summary>How long it lasted, in seconds.</summary>
    public double Seconds { get; }

    /// <summary>The pitch that was wanted, in semitones.</summary>
    public double Semitones { get; }

    /// <summary>What became of it.</summary>
    public SungMark Mark { get; }

    /// <summary>What was sung, at most 100,000 points in the order of their times; none by default.</summary>
    /// <exception cref="ArgumentException">There are too many points, a number lies outside the range that notes have, or a time lies before the one before it.</exception>
    public ValueList<SungPoint> Course
    {
        get => _course;
        init
        {
            Require.InRange(value.Count, 0, MostPoints, "the number of points");
            for (var i = 0; i < value.Count; i++)
            {
                Require.InRange(value[i].Seconds, i == 0 ? 0 : value[i - 1].Seconds, LongestSeconds, nameof(Course));
                Require.InRange(value[i].Semitones, -FarthestSemitones, FarthestSemitones, nameof(Course));
            }

            _course = value;
        }
    }

    /// <summary>The name, when it was sung, and what became of it.</summary>
    public override string ToString() => OneLine.Of(string.Create(CultureInfo.InvariantCulture, $"{Name} at {Onset:0.00} s: {Mark}"));
}

/// <summary>A point of what was sung. Immutable, value equality; <c>default</c> is the pitch 0 at the beginning.</summary>
/// <param name="Seconds">When, in seconds.</param>
/// <param name="Semitones">The pitch in semitones, above the same one as the wanted pitches.</param>
public readonly record struct SungPoint(double Seconds, double Semitones)
{
    /// <summary>The pitch, and when.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Semitones:0.00} at {Seconds:0.00} s");
}
