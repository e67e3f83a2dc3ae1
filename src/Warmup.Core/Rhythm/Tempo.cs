namespace Warmup;

/// <summary>The bounds of a tempo, in aksharas a minute.</summary>
public static class Tempo
{
    /// <summary>The slowest tempo (the project's own bound).</summary>
    public const int Slowest = 10;

    /// <summary>The fastest tempo (the project's own bound).</summary>
    public const int Fastest = 400;

    /// <summary>The tempo unless another is given: 60, usual for first-speed drills (common practice).</summary>
    public static Rational Default => 60;
}
