using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup.Plans;

/// <summary>How a drill went for one singer: the tempo they reached, or that they were absent. Immutable, value equality.</summary>
/// <remarks>The text is <c>Wren=56</c> or <c>Wren=absent</c>.</remarks>
public sealed record SungBy
{
    private const string Absent = "absent";

    /// <summary>Makes an entry for a singer who sang.</summary>
    /// <param name="alias">The singer's alias, 1 to 60 characters without control characters.</param>
    /// <param name="tempo">The tempo reached, in aksharas a minute, 10 to 400; <see langword="null"/> for a singer who was absent.</param>
    /// <exception cref="ArgumentException">A value lies outside its range.</exception>
    public SungBy(string alias, int? tempo)
    {
        ArgumentNullException.ThrowIfNull(alias);
        Alias = Checks.Name(alias, Singer.LongestAlias, "the alias of a singer");
        Tempo = tempo is { } reached ? Require.InRange(reached, Warmup.Tempo.Slowest, Warmup.Tempo.Fastest, "the tempo") : null;
    }

    /// <summary>The singer's alias.</summary>
    public string Alias { get; }

    /// <summary>The tempo reached, in aksharas a minute, 10 to 400; <see langword="null"/> for a singer who was absent.</summary>
    public int? Tempo { get; }

    /// <summary>Whether the singer was absent.</summary>
    public bool IsAbsent => Tempo is null;

    /// <summary>The alias with the tempo or with <c>absent</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Alias}={(Tempo is { } tempo ? tempo.ToString(CultureInfo.InvariantCulture) : Absent)}");

    internal static bool TryRead(ReadOnlySpan<char> text, [NotNullWhen(true)] out SungBy? sung)
    {
        sung = null;
        var split = text.LastIndexOf('=');
        if (split < 0 || !Checks.IsName(text[..split], Singer.LongestAlias))
        {
            return false;
        }

        var value = text[(split + 1)..];
        if (value is Absent)
        {
            sung = new SungBy(text[..split].ToString(), null);
        }
        else if (Checks.TryWhole(value, Warmup.Tempo.Slowest, Warmup.Tempo.Fastest, out var tempo))
        {
            sung = new SungBy(text[..split].ToString(), tempo);
        }

        return sung is not null;
    }
}
