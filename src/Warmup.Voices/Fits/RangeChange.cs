using System.Globalization;

namespace Warmup.Voices;

/// <summary>A way to make a drill fit a singer's range.</summary>
public enum RangeChangeKind
{
    /// <summary>Another tonic: every line stays as it is.</summary>
    Tonic,

    /// <summary>The lines that leave the range are left out.</summary>
    DropLines,

    /// <summary>The notes that leave the range are sung an octave lower or higher.</summary>
    Fold,
}

/// <summary>A change that makes a drill fit a singer's comfortable range. Immutable, value equality.</summary>
public sealed record RangeChange
{
    private RangeChange(RangeChangeKind kind, string text, int notesChanged, Drill drill) => (Kind, Text, NotesChanged, Drill) = (kind, text, notesChanged, drill);

    /// <summary>The kind of change.</summary>
    public RangeChangeKind Kind { get; }

    /// <summary>The change in words.</summary>
    public string Text { get; }

    /// <summary>How many notes are lost or sung elsewhere in the scale; none with another tonic.</summary>
    public int NotesChanged { get; }

    /// <summary>The drill after the change; where lines are left out or folded, it has what is left of them as its <see cref="Drill.Expansion"/>.</summary>
    public Drill Drill { get; }

    /// <summary>The changes that make a drill fit, the smallest first: fewest notes changed, then another tonic before left-out lines before folding.</summary>
    /// <param name="drill">The drill.</param>
    /// <param name="singer">The singer.</param>
    /// <returns>At most one of each kind; empty where the range already fits or no change helps.</returns>
    /// <exception cref="PatternException">The drill cannot be made.</exception>
    public static ValueList<RangeChange> Smallest(Drill drill, Singer singer)
    {
        ArgumentNullException.ThrowIfNull(drill);
        ArgumentNullException.ThrowIfNull(singer);
        var carried = new CarriedDrill(drill);
        var (expansion, score) = (carried.Lines, carried.ToScore());
        if (!RangeCheck.Check(score, singer).Any())
        {
            return [];
        }

        var section = score.Sections[0];
        var heights = Millicents.Of(section);
        var sides = new Dictionary<ScaleTone, int>();
        for (var p = 0; p < heights.Length; p++)
        {
            sides[section.Pitches[p].Tone] = Side(heights[p], singer);
        }

        RangeChange?[] changes = [OtherTonic(drill, heights, singer), WithoutLines(drill, expansion, sides), Folded(drill, expansion, sides)];
        return changes.OfType<RangeChange>()
            .Where(c => !RangeCheck.Check(c.Kind == RangeChangeKind.Tonic ? carried.On(c.Drill.Tonic) : c.Drill.ToScore(), singer).Any())
            .OrderBy(c => c.NotesChanged).ThenBy(c => c.Kind)
            .ToValueList();
    }

    /// <summary>The change in words.</summary>
    public override string ToString() => OneLine.Of(Text);

    private static RangeChange? OtherTonic(Drill drill, long[] heights, Singer singer)
    {
        // The nearest shift that brings the end that is out just inside; whether the other end stays inside is checked on the score.
        var down = Millicents.Semitones(heights.Max() - Millicents.Of(singer.High) - Millicents.Tolerance).Ceiling();
        var up = Millicents.Semitones(Millicents.Of(singer.Low) - Millicents.Tolerance - heights.Min()).Ceiling();
        var shift = (int)(down > 0 ? -down : up);
        var tonic = drill.Tonic.Midi + shift;
        if ((down > 0 && up > 0) || tonic < Tonic.LowestMidi || tonic > Tonic.HighestMidi)
        {
            return null;
        }

        var moved = drill with { Tonic = drill.Tonic.Transposed(shift) };
        var name = Spelling.ChooseTonic(moved.Tonic, drill.Scale, out _);
        return new RangeChange(
            RangeChangeKind.Tonic,
            string.Create(CultureInfo.InvariantCulture, $"take the tonic {name}, {Math.Abs(shift)} {(Math.Abs(shift) == 1 ? "semitone" : "semitones")} {(shift < 0 ? "lower" : "higher")}"),
            0,
            moved);
    }

    private static RangeChange? WithoutLines(Drill drill, Expansion expansion, Dictionary<ScaleTone, int> sides)
    {
        var (kept, dropped, lost) = (new List<Line>(), new List<int>(), 0);
        for (var l = 0; l < expansion.Lines.Count; l++)
        {
            var line = expansion.Lines[l];
            if (line.Notes.Any(n => sides[n.Tone] != 0))
            {
                dropped.Add(l + 1);
                lost += line.Notes.Count;
            }
            else
            {
                kept.Add(line);
            }
        }

        return kept.Count == 0 ? null : new RangeChange(
            RangeChangeKind.DropLines,
            $"leave out {(dropped.Count == 1 ? "line" : "lines")} {LineNumbers.ToText(dropped)}",
            lost,
            drill with { Expansion = new Expansion(kept.ToValueList(), expansion.Findings) });
    }

    private static RangeChange? Folded(Drill drill, Expansion expansion, Dictionary<ScaleTone, int> sides)
    {
        var (lines, folded) = (new List<Line>(), new List<int>());
        for (var l = 0; l < expansion.Lines.Count; l++)
        {
            var notes = expansion.Lines[l].Notes.AsSpan().ToArray();
            for (var n = 0; n < notes.Length; n++)
            {
                var side = sides[notes[n].Tone];
                if (side != 0)
                {
                    if (Math.Abs(notes[n].Tone.Octave - side) > ScaleTone.HighestOctave)
                    {
                        return null;
                    }

                    notes[n] = notes[n] with { Tone = notes[n].Tone.Raised(-side), Approach = Approach.Leap };
                    folded.Add(l + 1);
                }
            }

            lines.Add(new Line(notes.ToValueList()));
        }

        var count = string.Create(CultureInfo.InvariantCulture, $"{folded.Count} {(folded.Count == 1 ? "note" : "notes")}");
        return new RangeChange(
            RangeChangeKind.Fold,
            $"fold at the octave: {count} of {(folded.Distinct().Count() == 1 ? "line" : "lines")} {LineNumbers.ToText(folded)} an octave away",
            folded.Count,
            drill with { Expansion = new Expansion(lines.ToValueList(), expansion.Findings) });
    }

    /// <summary>1 above the range, -1 below it, 0 inside.</summary>
    private static int Side(long height, Singer singer) =>
        height > Millicents.Of(singer.High) + Millicents.Tolerance ? 1 : height < Millicents.Of(singer.Low) - Millicents.Tolerance ? -1 : 0;
}
