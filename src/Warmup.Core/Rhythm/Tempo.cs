namespace Warmup;

/// <summary>The bounds of a tempo, in aksharas a minute.</summary>
public static class Tempo
{
    /// <summary>The slowest tempo: 10 (the project's own setting).</summary>
    public static int Slowest => 10;

    /// <summary>The fastest tempo: 400 (the project's own setting).</summary>
    public static int Fastest => 400;

    /// <summary>The tempo unless another is given: 60, usual for first-speed drills (common practice).</summary>
    public static Rational Default => 60;
}
