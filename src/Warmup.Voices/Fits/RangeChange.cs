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

/// <summary>A change that makes a drill fit a singer's comfortable range.</summary>
/// <param name="Kind">The kind of change.</param>
/// <param name="Text">The change in words.</param>
/// <param name="NotesChanged">How many notes are lost or sung elsewhere in the scale; none with another tonic.</param>
/// <param name="Drill">The drill after the change.</param>
/// <param name="Lines">The lines after the change.</param>
public sealed record RangeChange(RangeChangeKind Kind, string Text, int NotesChanged, Drill Drill, Expansion Lines)
{
    /// <summary>The score after the change.</summary>
    public Score ToScore() => Drill.ToScore(Lines);

    /// <summary>The changes that make a drill fit, the smallest first: fewest notes changed, then another tonic before left-out lines before folding.</summary>
    /// <param name="drill">The drill.</param>
    /// <param name="singer">The singer.</param>
    /// <returns>At most one of each kind; empty where the range already fits or nothing helps.</returns>
    /// <exception cref="PatternException">The drill cannot be made.</exception>
    public static ValueList<RangeChange> Smallest(Drill drill, Singer singer)
    {
        var expansion = drill.Pattern.Expand(drill.Scale);
        var score = drill.ToScore(expansion);
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

        return ((IEnumerable<RangeChange?>)[
                OtherTonic(drill, expansion, heights, singer), WithoutLines(drill, expansion, sides), Folded(drill, expansion, sides)])
            .OfType<RangeChange>()
            .Where(c => !RangeCheck.Check(c.ToScore(), singer).Any())
            .OrderBy(c => c.NotesChanged).ThenBy(c => c.Kind)
            .ToValueList();
    }

    private static RangeChange? OtherTonic(Drill drill, Expansion expansion, long[] heights, Singer singer)
    {
        // The nearest shift that brings the end that is out just inside; whether the other end stays inside is checked on the score.
        var down = Millicents.Semitones(heights.Max() - Millicents.Of(singer.High) - Millicents.Tolerance).Ceiling();
        var up = Millicents.Semitones(Millicents.Of(singer.Low) - Millicents.Tolerance - heights.Min()).Ceiling();
        var shift = (int)(down > 0 ? -down : up);
        var tonic = drill.Tonic.Midi + shift;
        if ((down > 0 && up > 0) || tonic is < Tonic.LowestMidi or > Tonic.HighestMidi)
        {
            return null;
        }

        var moved = drill with { Tonic = drill.Tonic.Transposed(shift) };
        var name = Spelling.ChooseTonic(moved.Tonic, drill.Scale, out _);
        return new RangeChange(
            RangeChangeKind.Tonic,
            string.Create(CultureInfo.InvariantCulture, $"take the tonic {name}, {Math.Abs(shift)} {(Math.Abs(shift) == 1 ? "semitone" : "semitones")} {(shift < 0 ? "lower" : "higher")}"),
            0,
            moved,
            expansion);
    }

    private static RangeChange? WithoutLines(Drill drill, Expansion expansion, Dictionary<ScaleTone, int> sides)
    {
        var (kept, dropped, lost) = (new List<Line>(), new List<int>(), 0);
        for (var l = 0; l < expansion.Lines.Count; l++)
        {
            var line = expansion.Lines[l];
            if (((IEnumerable<LineNote>)line.Notes).Any(n => sides[n.Tone] != 0))
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
            drill,
            new Expansion(kept.ToValueList(), expansion.Findings));
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
            drill,
            new Expansion(lines.ToValueList(), expansion.Findings));
    }

    /// <summary>1 above the range, -1 below it, 0 inside.</summary>
    private static int Side(long height, Singer singer) =>
        height > Millicents.Of(singer.High) + Millicents.Tolerance ? 1 : height < Millicents.Of(singer.Low) - Millicents.Tolerance ? -1 : 0;
}
