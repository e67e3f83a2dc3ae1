using System.Globalization;

namespace Warmup.Testing;

/// <summary>The smallest case that was found to break a law: a <see cref="LawFailure"/> or a <see cref="ScoreLawFailure"/>. Immutable, value equality.</summary>
public abstract record BrokenCase
{
    private protected BrokenCase(string seed, int shrinks) => (Seed, Shrinks) = (seed, shrinks);

    /// <summary>The seed of the case: with it as <see cref="LawOptions.Seed"/> you see the case again.</summary>
    public string Seed { get; }

    /// <summary>How many smaller cases were found on the way to this one.</summary>
    public int Shrinks { get; }

    /// <summary>
    /// The line that gives the case again, for a test of any framework (xunit, NUnit, MSTest): put it where <c>rule</c> and <c>law</c> are the rule and the
    /// law of the report. It throws a <see cref="LawBrokenException"/>, which every framework takes for a failure.
    /// </summary>
    public string ReplayLine => $"LawSuite.{Method}(rule, new LawOptions {{ Cases = 1, Seed = \"{Seed}\" }}, law).ThrowIfBroken();";

    /// <summary>The method of <see cref="LawSuite"/> that runs the case again.</summary>
    private protected abstract string Method { get; }

    /// <summary>The lines that say what the case is made of.</summary>
    private protected abstract string Parts { get; }

    /// <summary>What the case is made of, line by line, then the seed and the line that gives it again.</summary>
    public string Describe() => string.Create(CultureInfo.InvariantCulture, $"{Parts}\n  seed   {Seed} (after {Shrinks} shrinks)\n  replay {ReplayLine}");
}

/// <summary>The smallest patterns and scale that were found to break a law of patterns. Immutable, value equality.</summary>
public sealed record LawFailure : BrokenCase
{
    internal LawFailure(Pattern pattern, Pattern other, Scale scale, string seed, int shrinks)
        : base(seed, shrinks) => (Pattern, Other, Scale) = (pattern, other, scale);

    /// <summary>The pattern p.</summary>
    public Pattern Pattern { get; }

    /// <summary>The pattern q, for laws with two patterns.</summary>
    public Pattern Other { get; }

    /// <summary>The scale.</summary>
    public Scale Scale { get; }

    private protected override string Method => nameof(LawSuite.Check);

    private protected override string Parts => $"  p      {Pattern}\n  q      {Other}\n  scale  {Scale.ToText()}";

    /// <summary>The pattern p and the scale, at most 200 characters.</summary>
    public override string ToString() => OneLine.Of($"{Pattern} in {Scale.ToText()}");
}

/// <summary>The smallest drills that were found to break a law of scores. Immutable, value equality.</summary>
public sealed record ScoreLawFailure : BrokenCase
{
    internal ScoreLawFailure(ValueList<Drill> drills, string seed, int shrinks)
        : base(seed, shrinks) => Drills = drills;

    /// <summary>The drills, one where one is enough.</summary>
    public ValueList<Drill> Drills { get; }

    private protected override string Method => nameof(LawSuite.CheckSung);

    // Each drill as the options of the program warmup name its parts.
    private protected override string Parts => string.Join('\n', Drills.ConvertAll(d => $"  drill  {ToText(d)}"));

    /// <summary>The first drill, at most 200 characters.</summary>
    public override string ToString() => OneLine.Of(ToText(Drills[0]));

    private static string ToText(Drill drill) => string.Create(
        CultureInfo.InvariantCulture,
        $"{drill.Pattern} in {drill.Scale.ToText()}, tala {drill.Meter.Name}, speeds {string.Join(", ", drill.Speeds)}, tempo {drill.Tempo}, tonic {drill.Tonic}{(drill.Delivery == Delivery.Continuous ? string.Empty : ", line by line")}");
}
