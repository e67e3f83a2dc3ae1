namespace Warmup.Drawing;

/// <summary>A part of a <see cref="PrintedForm"/>: a heading and numbered steps. Immutable, value equality.</summary>
public sealed record FormPart
{
    // The project's own bounds.
    private const int MostSteps = 40;
    private const int LongestStep = 600;

    /// <summary>Makes a part.</summary>
    /// <param name="heading">The heading, at most 100 characters without control characters.</param>
    /// <param name="steps">The steps, at most 40 of at most 600 characters without control characters.</param>
    /// <exception cref="ArgumentException">A text is missing, too long or holds control characters, or there are too many steps.</exception>
    public FormPart(string heading, ValueList<string> steps)
    {
        Heading = Require.PlainText(heading, PrintedForm.LongestTitle);
        Require.InRange(steps.Count, 0, MostSteps, "the number of steps");
        foreach (var step in steps)
        {
            Require.PlainText(step, LongestStep, nameof(steps));
        }

        Steps = steps;
    }

    /// <summary>The heading.</summary>
    public string Heading { get; }

    /// <summary>The steps.</summary>
    public ValueList<string> Steps { get; }

    /// <summary>The heading and the number of steps.</summary>
    public override string ToString() => OneLine.Of(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Heading}: {Steps.Count} steps"));
}
