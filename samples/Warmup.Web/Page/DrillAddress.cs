using Microsoft.Extensions.Primitives;

namespace Warmup.Web;

/// <summary>The drill that a page's values describe, and the addresses of its files.</summary>
internal static class DrillAddress
{
    /// <summary>The drill's own values, as <see cref="DrillQuery"/> reads them; without those that need not be said.</summary>
    public static QueryCollection ToDrill(this PageState state) => new(DrillQuery.Names
        .Select(n => (Name: n, Value: n == "pattern" ? PatternText(state) : state[n]))
        .Where(v => v.Value.Trim().Length > 0)
        .ToDictionary(v => v.Name, v => new StringValues(v.Value)));

    /// <summary>The address of a file of the drill, or of its contour.</summary>
    public static string FileAddress(this PageState state, string path, params IEnumerable<(string Name, string Value)> more) =>
        path + QueryString.Create(state.ToDrill().Select(v => KeyValuePair.Create(v.Key, (string?)v.Value.ToString())).Concat(more.Select(m => KeyValuePair.Create(m.Name, (string?)m.Value))));

    /// <summary>A scale's name; the notes too where the catalogue does not know it by its name.</summary>
    public static string NameOf(Scale scale) => Catalogue.Default.TryRead(scale.Name, out var known, out _) && known == scale ? scale.Name : scale.ToText();

    private static string PatternText(PageState state) => state["from"] switch
    {
        "written" => $"[{string.Join(" / ", state["written"].Split(['\n', '\r', '/'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))}]",
        "words" => state["pattern"],
        _ => state["exercise"],
    };
}
