namespace Warmup;

/// <summary>How a note of a line is reached from the one before it.</summary>
public enum Link
{
    /// <summary>By a leap or a step of a figure, or it is the first note: nothing lies between.</summary>
    Leap,

    /// <summary>As part of a run over the ascent.</summary>
    Ascent,

    /// <summary>As part of a run over the descent.</summary>
    Descent,
}

/// <summary>One note of a line: a tone of the scale and its length in units.</summary>
/// <param name="Tone">The tone.</param>
/// <param name="Way">The list of the scale it was taken from.</param>
/// <param name="Link">How it is reached from the note before.</param>
/// <param name="Length">Its length in units, above 0. A unit is one note of the chosen speed.</param>
public readonly record struct LineNote(ScaleTone Tone, Way Way, Link Link, Rational Length)
{
    /// <summary>The tone's text form.</summary>
    public override string ToString() => Tone.ToString();
}

/// <summary>Notes sung as one phrase.</summary>
/// <param name="Notes">The notes, at least one.</param>
public sealed record Line(ValueList<LineNote> Notes)
{
    /// <summary>The tones, separated by spaces: <c>S R2 G3</c>.</summary>
    public override string ToString() => string.Join(' ', Notes);

    /// <summary>The letters without variants, separated by spaces: <c>S R G</c>.</summary>
    public string ToLetters() => string.Join(' ', Notes.ConvertAll(n => n.Tone.ToLetterString()));
}
