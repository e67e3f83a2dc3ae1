using Microsoft.Extensions.Primitives;

namespace Warmup.Web;

/// <summary>All that was chosen and typed on the page, as the address carries it. Immutable.</summary>
internal sealed class PageState
{
    // In the order in which the address names them, with what an address without them means; the defaults are the project's own setting.
    private static readonly (string Name, string Usual)[] All =
    [
        ("scale", "Mayamalavagowla"), ("find", ""), ("without-p", ""),
        ("from", "exercise"), ("exercise", "sarali-1"), ("written", ""), ("pattern", "ladder"), ("lines", ""),
        ("tonic", "G3"), ("tuning", "equal"), ("syllables", ""),
        ("tempo", "60"), ("tala", ""), ("speeds", ""), ("gati", ""), ("delivery", "continuous"), ("fill", ""), ("fill-by", ""), ("breath", ""), ("breaths", ""),
        ("class", ""),
    ];

    private readonly Dictionary<string, string> _values;

    private PageState(Dictionary<string, string> values, bool isClassInAddress) => (_values, IsClassInAddress) = (values, isClassInAddress);

    /// <summary>Whether addresses that the page offers carry the class: only where the class came in one.</summary>
    public bool IsClassInAddress { get; }

    /// <summary>A value, or the usual one.</summary>
    public string this[string name] => _values.TryGetValue(name, out var value) ? value : All.First(a => a.Name == name).Usual;

    /// <summary>Reads the values; names that the page does not know are passed over, so that an old address stays good.</summary>
    /// <param name="values">The values.</param>
    /// <param name="isClassInAddress">Whether they came in an address.</param>
    /// <param name="limits">What is allowed.</param>
    /// <param name="errors">Takes what is wrong.</param>
    public static PageState Read(IEnumerable<KeyValuePair<string, StringValues>> values, bool isClassInAddress, Limits limits, List<QueryError> errors)
    {
        var read = new Dictionary<string, string>();
        foreach (var (name, typed) in values)
        {
            if (!All.Any(a => a.Name == name))
            {
                continue;
            }

            var most = name == "class" ? limits.LongestClass : limits.LongestText;
            if (typed.Count > 1)
            {
                errors.Add(new(name, null, null, Texts.English.GivenTwice));
            }
            else if (typed.ToString() is { Length: > 0 } value)
            {
                if (value.Length > most)
                {
                    errors.Add(new(name, null, null, Texts.English.TooLong(most)));
                    value = string.Empty;
                }

                read[name] = value;
            }
        }

        return new PageState(read, isClassInAddress);
    }

    /// <summary>The state with some values changed.</summary>
    public PageState With(params IEnumerable<(string Name, string Value)> changes)
    {
        var values = new Dictionary<string, string>(_values);
        foreach (var (name, value) in changes)
        {
            values[name] = value;
        }

        return new PageState(values, IsClassInAddress);
    }

    /// <summary>The state whose addresses carry the class.</summary>
    public PageState WithClassInAddress() => new(_values, isClassInAddress: true);

    /// <summary>The page's address with some values changed; what is as usual is left out.</summary>
    public string Address(params IEnumerable<(string Name, string Value)> changes)
    {
        var state = With(changes);
        return "/" + QueryString.Create(All
            .Where(a => (a.Name != "class" || IsClassInAddress) && state[a.Name] != a.Usual && (state[a.Name].Length > 0 || a.Usual.Length == 0))
            .Select(a => KeyValuePair.Create(a.Name, (string?)state[a.Name])));
    }

    /// <summary>The drill's own values, as <see cref="DrillQuery"/> reads them; without those that need not be said.</summary>
    public QueryCollection ToDrill() => new(DrillQuery.Names
        .Select(n => (Name: n, Value: n == "pattern" ? PatternText() : this[n]))
        .Where(v => v.Value.Trim().Length > 0)
        .ToDictionary(v => v.Name, v => new StringValues(v.Value)));

    /// <summary>The address of a file of the drill, or of its contour.</summary>
    public string FileAddress(string path, params IEnumerable<(string Name, string Value)> more) =>
        path + QueryString.Create(ToDrill().Select(v => KeyValuePair.Create(v.Key, (string?)v.Value.ToString())).Concat(more.Select(m => KeyValuePair.Create(m.Name, (string?)m.Value))));

    private string PatternText() => this["from"] switch
    {
        "written" => $"[{string.Join(" / ", this["written"].Split(['\n', '\r', '/'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))}]",
        "words" => this["pattern"],
        _ => this["exercise"],
    };
}
