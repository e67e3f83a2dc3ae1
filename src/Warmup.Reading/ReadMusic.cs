using System.Globalization;

namespace Warmup.Reading;

/// <summary>What a file held: sections of lines, and what could not be kept. Immutable, compared by value.</summary>
public sealed record ReadMusic
{
    internal ReadMusic()
    {
    }

    /// <summary>The kind of file: <c>MusicXML</c>, <c>MIDI</c> or <c>text</c>.</summary>
    public string Format { get; internal init; } = string.Empty;

    /// <summary>The title; empty where the file has none.</summary>
    public string Title { get; internal init; } = string.Empty;

    /// <summary>The part that was read.</summary>
    public string Part { get; internal init; } = string.Empty;

    /// <summary>The names of all parts that have notes, in order; none in a text.</summary>
    public ValueList<string> Parts { get; internal init; }

    /// <summary>The sections, at least one.</summary>
    public ValueList<ReadSection> Sections { get; internal init; }

    /// <summary>What could not be kept or was mended, each with its place; at most 500, and one that counts the others.</summary>
    public ValueList<Remark> Remarks { get; internal init; }

    /// <summary>All sections as one score.</summary>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="PatternException">A section's lines cannot be put in time, or a note leaves MIDI's range.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public Score ToScore(CancellationToken cancellationToken = default) => Sections.Count == 1
        ? Sections[0].ToScore(cancellationToken)
        : Score.Join(Title, Sections.Select(s => s.ToScore(cancellationToken)));

    /// <summary>The same with a title where it has none.</summary>
    internal ReadMusic Named(string title) => this with
    {
        Title = Title.Length > 0 ? Title : title,
        Sections = Sections.ConvertAll(s => s.Title.Length > 0 ? s : s with { Title = title }),
    };

    /// <summary>The format, the number of sections and the title.</summary>
    public override string ToString() => OneLine.Of(string.Create(
        CultureInfo.InvariantCulture, $"{Format}, {Sections.Count} {(Sections.Count == 1 ? "section" : "sections")}, {Remarks.Count} remarks: {Title}"));
}
