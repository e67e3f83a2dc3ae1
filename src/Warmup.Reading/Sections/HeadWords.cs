namespace Warmup.Reading;

/// <summary>
/// What this project writes at the head of a section: <c>Adi (4+2+2), S = D3, Mohanam</c>. The tala is missing where a time signature is counted.
/// </summary>
internal sealed record HeadWords(Meter? Meter, NoteName Tonic, double? A4, string ScaleName)
{
    /// <summary>Reads the words; <see langword="null"/> where they are others.</summary>
    public static HeadWords? Of(string words)
    {
        var at = StartOf(words, "S = ");
        at = at < 0 ? StartOf(words, "do = ") : at;
        if (at < 0)
        {
            return null;
        }

        var meter = at == 0 ? null : Metre(words[..(at - 2)]);
        if (at > 0 && meter is null)
        {
            return null;
        }

        var name = words[(words.IndexOf('=', at) + 2)..];
        var end = name.AsSpan().IndexOfAny(',', ' ');
        if (end < 0 || !NoteName.TryParse(name[..end], out var tonic, out _))
        {
            return null;
        }

        // A tonic beside its key says by how much, in brackets: (188.33 Hz, A4 = 442 Hz).
        var rest = name[end..];
        double? a4 = null;
        if (rest[0] == ' ' && rest.IndexOf(" Hz)", StringComparison.Ordinal) is var close and >= 0)
        {
            a4 = ReferenceOf(rest[..close]);
            rest = rest[(close + " Hz)".Length)..];
        }

        return rest.StartsWith(", ", StringComparison.Ordinal) ? new HeadWords(meter, tonic, a4, rest[2..]) : null;
    }

    /// <summary>The scale by its name, and the name without a speed that stands after it.</summary>
    public Scale? FindScale(out string name)
    {
        name = ScaleName;
        if (Catalogue.Default.Find(name)?.Scale is { } scale)
        {
            return scale;
        }

        var comma = name.LastIndexOf(", ", StringComparison.Ordinal);
        if (comma <= 0)
        {
            return null;
        }

        name = name[..comma];
        return Catalogue.Default.Find(name)?.Scale;
    }

    private static double? ReferenceOf(string words)
    {
        const string Reference = "A4 = ";
        var at = words.IndexOf(Reference, StringComparison.Ordinal);
        return at >= 0 && double.TryParse(words.AsSpan(at + Reference.Length), System.Globalization.NumberStyles.Float, System.Globalization.CultureInfo.InvariantCulture, out var a4)
            && a4 >= Warmup.Tonic.LowestA4 && a4 <= Warmup.Tonic.HighestA4 ? a4 : null;
    }

    private static Meter? Metre(string words) => words == "free rhythm" ? Meter.Free : Meter.TryParse(words, out var meter, out _) ? meter : OwnTala(words);

    /// <summary>A tala of the caller's own shows its name and angas as sums; the angas are what remains.</summary>
    private static Meter? OwnTala(string words)
    {
        var open = words.LastIndexOf('(');
        return open > 0 && words[^1] == ')' && Meter.TryParse($"{words[(open + 1)..^1]}/4", out var groups, out _) ? groups : null;
    }

    private static int StartOf(string words, string tonic)
    {
        if (words.StartsWith(tonic, StringComparison.Ordinal))
        {
            return 0;
        }

        var at = words.IndexOf(", " + tonic, StringComparison.Ordinal);
        return at < 0 ? -1 : at + 2;
    }
}
