using System.Globalization;

namespace Warmup;

/// <summary>An exercise of common practice as a pattern.</summary>
/// <param name="Group">Its group: <c>sarali</c>, <c>janta</c>, <c>melsthayi</c>, <c>mandrasthayi</c>, <c>alankara</c> or <c>choir</c>.</param>
/// <param name="Number">Its number in the group, counted from 1. Books differ in their numbering.</param>
/// <param name="Title">What it is.</param>
/// <param name="Pattern">The pattern.</param>
/// <param name="Source">How sure its lines are: where they come from.</param>
public sealed record Exercise(string Group, int Number, string Title, Pattern Pattern, string Source)
{
    /// <summary>The tala in which it is usually sung; empty where it has none.</summary>
    public string Tala { get; init; } = string.Empty;

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
