namespace Warmup.Voices;

/// <summary>A step of how a teacher measures a voice. Immutable, value equality.</summary>
public sealed record MeasuringStep
{
    internal MeasuringStep(string part, string text, string source) => (Part, Text, Source) = (part, text, source);

    /// <summary>The heading it stands under.</summary>
    public string Part { get; }

    /// <summary>What to do; whole sentences.</summary>
    public string Text { get; }

    /// <summary>Where it comes from, and how sure it is.</summary>
    public string Source { get; }

    /// <summary>The step, cut to 200 characters.</summary>
    public override string ToString() => OneLine.Of(Text);
}
