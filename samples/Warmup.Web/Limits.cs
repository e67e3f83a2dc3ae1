namespace Warmup.Web;

/// <summary>What the service allows: the project's own settings, which the configuration section <c>Limits</c> changes.</summary>
internal sealed record Limits
{
    /// <summary>The longest text of one query value, in characters; 500 by default.</summary>
    public int LongestText { get; init; } = 500;

    /// <summary>The longest rule or written lines, in characters; 2,000 by default. They are part of addresses.</summary>
    public int LongestLines { get; init; } = 2_000;

    /// <summary>The most notes of a drill; 2,000 by default.</summary>
    public int MostNotes { get; init; } = 2_000;

    /// <summary>The slowest tempo, in aksharas a minute; 30 by default.</summary>
    public int SlowestTempo { get; init; } = 30;

    /// <summary>The fastest tempo, in aksharas a minute; 240 by default.</summary>
    public int FastestTempo { get; init; } = 240;

    /// <summary>The longest a request may take, in seconds; 10 by default.</summary>
    public int RequestSeconds { get; init; } = 10;

    /// <summary>The longest that a rule is searched for in lines that were read, in seconds; 2 by default. Then the lines are shown without one.</summary>
    public int RuleSeconds { get; init; } = 2;

    /// <summary>The longest that listening to a take may take, in seconds; 120 by default.</summary>
    public int TakeSeconds { get; init; } = 120;

    /// <summary>The most singers of a class on the page; 40 by default.</summary>
    public int MostSingers { get; init; } = 40;

    /// <summary>The longest class that the page takes, in characters; 20,000 by default.</summary>
    public int LongestClass { get; init; } = 20_000;

    /// <summary>The most days of a plan; 62 by default.</summary>
    public int MostPlanDays { get; init; } = 62;

    /// <summary>The most scales of a plan; 12 by default.</summary>
    public int MostPlanScales { get; init; } = 12;

    /// <summary>How many drills are made at the same time; 4 by default.</summary>
    public int AtOnce { get; init; } = 4;

    /// <summary>How many requests may wait for their turn; 200 by default.</summary>
    public int Waiting { get; init; } = 200;
}
