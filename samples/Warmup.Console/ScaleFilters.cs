using System.CommandLine;
using System.Globalization;

namespace Warmup.Cli;

/// <summary>The options that search the catalogue.</summary>
internal sealed class ScaleFilters
{
    private readonly Option<string?> _find = new("--find") { Description = "Only scales whose name holds this text." };

    private readonly Option<string?> _contains = new("--contains") { Description = "Only scales that have these notes, such as \"R2 G3 D2\"." };

    private readonly Option<string?> _equals = new("--equals") { Description = "Only scales of exactly these pitches: notes, or the name of a scale." };

    private readonly Option<string?> _near = new("--near") { Description = "Only scales that differ from these pitches by one: notes, or the name of a scale." };

    private readonly Option<string?> _notes = new("--notes") { Description = "Only scales of so many notes, such as 5, or 5-7 for five up and seven down." };

    private readonly Option<int?> _parent = new("--parent") { Description = "Only the parent scale of this number and what is derived from it." };

    private readonly Option<bool> _withoutP = new("--without-p") { Description = "Only scales without P." };

    private readonly Option<string?> _kind = new("--kind") { Description = "Only scales of this kind: svarantara, audava, shadava, sampurna, or two of them such as audava-sampurna." };

    public void AddTo(Command command)
    {
        foreach (var option in (Option[])[_find, _contains, _equals, _near, _notes, _parent, _withoutP, _kind])
        {
            command.Add(option);
        }
    }

    /// <summary>The query that the options describe.</summary>
    /// <exception cref="InputException">An option's value cannot be used; the message names the option.</exception>
    public ScaleQuery Read(ParseResult parsed)
    {
        var query = new ScaleQuery { Text = parsed.GetValue(_find) };
        if (parsed.GetValue(_contains) is { } contains)
        {
            query = query with { Contains = Degree.TryParseList(contains, out var degrees, out var error) ? degrees : throw Refusal("--contains", error!) };
        }

        if (parsed.GetValue(_equals) is { } equal)
        {
            query = query with { EqualTo = Notes("--equals", equal) };
        }

        if (parsed.GetValue(_near) is { } near)
        {
            query = query with { OneNoteFrom = Notes("--near", near) };
        }

        if (parsed.GetValue(_kind) is { } kind)
        {
            query = query with { Kind = ScaleKind.TryParse(kind, out var read, out var error) ? read : throw Refusal("--kind", error) };
        }

        if (parsed.GetValue(_withoutP))
        {
            query = query with { Without = [new Degree(5)] };
        }

        return Checked("--parent", () => query with { Parent = parsed.GetValue(_parent) }) is var ranged && parsed.GetValue(_notes) is { } notes
            ? Counted(ranged, notes)
            : ranged;
    }

    private static ScaleQuery Counted(ScaleQuery query, string notes)
    {
        var parts = notes.Split('-');
        if (parts.Length > 2
            || !int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out var up)
            || !int.TryParse(parts[^1], NumberStyles.None, CultureInfo.InvariantCulture, out var down))
        {
            throw new InputException($"--notes must be a number such as 5, or two such as 5-7, not '{notes}'");
        }

        return Checked("--notes", () => query with { NotesUp = up, NotesDown = down });
    }

    private static ValueList<Degree> Notes(string option, string text) =>
        Catalogue.Default.TryReadNotes(text, out var degrees, out var error) ? degrees : throw Refusal(option, error!);

    private static ScaleQuery Checked(string option, Func<ScaleQuery> make)
    {
        try
        {
            return make();
        }
        catch (ArgumentOutOfRangeException refused)
        {
            throw new InputException($"{option}: {refused.Message.Split(" (Parameter", 2)[0]}");
        }
    }

    private static InputException Refusal(string option, TextError error) => new($"{option}, {error}");
}
