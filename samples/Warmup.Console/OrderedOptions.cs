namespace Warmup.Cli;

/// <summary>Options with their values in the order in which they were first named; a later value replaces an earlier one.</summary>
internal sealed class OrderedOptions
{
    private readonly List<(string Name, string? Value)> _options = [];

    public void Set(string name, string? value)
    {
        var at = _options.FindIndex(o => o.Name == name);
        if (at < 0)
        {
            _options.Add((name, value));
        }
        else
        {
            _options[at] = (name, value);
        }
    }

    public IReadOnlyList<string> ToList() => [.. _options.SelectMany(o => o.Value is null ? (string[])[o.Name] : [o.Name, o.Value])];
}
