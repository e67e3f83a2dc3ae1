using System.Globalization;

namespace Warmup;

/// <summary>The places of just intonation where two ratios are common, and which of them is taken.</summary>
/// <remarks>Common practice. A place is shared: the ratio of R2 also serves G1, that of D2 N1, that of N2 D3. Immutable, value equality.</remarks>
public sealed record JustChoices
{
    private readonly Rational _r2 = new(9, 8);
    private readonly Rational _m2 = new(45, 32);
    private readonly Rational _d2 = new(5, 3);
    private readonly Rational _n2 = new(9, 5);

    /// <summary>R2 and G1: 9/8 (the default) or 10/9.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is neither.</exception>
    public Rational R2
    {
        get => _r2;
        init => _r2 = OneOf(value, new(9, 8), new(10, 9), nameof(R2));
    }

    /// <summary>M2: 45/32 (the default) or 64/45.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is neither.</exception>
    public Rational M2
    {
        get => _m2;
        init => _m2 = OneOf(value, new(45, 32), new(64, 45), nameof(M2));
    }

    /// <summary>D2 and N1: 5/3 (the default) or 27/16.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is neither.</exception>
    public Rational D2
    {
        get => _d2;
        init => _d2 = OneOf(value, new(5, 3), new(27, 16), nameof(D2));
    }

    /// <summary>N2 and D3: 9/5 (the default) or 16/9.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is neither.</exception>
    public Rational N2
    {
        get => _n2;
        init => _n2 = OneOf(value, new(9, 5), new(16, 9), nameof(N2));
    }

    private static Rational OneOf(Rational value, Rational usual, Rational other, string name) => value == usual || value == other
        ? value
        : throw new ArgumentOutOfRangeException(name, value, $"{name} must be {usual} or {other}, not {value}");
}

/// <summary>Five-limit just intonation and its choices.</summary>
internal static class JustTuning
{
    public const string Name = "just";

    // By a function, not by another static field: the order of static fields must not matter.
    public static Tuning Usual { get; } = Of(new JustChoices());

    public static Tuning Of(JustChoices choices)
    {
        ReadOnlySpan<Rational> ratios =
        [
            1, new(16, 15), choices.R2, new(6, 5), new(5, 4), new(4, 3), choices.M2, new(3, 2), new(8, 5), choices.D2, choices.N2, new(15, 8),
        ];
        return new Tuning(NameOf(choices), ValueList.Create(ratios).ConvertAll(Interval.FromRatio));
    }

    /// <summary>Puts a ratio in the place of the usual one of the same pitch; <see langword="null"/> where it is not such a choice.</summary>
    public static JustChoices? Choose(JustChoices choices, ReadOnlySpan<char> ratio) => ratio switch
    {
        "9/8" => choices with { R2 = new(9, 8) },
        "10/9" => choices with { R2 = new(10, 9) },
        "45/32" => choices with { M2 = new(45, 32) },
        "64/45" => choices with { M2 = new(64, 45) },
        "5/3" => choices with { D2 = new(5, 3) },
        "27/16" => choices with { D2 = new(27, 16) },
        "9/5" => choices with { N2 = new(9, 5) },
        "16/9" => choices with { N2 = new(16, 9) },
        _ => null,
    };

    private static string NameOf(JustChoices choices)
    {
        var usual = new JustChoices();
        var others = new List<string>();
        foreach (var (chosen, common) in (ReadOnlySpan<(Rational, Rational)>)
            [(choices.R2, usual.R2), (choices.M2, usual.M2), (choices.D2, usual.D2), (choices.N2, usual.N2)])
        {
            if (chosen != common)
            {
                others.Add(string.Create(CultureInfo.InvariantCulture, $"{chosen}"));
            }
        }

        return others.Count == 0 ? Name : $"{Name}: {string.Join(' ', others)}";
    }
}
