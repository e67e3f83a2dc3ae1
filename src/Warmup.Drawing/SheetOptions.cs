using Warmup.Sheets;

namespace Warmup.Drawing;

/// <summary>The student's sheet: title, tonic, scale, tala and tempo, the lines in svara letters under the aksharas, and the cautions.</summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record SheetOptions : DrawingOptions
{
    /// <summary>
    /// What is written for each note, without octave dots: the sheet adds them. <see langword="null"/>, the default, takes what the score sings where that is
    /// svara letters in a script, solfa or numbers, and Latin svara letters otherwise.
    /// </summary>
    public Syllables? Letters { get; init; }

    /// <summary>
    /// Whether the lines have a blank for each note, to be heard and written down; a key with the notes follows on another page. No by default.
    /// </summary>
    public bool HasHiddenNotes { get; init; }

    internal override string Subject => "sheet";

    internal override PageSet Draw(Score score, TextShaper shaper, CancellationToken cancellation) =>
        SheetDrawing.Draw(Sheet.Of(score, Letters, cancellation), shaper, HasHiddenNotes, cancellation);
}
