using Microsoft.Extensions.Primitives;

namespace Warmup.Web;

/// <summary>All that was chosen and typed on the page, as the address carries it. Immutable.</summary>
internal sealed class PageState
{
    private readonly Dictionary<string, string> _values;

    private PageState(PageForm form, Dictionary<string, string> values, bool isClassInAddress) => (Form, _values, IsClassInAddress) = (form, values, isClassInAddress);

    /// <summary>The form of the page.</summary>
    public PageForm Form { get; }

    /// <summary>Whether addresses that the page offers carry the class: only where the class came in one.</summary>
    public bool IsClassInAddress { get; }

    /// <summary>A value, or the usual one.</summary>
    public string this[string name] => _values.TryGetValue(name, out var value) ? value : Form.Values.First(a => a.Name == name).Usual;

    /// <summary>Whether a value is what an address without it means.</summary>
    public bool IsUsual(string name) => this[name] == Form.Values.First(a => a.Name == name).Usual;

    /// <summary>Reads the values; names that the page does not know are passed over, so that an old address stays good.</summary>
    /// <param name="form">The form of the page.</param>
    /// <param name="values">The values.</param>
    /// <param name="isClassInAddress">Whether they came in an address.</param>
    /// <param name="limits">What is allowed.</param>
    /// <param name="errors">Takes what is wrong.</param>
    public static PageState Read(PageForm form, IEnumerable<KeyValuePair<string, StringValues>> values, bool isClassInAddress, Limits limits, List<QueryError> errors)
    {
        var read = new Dictionary<string, string>();
        foreach (var (name, typed) in values)
        {
            if (!form.Values.Any(a => a.Name == name))
            {
                continue;
            }

            var most = PageForm.IsPrivate(name) ? limits.LongestClass : PageForm.IsLines(name) ? limits.LongestLines : limits.LongestText;
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

        return new PageState(form, read, isClassInAddress);
    }

    /// <summary>A page on which nothing was chosen yet.</summary>
    public static PageState Usual(PageForm form) => new(form, [], isClassInAddress: false);

    /// <summary>The state with some values changed.</summary>
    public PageState With(params IEnumerable<(string Name, string Value)> changes)
    {
        var values = new Dictionary<string, string>(_values);
        foreach (var (name, value) in changes)
        {
            values[name] = value;
        }

        return new PageState(Form, values, IsClassInAddress);
    }

    /// <summary>The state whose addresses carry the class.</summary>
    public PageState WithClassInAddress() => new(Form, _values, isClassInAddress: true);

    /// <summary>The page's address with some values changed; what is as usual is left out.</summary>
    public string Address(params IEnumerable<(string Name, string Value)> changes)
    {
        var state = With(changes);
        return Form.Path + QueryString.Create(Form.Values
            .Where(a => (!PageForm.IsPrivate(a.Name) || IsClassInAddress) && state[a.Name] != a.Usual && (state[a.Name].Length > 0 || a.Usual.Length == 0))
            .Select(a => KeyValuePair.Create(a.Name, (string?)state[a.Name])));
    }
}
