namespace Warmup.Drawing;

/// <summary>The student's sheet: title, tonic, scale, tala and tempo, and the lines in svara letters under the aksharas, with the cautions.</summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record SheetOptions : DrawingOptions
{
    /// <summary>
    /// What is written for each note, without octave dots, which the sheet adds. <see langword="null"/>, the default, takes the script in
    /// which the score sings svara letters, and Latin letters where it sings something else.
    /// </summary>
    public Syllables? Letters { get; init; }

    internal override string Subject => "sheet";

    internal override PageSet Draw(Score score, TextShaper shaper, CancellationToken cancellation) =>
        new SheetDrawing(score, new Letters(score, Letters), shaper).Draw(cancellation);
}
