namespace Warmup;

/// <summary>Five-limit just intonation, and the ratios chosen where two are common (common practice).</summary>
internal readonly record struct JustTuning
{
    public const string Name = "just";

    private JustTuning(Rational r2, Rational m2, Rational d2, Rational n2) => (R2, M2, D2, N2) = (r2, m2, d2, n2);

    /// <summary>The ratios that are taken unless others are chosen.</summary>
    public static JustTuning Usual { get; } = new(new(9, 8), new(45, 32), new(5, 3), new(9, 5));

    private static JustTuning Others { get; } = new(new(10, 9), new(64, 45), new(27, 16), new(16, 9));

    private Rational R2 { get; init; }

    private Rational M2 { get; init; }

    private Rational D2 { get; init; }

    private Rational N2 { get; init; }

    /// <summary>The choice of these ratios, the usual one where none is given.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A ratio is neither of the two.</exception>
    public static JustTuning Of(Rational? r2, Rational? m2, Rational? d2, Rational? n2) => new(
        OneOf(r2, Usual.R2, Others.R2, nameof(r2)),
        OneOf(m2, Usual.M2, Others.M2, nameof(m2)),
        OneOf(d2, Usual.D2, Others.D2, nameof(d2)),
        OneOf(n2, Usual.N2, Others.N2, nameof(n2)));

    /// <summary>Puts a ratio in the place of the other one of the same svara; <see langword="null"/> where it is not such a choice.</summary>
    public JustTuning? With(ReadOnlySpan<char> ratio) => ratio switch
    {
        "9/8" or "10/9" => this with { R2 = ratio[0] == '9' ? Usual.R2 : Others.R2 },
        "45/32" or "64/45" => this with { M2 = ratio[0] == '4' ? Usual.M2 : Others.M2 },
        "5/3" or "27/16" => this with { D2 = ratio[0] == '5' ? Usual.D2 : Others.D2 },
        "9/5" or "16/9" => this with { N2 = ratio[0] == '9' ? Usual.N2 : Others.N2 },
        _ => null,
    };

    /// <summary>The tuning of these ratios.</summary>
    public Tuning ToTuning()
    {
        ReadOnlySpan<Rational> ratios = [1, new(16, 15), R2, new(6, 5), new(5, 4), new(4, 3), M2, new(3, 2), new(8, 5), D2, N2, new(15, 8)];
        return new Tuning(FullName(), ValueList.Create(ratios).ConvertAll(Interval.FromRatio));
    }

    private static Rational OneOf(Rational? chosen, Rational usual, Rational other, string name) => chosen is not { } value || value == usual ? usual
        : value == other ? other
        : throw new ArgumentOutOfRangeException(name, value, $"{name} must be {usual} or {other}, not {value}");

    private string FullName()
    {
        var others = new List<string>();
        foreach (var (chosen, usual) in (ReadOnlySpan<(Rational, Rational)>)[(R2, Usual.R2), (M2, Usual.M2), (D2, Usual.D2), (N2, Usual.N2)])
        {
            if (chosen != usual)
            {
                others.Add(chosen.ToString());
            }
        }

        return others.Count == 0 ? Name : $"{Name}: {string.Join(' ', others)}";
    }
}
