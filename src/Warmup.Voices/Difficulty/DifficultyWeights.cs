using System.Globalization;
using System.Runtime.CompilerServices;

namespace Warmup.Voices;

/// <summary>What each measure of a drill adds to its score, in points.</summary>
/// <remarks>
/// All weights are the project's own setting, to be tuned with singers: no published scale weighs these measures against each other. They
/// are whole numbers of at least 0; a larger measure never lowers the score. Immutable, value equality.
/// </remarks>
public sealed record DifficultyWeights
{
    /// <summary>The largest weight: 10,000 (the project's own bound).</summary>
    internal static int Largest => 10_000;

    /// <summary>The default weights.</summary>
    public static DifficultyWeights Default { get; } = new();

    /// <summary>For each semitone from the lowest to the highest note; 10 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 10,000.</exception>
    public int Span { get; init => field = Checked(value); } = 10;

    /// <summary>For each rank of the hardest leap; 40 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 10,000.</exception>
    public int HardestLeap { get; init => field = Checked(value); } = 40;

    /// <summary>For each rank of the mean interval; 100 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 10,000.</exception>
    public int MeanLeap { get; init => field = Checked(value); } = 100;

    /// <summary>For turns at every note; 150 by default, in proportion for fewer.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 10,000.</exception>
    public int Turns { get; init => field = Checked(value); } = 150;

    /// <summary>For lines that only rise; 20 by default, in proportion for less (common practice: falling lines come easier).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 10,000.</exception>
    public int Rising { get; init => field = Checked(value); } = 20;

    /// <summary>For lines that all start away from the tonic; 60 by default, in proportion for fewer.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 10,000.</exception>
    public int StartsAway { get; init => field = Checked(value); } = 60;

    /// <summary>For leaps that all land far from the drone's partials; 80 by default, in proportion for fewer.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 10,000.</exception>
    public int FarLandings { get; init => field = Checked(value); } = 80;

    /// <summary>For each note a second; 60 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 10,000.</exception>
    public int NotesPerSecond { get; init => field = Checked(value); } = 60;

    /// <summary>The weights in one line.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"span {Span}, hardest leap {HardestLeap}, mean leap {MeanLeap}, turns {Turns}, rising {Rising}, starts away {StartsAway}, far landings {FarLandings}, notes a second {NotesPerSecond}");

    private static int Checked(int weight, [CallerMemberName] string? name = null) => Require.InRange(weight, 0, Largest, name);
}
