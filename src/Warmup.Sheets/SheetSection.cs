namespace Warmup.Sheets;

/// <summary>A section of a score on a sheet: what stands above its lines, and the lines in blocks of one speed.</summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record SheetSection
{
    internal SheetSection(Section section, SheetLetters letters, CancellationToken cancellation)
    {
        Section = section;
        Ascent = section.Scale.Ascent.ConvertAll(letters.Of);
        Descent = section.Scale.Descent.ConvertAll(letters.Of);
        Words = MeterWords.Of(section.Meter, letters.IsSolfa);

        // What is sung could be the names of the notes.
        Header = HeaderRows.Of(section, Words).Where(row => !letters.HasHiddenNotes || row.Label != HeaderRows.Sung).ToValueList();
        Blocks = SheetBlock.Of(section, letters, cancellation);
        PrintedBlocks = SheetBlock.Printed(section, Blocks);
    }

    /// <summary>The section of the score.</summary>
    public Section Section { get; }

    /// <summary>The ascent of its scale.</summary>
    public ValueList<SheetTone> Ascent { get; }

    /// <summary>The descent of its scale.</summary>
    public ValueList<SheetTone> Descent { get; }

    /// <summary>What a sheet says of the section besides its scale, in rows: the tonic, the tuning, the time, what the hand does, where it ends, and so on.</summary>
    public ValueList<(string Label, string Text)> Header { get; }

    /// <summary>The words for time and scale: those of the talas or of solfege.</summary>
    internal MeterWords Words { get; }

    /// <summary>What the ascent and the descent are called: <c>arohana</c> and <c>avarohana</c> where a tala is counted, <c>up</c> and <c>down</c> elsewhere.</summary>
    public (string Ascent, string Descent) ListNames => (Words.Ascent, Words.Descent);

    /// <summary>What a beat and all beats of one count are called: <c>akshara</c>, <c>anga</c> and <c>avartana</c>, or <c>beat</c>, <c>group</c> and <c>bar</c>.</summary>
    public (string Beat, string Group, string Bar) TimeNames => (Words.Beat, Words.Group, Words.Bar);

    /// <summary>The lines, in order.</summary>
    public ValueList<SheetBlock> Blocks { get; }

    /// <summary>The blocks for paper: times through the drill that are exactly alike stand there once, with how often they are sung.</summary>
    public ValueList<SheetBlock> PrintedBlocks { get; }

    /// <summary>The section's title.</summary>
    public override string ToString() => OneLine.Of(Section.Title);
}
