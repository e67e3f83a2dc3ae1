namespace Warmup.Research;

/// <summary>Takes combinators of lengths and silences off lines.</summary>
internal static class SearchLengths
{
    public static IEnumerable<SearchGuess> Of(Line[] lines)
    {
        var rest = lines.Min(l => l.Notes[^1].Rest);
        if (rest >= Rational.One)
        {
            var units = (int)Math.Min(Pattern.MostUnits, rest.Floor());
            yield return One([.. lines.Select(l => l.WithLast(n => n with { Rest = n.Rest - units }))], p => p.Rest(units));
        }

        var lengths = lines.SelectMany(l => l.Notes.ConvertAll(n => n.Length).AsEnumerable()).ToList();
        if (lengths.TrueForAll(l => l == Rational.One))
        {
            yield break;
        }

        foreach (var factor in (Rational[])[lengths.Min(), new Rational(lengths.Min().Numerator), Common(lengths)])
        {
            if (factor != Rational.One && factor.Numerator <= Pattern.MostUnits && factor.Denominator <= Pattern.MostUnits && Divided(lines, factor) is { } divided)
            {
                yield return One(divided, p => p.Stretch((int)factor.Numerator, (int)factor.Denominator));
            }
        }

        foreach (var held in Held(lines))
        {
            yield return held;
        }

        foreach (var rhythm in Rhythms(lines))
        {
            yield return rhythm;
        }
    }

    private static SearchGuess One(Line[] before, Func<Pattern, Pattern> build) => new([before], p => build(p[0]));

    private static IEnumerable<SearchGuess> Held(Line[] lines)
    {
        var more = lines.Min(l => l.Notes[^1].Length - Usual(l));
        if (more >= Rational.One)
        {
            var units = (int)Math.Min(Pattern.MostUnits, more.Floor());
            yield return One([.. lines.Select(l => l.WithLast(n => n with { Length = n.Length - units }))], p => p.Hold(units));
        }

        Line[] plain = [.. lines.Select(l => l.WithLast(n => n with { Length = Usual(l) }))];
        for (var n = 2; n <= 16; n++)
        {
            var units = n;
            if (lines.All(l => (l.Units / units).IsInteger))
            {
                yield return One(plain, p => p.Fill(units));
            }
        }
    }

    private static IEnumerable<SearchGuess> Rhythms(Line[] lines)
    {
        var longest = lines.MaxBy(l => l.Notes.Count)!;
        for (var period = 1; period <= Math.Min(longest.Notes.Count, 16); period++)
        {
            var factors = Enumerable.Range(0, period).Select(i => longest.Notes[i].Length).ToArray();
            if (factors.All(f => f.IsInteger && f.Numerator <= Pattern.MostUnits)
                && lines.All(l => Enumerable.Range(0, l.Notes.Count).All(i => l.Notes[i].Length == factors[i % factors.Length])))
            {
                yield return One(
                    [.. lines.Select(l => new Line(l.Notes.ConvertAll(n => n with { Length = Rational.One })))],
                    p => p.Rhythm(Array.ConvertAll(factors, f => (int)f.Numerator)));
                yield break;
            }
        }
    }

    private static Rational Usual(Line line) => line.Notes.Count == 1 ? Rational.One : line.Notes[^2].Length;

    /// <summary>The lines with all lengths divided; none where a note would become too long or too short.</summary>
    private static Line[]? Divided(Line[] lines, Rational factor) =>
        Array.TrueForAll(lines, l => l.Notes.All(n => LineNote.Fits(n.Length / factor) && LineNote.Fits(n.Rest / factor)))
            ? Array.ConvertAll(lines, l => new Line(l.Notes.ConvertAll(n => n with { Length = n.Length / factor, Rest = n.Rest / factor })))
            : null;

    private static Rational Common(List<Rational> lengths)
    {
        var common = lengths[0];
        foreach (var length in lengths)
        {
            var (a, b) = (common, length);
            while (b != Rational.Zero)
            {
                (a, b) = (b, a - (b * (a / b).Floor()));
            }

            common = a;
        }

        return common;
    }
}
