namespace Warmup;

/// <summary>Five-limit just intonation, and the choices where two ratios are common (common practice).</summary>
internal static class JustTuning
{
    public const string Name = "just";

    /// <summary>The ratios that may be chosen, for messages.</summary>
    public const string Choices = "9/8 or 10/9, 45/32 or 64/45, 5/3 or 27/16, 9/5 or 16/9";

    // By functions, not by other static fields: the order of static fields must not matter.
    public static Tuning Usual { get; } = With([]);

    private static ReadOnlySpan<int> ChosenPlaces => [2, 6, 9, 10];

    /// <summary>Just intonation in which each ratio takes the place of the usual one of its pitch.</summary>
    /// <exception cref="ArgumentException">A ratio is not one of the choices.</exception>
    public static Tuning With(ReadOnlySpan<Rational> ratios)
    {
        Rational[] places = [1, new(16, 15), new(9, 8), new(6, 5), new(5, 4), new(4, 3), new(45, 32), new(3, 2), new(8, 5), new(5, 3), new(9, 5), new(15, 8)];
        Rational[] usual = [.. places];
        foreach (var ratio in ratios)
        {
            var place = PlaceOf(ratio) ?? throw new ArgumentException($"a ratio of just intonation must be one of {Choices}, not {ratio}", nameof(ratios));
            places[place] = ratio;
        }

        var others = new List<string>();
        foreach (var place in ChosenPlaces)
        {
            if (places[place] != usual[place])
            {
                others.Add(places[place].ToString());
            }
        }

        return new Tuning(others.Count == 0 ? Name : $"{Name}: {string.Join(' ', others)}", ValueList.Adopt(places).ConvertAll(Interval.FromRatio));
    }

    /// <summary>The place whose ratio may be chosen so; <see langword="null"/> where it is not a choice.</summary>
    public static int? PlaceOf(Rational ratio) => (ratio.Numerator, ratio.Denominator) switch
    {
        (9, 8) or (10, 9) => 2,
        (45, 32) or (64, 45) => 6,
        (5, 3) or (27, 16) => 9,
        (9, 5) or (16, 9) => 10,
        _ => null,
    };
}
