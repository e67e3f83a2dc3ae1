using System.Globalization;

namespace Warmup;

/// <summary>A pattern with a name and a source: an exercise of common practice, or one of your own.</summary>
/// <remarks>Immutable, safe to share between threads.</remarks>
public sealed class Exercise
{
    private const int LongestText = 200;

    // Read when it is first asked for, and kept: a plan asks each exercise many times.
    private Meter? _meter;

    /// <summary>Makes an exercise.</summary>
    /// <param name="group">Its group, in small letters a to z: <c>alankara</c>.</param>
    /// <param name="number">Its number in the group, at least 1.</param>
    /// <param name="title">What it is; at most 200 characters.</param>
    /// <param name="pattern">The pattern.</param>
    /// <param name="source">Where its lines come from, and how sure they are; at most 200 characters.</param>
    /// <param name="tala">The tala in which it is usually sung; empty, the default, where it has none.</param>
    /// <param name="speed">The speed in which it is usually begun; the first by default.</param>
    /// <exception cref="ArgumentException">A text is not as described, or the number is below 1.</exception>
    public Exercise(string group, int number, string title, Pattern pattern, string source, string tala = "", Speed speed = default)
    {
        ArgumentException.ThrowIfNullOrEmpty(group);
        ArgumentNullException.ThrowIfNull(title);
        ArgumentNullException.ThrowIfNull(pattern);
        ArgumentNullException.ThrowIfNull(source);
        ArgumentNullException.ThrowIfNull(tala);
        Group = group.AsSpan().ContainsAnyExceptInRange('a', 'z')
            ? throw new ArgumentException($"a group must be small letters a to z, not {TextError.Quote(group)}", nameof(group))
            : Require.PlainText(group, LongestText);
        Number = Require.InRange(number, 1, int.MaxValue);
        Title = Require.PlainText(title, LongestText);
        Pattern = pattern;
        Source = Require.PlainText(source, LongestText);
        Tala = Require.PlainText(tala, LongestText);
        Speed = speed;
    }

    /// <summary>
    /// Its group: <c>karvai</c>, <c>sarali</c>, <c>janta</c>, <c>datu</c>, <c>melsthayi</c>, <c>mandrasthayi</c>, <c>alankara</c>, <c>choir</c>, <c>voice</c>
    /// or the name of a family of talas in <see cref="Repertoire"/>.
    /// </summary>
    public string Group { get; }

    /// <summary>Its number in the group, counted from 1. Books differ in their numbering.</summary>
    public int Number { get; }

    /// <summary>What it is.</summary>
    public string Title { get; }

    /// <summary>The pattern.</summary>
    public Pattern Pattern { get; }

    /// <summary>Where its lines come from, and how sure they are.</summary>
    public string Source { get; }

    /// <summary>The tala in which it is usually sung; empty where it has none.</summary>
    public string Tala { get; }

    /// <summary>The speed in which it is usually begun: for what choirs sing the second, two notes a beat.</summary>
    public Speed Speed { get; }

    /// <summary>
    /// The meter of <see cref="Tala"/>, whose text begins with the tala's name and goes on with its signs; Adi where it has none or none that
    /// is known.
    /// </summary>
    public Meter Meter => _meter ??= MeterOf(Tala);

    /// <summary>A name for programs and files: <c>sarali-1</c>.</summary>
    public string Name => string.Create(CultureInfo.InvariantCulture, $"{Group}-{Number}");

    /// <summary>The name and the title.</summary>
    public override string ToString() => $"{Name}: {Title}";

    private static Meter MeterOf(string tala)
    {
        var words = tala.Split(' ');
        return Meter.TryParse(tala, out var meter, out _) || Meter.TryParse(string.Join(' ', words.Take(2)), out meter, out _) || Meter.TryParse(words[0], out meter, out _) ? meter : Meter.Adi;
    }
}
