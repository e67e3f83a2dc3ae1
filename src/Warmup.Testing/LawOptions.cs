using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using FsCheck;
using Microsoft.FSharp.Core;

namespace Warmup.Testing;

/// <summary>How a law suite runs. Immutable, value equality; generators are equal if they are the same.</summary>
public sealed record LawOptions
{
    private const int MostCases = 100_000;

    /// <summary>How many cases each law must say something about, 1 to 100,000; 200 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int Cases
    {
        get;
        init => field = Require.InRange(value, 1, MostCases, "the number of cases");
    } = 200;

    /// <summary>The seed to begin with, as a report prints it; a new one for each run by default.</summary>
    /// <exception cref="ArgumentException">The text is not a seed.</exception>
    public string? Seed
    {
        get;
        init => field = value is null || TryReadSeed(value, out _)
            ? value
            : throw new ArgumentException($"a seed is two or three whole numbers as a report prints them, not {TextError.Quote(value)}", nameof(Seed));
    }

    /// <summary>The patterns; <see cref="PatternGenerators.Patterns"/> by default.</summary>
    public Gen<Pattern> Patterns
    {
        get;
        init => field = value ?? throw new ArgumentNullException(nameof(Patterns));
    } = PatternGenerators.Patterns;

    /// <summary>The scales; <see cref="ScaleGenerators.Scales"/> by default.</summary>
    public Gen<Scale> Scales
    {
        get;
        init => field = value ?? throw new ArgumentNullException(nameof(Scales));
    } = ScaleGenerators.Scales;

    /// <summary>The number of cases, and the seed if there is one.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Cases} cases{(Seed is null ? string.Empty : $", seed {Seed}")}");

    /// <summary>The seed as FsCheck takes it; <see langword="null"/> for a new one.</summary>
    internal Replay? ToReplay() => Seed is not null && TryReadSeed(Seed, out var replay) ? replay : null;

    private static bool TryReadSeed(string seed, [NotNullWhen(true)] out Replay? replay)
    {
        replay = null;
        var parts = seed.Split(',', StringSplitOptions.TrimEntries);
        var size = FSharpOption<int>.None;
        if (parts.Length is not (2 or 3)
            || !ulong.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out var state)
            || !ulong.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out var gamma)
            || gamma % 2 == 0)
        {
            return false;
        }

        if (parts.Length == 3)
        {
            if (!int.TryParse(parts[2], NumberStyles.None, CultureInfo.InvariantCulture, out var number))
            {
                return false;
            }

            size = FSharpOption<int>.Some(number);
        }

        replay = new Replay(new Rnd(state, gamma), size);
        return true;
    }
}
