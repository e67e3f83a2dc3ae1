using System.Globalization;

namespace Warmup;

/// <summary>Builds a pattern from the nodes of its JSON; each refusal names the node.</summary>
internal readonly ref struct PatternJsonBuilder(ReadOnlySpan<byte> json, PatternLanguage language)
{
    private readonly ReadOnlySpan<byte> _json = json;

    public Pattern Build(PatternNode node)
    {
        var kinds = (node.Word is null ? 0 : 1) + (node.Sum is null ? 0 : 1) + (node.Lines is null ? 0 : 1);
        if (kinds != 1)
        {
            throw Fail(node, string.Create(CultureInfo.InvariantCulture, $"a node must have exactly one of \"word\", \"sum\" and \"lines\", not {kinds}"));
        }

        if (node.Word is null && node.HasParts)
        {
            throw Fail(node, $"\"{(node.Sum is null ? "lines" : "sum")}\" stands alone; put a node with \"of\" around it");
        }

        try
        {
            return node.Word is { } name ? Word(node, name) : node.Sum is { } sum ? Sum(node, sum) : Lines(node, node.Lines!);
        }
        catch (PatternTooLargeException refused)
        {
            throw Fail(node, refused.Reason);
        }
    }

    private Pattern Word(PatternNode node, string name)
    {
        if (language.Find(name) is not { } word)
        {
            throw Fail(node, language.Unknown(name, w => w.IsPrimitive == node.Of is null));
        }

        Needs(node, word, "of", !word.IsPrimitive, node.Of is not null);
        Needs(node, word, "with", word.Takes == WordTakes.Pattern, node.With is not null);
        Needs(node, word, "numbers", word.Takes == WordTakes.Numbers, node.Numbers is not null);
        Needs(node, word, "texts", word.Takes == WordTakes.Texts, node.Texts is not null);
        var shown = (node.Numbers ?? []).ToValueList();
        if (word.CountsPlaces && shown.IndexOf(n => n == 0) >= 0)
        {
            throw Fail(node, Place.NoZero(string.Join(' ', shown)));
        }

        var numbers = word.Meant(shown);
        var texts = (node.Texts ?? []).ToValueList();
        if ((word.Takes == WordTakes.Texts ? SungPattern.Fault(texts.AsSpan()) : word.Fault(numbers) is { } wrong && word.CountsPlaces ? $"'{word.Name}' takes {word.Wanted}" : word.Fault(numbers)) is { } fault)
        {
            throw Fail(node, fault);
        }

        return word.Build(new WordParts(node.Of is null ? null : Build(node.Of), numbers, node.With is null ? null : Build(node.With), texts));
    }

    private Pattern Sum(PatternNode node, List<PatternNode> sum)
    {
        if (sum.Count < 2 || sum.Count > PatternLimits.Nodes)
        {
            throw Fail(node, string.Create(CultureInfo.InvariantCulture, $"a sum has 2 to {PatternLimits.Nodes} nodes, not {sum.Count}"));
        }

        var parts = new Pattern[sum.Count];
        for (var i = 0; i < parts.Length; i++)
        {
            parts[i] = Build(sum[i]);
        }

        return Pattern.Sum(parts);
    }

    private Pattern Lines(PatternNode node, List<string> lines)
    {
        var text = string.Join(" / ", lines);
        return WrittenText.TryRead(new TextCursor(text), out var written, out var error) ? written : throw Fail(node, error.Message);
    }

    private void Needs(PatternNode node, PatternWord word, string member, bool wanted, bool found)
    {
        if (wanted != found)
        {
            throw Fail(node, $"'{word.Name}' {(wanted ? "needs" : "takes no")} \"{member}\"");
        }
    }

    private WarmupFormatException Fail(PatternNode node, string message) => PatternJsonReader.Fail(_json, node.Start, $"{node.Place}: {message}");
}
