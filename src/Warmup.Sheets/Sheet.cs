namespace Warmup.Sheets;

/// <summary>
/// A score as it stands on a sheet, before it has a width or a typeface: headers, blocks of lines, and the signs at their times. The text sheet, the
/// practice page and the drawings of <c>Warmup.Drawing</c> are built on it.
/// </summary>
/// <remarks>Immutable, value equality. <see cref="AvartanaRows"/> divides its lines into rows.</remarks>
public sealed record Sheet
{
    private readonly SheetLetters _letters;

    private Sheet(Score score, SheetLetters letters, CancellationToken cancellation)
    {
        _letters = letters;
        Score = score;
        Sections = score.Sections.ConvertAll(s => new SheetSection(s, letters, cancellation));
    }

    /// <summary>The score.</summary>
    public Score Score { get; }

    /// <summary>The sections, in order.</summary>
    public ValueList<SheetSection> Sections { get; }

    /// <summary>
    /// Whether it is a solfege sheet: in time signatures throughout, or written in solfa. Such a sheet counts in beats and bars, and says nothing of kattais
    /// and ragas.
    /// </summary>
    public bool IsSolfege => _letters.IsSolfa || Score.Sections.All(s => !MeterWords.Of(s.Meter).IsTala);

    /// <summary>
    /// Whether carets stand for the octaves instead of dots: in Tamil, where a dot over a letter is the pulli, which takes its vowel away. A caret points up
    /// for the upper octave, and down, under the letter, for the lower one (the project's own sign).
    /// </summary>
    public bool HasCarets => _letters.HasCarets;

    /// <summary>What stands over a letter of the upper octave: <c>a dot</c>, or a caret, with the reason.</summary>
    public string OctaveSign => HasCarets ? "^ (not the pulli, which is a dot)" : "a dot";

    /// <summary>Which signs stand on it, for its legend.</summary>
    public SheetSigns Signs => new(this);

    /// <summary>The cautions for paper: the score's, each in a few words, and where the whole text stands.</summary>
    public string CautionText => $"{string.Join(' ', Score.Cautions.ConvertAll(c => c.Brief))} Whole text and sources: practice page and reports.";

    /// <summary>Whether a line is faster than the first speed, so that lines over the letters show it.</summary>
    public bool HasFasterSpeeds => Score.Sections.Any(s => s.Lines.Any(l => l.Speed.Kalam > 1));

    /// <summary>
    /// The notes whose letter stands in the lines at more than one pitch, by letter and variant from the lowest: <c>D1 D2</c>. None by default: most
    /// drills have one pitch for a letter, and the letter stands alone.
    /// </summary>
    public ValueList<string> LettersWithVariant => _letters.HasHiddenNotes ? [] : Score.Sections
        .SelectMany(s => s.Pitches.Where(p => s.HasSeveralOf(p.Tone.Degree)).Select(p => p.Tone.Degree)).Distinct().Order()
        .Select(d => _letters.Of(new ScaleTone(d))).Where(t => t.Variant.Length > 0).Select(t => t.Name).ToValueList();

    /// <summary>What a legend says of <see cref="LettersWithVariant"/>; empty where there are none.</summary>
    public string VariantLegend => LettersWithVariant is { IsEmpty: false } names
        ? $"{string.Join(' ', names)}: a letter that has more than one pitch here is written with its variant"
        : string.Empty;

    /// <summary>The sheet of a score.</summary>
    /// <param name="score">The score.</param>
    /// <param name="letters">
    /// What is written for each note. <see langword="null"/>, the default, takes what the score sings where that is svara letters in a script, solfa or
    /// numbers; for all others solfa where time signatures count throughout, and Latin svara letters otherwise.
    /// </param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static Sheet Of(Score score, Syllables? letters = null, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(score);
        return new Sheet(score, SheetLetters.Of(score, letters), cancellationToken);
    }

    /// <summary>The sheet with a blank for each note, for those who hear the lines and write them down; the rows of the scale keep their letters.</summary>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public Sheet WithHiddenNotes(CancellationToken cancellationToken = default) => new(Score, _letters with { HasHiddenNotes = true }, cancellationToken);

    /// <summary>A tone as this sheet writes it.</summary>
    /// <param name="tone">The tone.</param>
    public SheetTone ToneOf(ScaleTone tone) => _letters.Of(tone);

    /// <summary>The score's title.</summary>
    public override string ToString() => OneLine.Of(Score.Title);
}
