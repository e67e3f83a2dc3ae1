namespace Warmup.Sheets;

/// <summary>How a text sheet is written. Immutable, value equality.</summary>
public sealed record TextSheetOptions
{
    /// <summary>The options unless others are given.</summary>
    public static TextSheetOptions Default { get; } = new();

    /// <summary>
    /// What is written for each note, without its octave: the sheet adds signs for it. <see langword="null"/>, the default, takes what the score sings
    /// where that is svara letters in a script, solfa or numbers, and Latin svara letters otherwise.
    /// </summary>
    public Syllables? Letters { get; init; }

    /// <summary>
    /// Whether the lines have a blank for each note, to be heard and written down; a key with the notes follows on another page. No by default.
    /// </summary>
    public bool HasHiddenNotes { get; init; }

    /// <summary>The letters, and whether notes are hidden.</summary>
    public override string ToString() => $"letters {Letters?.ToString() ?? "as sung"}{(HasHiddenNotes ? ", notes hidden" : string.Empty)}";
}
