using System.Reflection;

namespace Warmup.Samples;

/// <summary>Where a table comes from: all that someone needs who wants the same rows again, as names with texts.</summary>
internal sealed class TableOrigin
{
    private readonly List<(string Name, string Text)> _entries = [];

    /// <summary>Begins with the library, its commit, and how difficulty was measured.</summary>
    public TableOrigin()
    {
        var (version, commit) = Library();
        Add("version", version);
        Add("commit", commit);
        Add("measured", "on C4, in equal tuning, without a tala, one unit a second, line after line");
        Add("weights", DifficultyWeights.Default.ToString());
    }

    /// <summary>The entries, in the order in which they were added.</summary>
    public IReadOnlyList<(string Name, string Text)> Entries => _entries;

    /// <summary>Adds an entry.</summary>
    public void Add(string name, string text) => _entries.Add((name, text));

    /// <summary>Adds a number.</summary>
    public void Add(string name, Int128 number) => Add(name, number.ToString(System.Globalization.CultureInfo.InvariantCulture));

    /// <summary>The library's version and the commit from which it was built; <c>unknown</c> where the build did not know.</summary>
    private static (string Version, string Commit) Library()
    {
        var text = typeof(PatternFacts).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "unknown";
        return text.Split('+', 2) is [var version, var commit] ? (version, commit) : (text, "unknown");
    }
}
