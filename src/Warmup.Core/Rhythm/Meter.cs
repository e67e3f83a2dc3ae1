using System.Globalization;

namespace Warmup;

/// <summary>How the beats are counted: free, or in avartanas (bars) of one or more angas (groups).</summary>
/// <remarks>The beat is an akshara; in files it is a quarter note unless the meter names another. Immutable, value equality.</remarks>
public sealed record Meter
{
    /// <summary>The most beats of an avartana (the project's own bound; the longest of the 35 talas has 29).</summary>
    public const int MostBeats = 64;

    private Meter(string name, ValueList<int> groups, int beatType)
    {
        Name = name;
        Groups = groups;
        BeatType = beatType;
        foreach (var group in groups)
        {
            Beats += Require.InRange(group, 1, MostBeats, "the beats of a group");
        }

        if (!groups.IsEmpty)
        {
            Require.InRange(Beats, 1, MostBeats, "the beats of an avartana");
        }
    }

    /// <summary>No count: each line has its own length.</summary>
    public static Meter Free { get; } = new("free", [], 4);

    /// <summary>Adi tala, chatusra-jati triputa: 4 + 2 + 2 aksharas (common practice).</summary>
    public static Meter Adi { get; } = new("Adi", [4, 2, 2], 4);

    /// <summary>The name.</summary>
    public string Name { get; }

    /// <summary>The beats of each anga; empty for the free meter.</summary>
    public ValueList<int> Groups { get; }

    /// <summary>The note value of a beat in files: 4 for a quarter.</summary>
    public int BeatType { get; }

    /// <summary>The beats of an avartana; 0 for the free meter.</summary>
    public int Beats { get; }

    /// <summary>Whether there is no count.</summary>
    public bool IsFree => Groups.IsEmpty;

    /// <summary>The name, and the angas where there are any: <c>Adi (4+2+2)</c>.</summary>
    public override string ToString() =>
        IsFree ? Name : $"{Name} ({string.Join('+', Groups.ConvertAll(g => g.ToString(CultureInfo.InvariantCulture)))})";
}
