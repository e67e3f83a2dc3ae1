using System.CommandLine;
using System.Globalization;

namespace Warmup.Cli;

/// <summary>The options that search the catalogue.</summary>
internal sealed class ScaleFilters
{
    private readonly Option<string?> _find = new("--find") { Description = "Only scales whose name contains this text." };

    private readonly Option<string?> _contains = new("--contains") { Description = "Only scales with these notes, such as \"R2 G3 D2\"." };

    private readonly Option<string?> _holding = new("--holding") { Description = "Which scale is this: scales with these letters in any form, the nearest first, such as \"S R G P N\"; or with some of them fixed, \"S R2 G P\"." };

    private readonly Option<string?> _equals = new("--equals") { Description = "Only scales with exactly these pitches: notes, or the name of a scale." };

    private readonly Option<string?> _near = new("--near") { Description = "Only scales that differ from these pitches by one note: notes, or the name of a scale." };

    private readonly Option<string?> _notes = new("--notes") { Description = "Only scales with this number of notes: 5, or 5-7 for five up and seven down." };

    private readonly Option<string?> _parent = new("--parent") { Description = "Only the parent scale with this number and the scales derived from it." };

    private readonly Option<bool> _withoutP = new("--without-p") { Description = "Only scales without P." };

    private readonly Option<string?> _kind = new("--kind") { Description = "Only scales of this kind: svarantara, audava, shadava, sampurna, or two of them such as audava-sampurna." };

    public void AddTo(Command command)
    {
        foreach (var option in (Option[])[_find, _contains, _holding, _equals, _near, _notes, _parent, _withoutP, _kind])
        {
            command.Add(option);
        }
    }

    /// <summary>The scales that the options describe.</summary>
    /// <exception cref="InputException">An option's value cannot be used; the message names the option.</exception>
    public ValueList<CatalogueEntry> Find(ParseResult parsed)
    {
        var rows = Catalogue.Default.Search(Read(parsed));
        return parsed.GetValue(_holding) is { } letters
            ? OptionValue.Parsed<ValueList<CatalogueEntry>>("--holding", letters, Catalogue.Default.TryFindHolding).Where(rows.Contains).ToValueList()
            : rows;
    }

    /// <summary>The query that the options describe.</summary>
    /// <exception cref="InputException">An option's value cannot be used; the message names the option.</exception>
    private ScaleQuery Read(ParseResult parsed)
    {
        var (contains, equal, near, kind, parent) = (parsed.GetValue(_contains), parsed.GetValue(_equals), parsed.GetValue(_near), parsed.GetValue(_kind), parsed.GetValue(_parent));
        var (up, down) = parsed.GetValue(_notes) is { } notes ? Counts(notes) : (null, null);
        return new ScaleQuery
        {
            NotesUp = up,
            NotesDown = down,
            Text = parsed.GetValue(_find),
            Contains = contains is null ? [] : OptionValue.Parsed<ValueList<Degree>>("--contains", contains, Degree.TryParseList),
            EqualTo = equal is null ? null : OptionValue.Parsed<ValueList<Degree>>("--equals", equal, Catalogue.Default.TryReadNotes),
            OneNoteFrom = near is null ? null : OptionValue.Parsed<ValueList<Degree>>("--near", near, Catalogue.Default.TryReadNotes),
            Kind = kind is null ? null : OptionValue.Parsed<ScaleKind>("--kind", kind, ScaleKind.TryParse),
            Without = parsed.GetValue(_withoutP) ? [new Degree(5)] : [],
            Parent = parent is null ? null : OptionValue.Whole("--parent", parent, 1, 72),
        };
    }

    private static (int? Up, int? Down) Counts(string notes)
    {
        var parts = notes.Split('-');
        var (up, down) = (Count(parts[0]), Count(parts[^1]));
        return parts.Length <= 2 && up is not null && down is not null
            ? (up, down)
            : throw new InputException($"--notes must be a number between {Scale.FewestNotes} and {Scale.MostNotes} such as 5, or two such as 5-7, not {TextError.Quote(notes)}");
    }

    private static int? Count(string text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count >= Scale.FewestNotes && count <= Scale.MostNotes ? count : null;
}
