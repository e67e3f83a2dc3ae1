using System.Globalization;

namespace Warmup;

/// <summary>A drill or a whole warm-up in time: exact onsets and lengths, tuned pitches, breaths, measures, and a drone.</summary>
/// <remarks>
/// Scores come from <see cref="Drill.ToScore()"/>, also with lines of your own, and from <see cref="Climb.ToScore"/>; <see cref="Join"/>
/// puts several one after the other. The core computes every part; exporters only write. Immutable, value equality.
/// </remarks>
public sealed partial record Score
{
    private readonly string _title;

    internal Score(string title, ValueList<Section> sections, Drone? drone, ValueList<Finding> findings)
    {
        // Titles that a drill makes up are as long as its pattern's text.
        _title = title;
        Sections = sections;
        Drone = drone;
        Findings = findings;
    }

    /// <summary>The title. One that is set has at most 10,000 characters and no control characters.</summary>
    /// <exception cref="ArgumentException">The title is too long or holds control characters.</exception>
    public string Title
    {
        get => _title;
        init => _title = Require.PlainText(Require.NotNull(value, nameof(Title)), Drill.LongestTitle, nameof(Title));
    }

    /// <summary>The sections, sung one after the other; at least one.</summary>
    public ValueList<Section> Sections { get; internal init; }

    /// <summary>The drone, or <see langword="null"/> for none.</summary>
    public Drone? Drone { get; init; }

    /// <summary>Remarks from making the score, such as a respelled tonic.</summary>
    public ValueList<Finding> Findings { get; }

    /// <summary>The length of the whole score in seconds: where the last section ends, as exact as <see cref="SectionStarts"/>.</summary>
    public Rational Seconds => SectionEnds()[^1];

    /// <summary>The number of sung notes.</summary>
    public int NoteCount
    {
        get
        {
            var sum = 0;
            foreach (var section in Sections)
            {
                sum += section.Notes.Count;
            }

            return sum;
        }
    }

    /// <summary>Several scores under one title, sung one after the other.</summary>
    /// <param name="title">The title, at most 10,000 characters without control characters.</param>
    /// <param name="scores">The scores, at least one. The drone is that of the first score that has one.</param>
    /// <returns>All sections in order, and the findings of all scores, each once.</returns>
    /// <exception cref="ArgumentException">There are no scores, or the title is too long or holds control characters.</exception>
    public static Score Join(string title, IEnumerable<Score> scores)
    {
        ArgumentNullException.ThrowIfNull(scores);
        Require.PlainText(Require.NotNull(title), Drill.LongestTitle);
        var parts = scores.ToList();
        if (parts.Count == 0)
        {
            throw new ArgumentException("there must be at least 1 score to join, not 0", nameof(scores));
        }

        return parts.Contains(null!) ? throw new ArgumentNullException(nameof(scores), "a score to join is missing") : Joined(title, parts);
    }

    /// <summary>The same for a title that a drill made up, however long.</summary>
    internal static Score Joined(string title, List<Score> scores)
    {
        var sections = new List<Section>();
        var findings = new List<Finding>();
        Drone? drone = null;
        foreach (var score in scores)
        {
            foreach (var finding in score.Findings)
            {
                findings.Add(finding.Place is { } place && scores.Count > 1
                    ? finding with { Place = place.After(sections.Count, score.Sections[place.Section - 1].Title) }
                    : finding);
            }

            sections.AddRange(score.Sections);
            drone ??= score.Drone;
        }

        return new Score(title, sections.ToValueList(), drone, findings.Distinct().ToValueList());
    }

    /// <summary>
    /// The score with breaths taken into a section: the note before each ends where the breath begins. A breath that the section already has
    /// after the same note is replaced.
    /// </summary>
    /// <param name="section">The index of the section, from 0.</param>
    /// <param name="breaths">The breaths, in any order: each begins within its note or at its end, and ends before the next note begins.</param>
    /// <exception cref="ArgumentException">
    /// There is no such section, a breath does not fit its note, or the section is too long for the finer grid that the breaths need.
    /// </exception>
    public Score WithBreaths(int section, ValueList<Breath> breaths)
    {
        Require.InRange(section, 0, Sections.Count - 1);
        var sections = Sections.AsSpan().ToArray();
        sections[section] = BreathInsertion.Into(sections[section], breaths);
        return this with { Sections = ValueList.Adopt(sections) };
    }

    /// <summary>The place of a note, for findings: it names the section where the score has several.</summary>
    /// <param name="section">The index of the section, from 0.</param>
    /// <param name="note">A note of that section.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such section.</exception>
    public ScorePlace PlaceOf(int section, ScoreNote note) => PlaceOf(section, note.LineIndex, note.Onset);

    /// <summary>The place of a beat in a line, for findings: it names the section where the score has several.</summary>
    /// <param name="section">The index of the section, from 0.</param>
    /// <param name="line">The index of the line in the section, from 0.</param>
    /// <param name="beat">Aksharas from the section's beginning, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such section or line.</exception>
    public ScorePlace PlaceOf(int section, int line, Rational beat)
    {
        var named = Sections[Require.InRange(section, 0, Sections.Count - 1)];
        Require.InRange(line, 0, named.Lines.Count - 1);
        return new ScorePlace(section + 1, line + 1, beat, Sections.Count > 1 ? named.Title : null);
    }

    /// <summary>The title, and how much is sung.</summary>
    public override string ToString()
    {
        var sections = Sections.Count == 1 ? string.Empty : string.Create(CultureInfo.InvariantCulture, $" in {Sections.Count} sections");
        return OneLine.Of(string.Create(
            CultureInfo.InvariantCulture, $"{NoteCount} {(NoteCount == 1 ? "note" : "notes")}{sections}, {Seconds.ToDouble():0.0} s: {Title}"));
    }
}
