namespace Warmup.Reading;

/// <summary>Takes the lines of a section to another scale.</summary>
internal static class CarriedLines
{
    public static Expansion To(ReadSection section, Scale scale, CancellationToken cancellation)
    {
        if ((RuleFinder.OfAll(section, cancellation) ?? RuleFinder.OfAll(Plain(section), cancellation)) is not { } rule)
        {
            return Dressed(section, ByLetter(section, scale, cancellation));
        }

        var expansion = rule.Expand(scale, cancellation);
        return AreAlike(expansion.Lines, section.Lines) ? Dressed(section, expansion) : Grown(section, expansion);
    }

    /// <summary>Whether lines have as many notes each.</summary>
    public static bool AreAlike(ValueList<Line> one, ValueList<Line> other) => one.Select(l => l.Notes.Count).SequenceEqual(other.Select(l => l.Notes.Count));

    private static ReadSection Plain(ReadSection section) => section with
    {
        Lines = section.Lines.ConvertAll(l => new Line(l.Notes.ConvertAll(n => n with { Joining = Joining.Plain, Loudness = Loudness.Even }))),
    };

    /// <summary>Each note's letter in the scale, in the list in whose direction its line goes on.</summary>
    private static Expansion ByLetter(ReadSection section, Scale scale, CancellationToken cancellation)
    {
        var (lines, findings) = (new List<Line>(), new List<Finding>());
        foreach (var line in section.Lines)
        {
            var text = line.ToLetters();
            if (text.Length > ReadSection.LongestWritten)
            {
                throw new PatternException(new Finding(
                    FindingCode.PatternRefused, Severity.Error, $"a line of {line.Notes.Count} notes is too long to be written out for another scale", "divide it into lines, such as by breath marks or systems"));
            }

            var expansion = Pattern.Written(text).Expand(scale, cancellation);
            lines.AddRange(expansion.Lines);
            findings.AddRange(expansion.Findings);
        }

        return new Expansion(lines.ToValueList(), findings.Distinct().ToValueList());
    }

    /// <summary>The tones of an expansion with all that the section's notes have besides, note for note.</summary>
    private static Expansion Dressed(ReadSection section, Expansion expansion)
    {
        var names = SyllableReading.ToneNames(section.Lines);
        var lines = new Line[section.Lines.Count];
        for (var l = 0; l < lines.Length; l++)
        {
            var (from, to) = (section.Lines[l].Notes, expansion.Lines[l].Notes);
            var notes = new LineNote[from.Count];
            for (var n = 0; n < notes.Length; n++)
            {
                notes[n] = from[n] with
                {
                    Tone = to[n].Tone,
                    Direction = to[n].Direction,
                    Approach = to[n].Approach,
                    Sung = from[n].Sung is { } sung && names is not null ? SyllableReading.Renamed(names, sung, from[n].Tone, to[n].Tone) : from[n].Sung,
                    Joining = from[n].Joining == Joining.Glide && (n + 1 == notes.Length || to[n + 1].Tone == to[n].Tone) ? Joining.Plain : from[n].Joining,
                };
            }

            lines[l] = new Line(notes.ToValueList());
        }

        return new Expansion(lines.ToValueList(), expansion.Findings);
    }

    /// <summary>Lines with other numbers of notes, in the section's lengths, with what all its notes have.</summary>
    private static Expansion Grown(ReadSection section, Expansion expansion)
    {
        var (unit, all) = (section.CommonLength, section.Lines.SelectMany(l => l.Notes).ToList());
        var sung = all.Select(n => n.Sung).Distinct().ToList() is [var same] ? same : null;
        var lines = expansion.Lines.ConvertAll(l => new Line(l.Notes.ConvertAll(n => n with { Length = n.Length * unit, Rest = n.Rest * unit, Sung = n.Sung ?? sung })));
        var isWhole = all.TrueForAll(n => n.Sung == sung) && Plain(section).Lines == section.Lines && section.Breaths.IsEmpty;
        return new Expansion(lines, isWhole ? expansion.Findings : [.. expansion.Findings, new Finding(
            ReadingFindingCode.LeftOut,
            Severity.Note,
            "the rule gives lines of other numbers of notes in this scale: words, slides, swells and breaths that belong to single notes were left out",
            "add them anew in the notation, or take a scale with as many notes")]);
    }
}
