using System.Globalization;

namespace Warmup;

/// <summary>An exercise of common practice as a pattern.</summary>
/// <remarks>Immutable, compared by value, safe to share between threads.</remarks>
public sealed record Exercise
{
    private const int LongestText = 200;

    /// <summary>An exercise of the repertoire or of your own.</summary>
    /// <param name="group">Its group: 1 to 200 characters of plain text.</param>
    /// <param name="number">Its number in the group, 1 or more.</param>
    /// <param name="title">What it is: 1 to 200 characters of plain text.</param>
    /// <param name="pattern">The pattern.</param>
    /// <param name="source">Where its lines come from: 1 to 200 characters of plain text.</param>
    /// <param name="tala">The tala in which it is usually sung, at most 200 characters; empty where it has none.</param>
    /// <exception cref="ArgumentException">A text is empty, too long, or holds control characters.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The number is below 1.</exception>
    public Exercise(string group, int number, string title, Pattern pattern, string source, string tala = "")
    {
        Group = Require.Name(group, LongestText);
        Number = Require.InRange(number, 1, int.MaxValue);
        Title = Require.Name(title, LongestText);
        Pattern = Require.NotNull(pattern);
        Source = Require.Name(source, LongestText);
        Tala = Require.PlainText(tala, LongestText);
    }

    /// <summary>Its group: <c>sarali</c>, <c>janta</c>, <c>melsthayi</c>, <c>mandrasthayi</c>, <c>alankara</c> or <c>choir</c>.</summary>
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

    /// <summary>
    /// The meter of <see cref="Tala"/>, whose text begins with the tala's name and goes on with its signs; Adi where it has none or none that
    /// is known.
    /// </summary>
    public Meter Meter
    {
        get
        {
            var words = Tala.Split(' ');
            return Meter.TryParse(string.Join(' ', words.Take(2)), out var meter, out _) || Meter.TryParse(words[0], out meter, out _) ? meter : Meter.Adi;
        }
    }

    /// <summary>A name for programs and files: <c>sarali-1</c>.</summary>
    public string Name => string.Create(CultureInfo.InvariantCulture, $"{Group}-{Number}");

    /// <summary>The name and the title.</summary>
    public override string ToString() => $"{Name}: {Title}";
}
