namespace Warmup.Voices;

/// <summary>The highest and the lowest note of each line of a pattern: all that the check of the range finds depends on them.</summary>
internal sealed class LineHeights
{
    private readonly (Height Highest, Height Lowest)[] _lines;

    /// <summary>Measures the lines of a section's first speed and first time, which are those of the pattern.</summary>
    public LineHeights(Section section, int lineCount)
    {
        var notes = section.Notes.AsSpan();
        var heights = Millicents.Of(section);
        _lines = new (Height, Height)[lineCount];
        for (var l = 0; l < lineCount; l++)
        {
            var line = section.Lines[l];
            var (highest, lowest) = (notes[line.FirstNote].PitchIndex, notes[line.FirstNote].PitchIndex);
            foreach (ref readonly var note in notes.Slice(line.FirstNote, line.NoteCount))
            {
                highest = heights[note.PitchIndex] > heights[highest] ? note.PitchIndex : highest;
                lowest = heights[note.PitchIndex] < heights[lowest] ? note.PitchIndex : lowest;
            }

            _lines[l] = (Height.Of(section.Pitches[highest]), Height.Of(section.Pitches[lowest]));
        }
    }

    private LineHeights((Height, Height)[] lines) => _lines = lines;

    /// <summary>Only some of the lines, by their numbers from 1.</summary>
    public LineHeights Of(ValueList<int> lines) => new([.. lines.ConvertAll(l => _lines[l - 1])]);

    /// <summary>How many lines there are.</summary>
    public int Count => _lines.Length;

    /// <summary>By how many cents a line leaves a range at its top; nothing where it does not.</summary>
    public double? Above(int line, NoteName high) => _lines[line].Highest is var height && height.Millicents - Millicents.Of(high) > Millicents.Tolerance ? height.From(high) : null;

    /// <summary>By how many cents a line leaves a range at its bottom; nothing where it does not.</summary>
    public double? Below(int line, NoteName low) => _lines[line].Lowest is var height && Millicents.Of(low) - height.Millicents > Millicents.Tolerance ? height.From(low) : null;

    /// <summary>Where a pitch sounds: in whole numbers to compare it, and in cents as findings give it.</summary>
    private readonly record struct Height(long Millicents, double Cents)
    {
        public static Height Of(ScorePitch pitch) => new(Warmup.Voices.Millicents.Of(pitch), (100.0 * pitch.Midi) + pitch.OffsetCents);

        public double From(NoteName edge) => Math.Abs(Cents - (100.0 * edge.Midi));
    }
}
