namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>
    /// Each line keeps its end pitches and is sung backwards, its runs refilled from the other list. Leaps keep their notes.
    /// </summary>
    /// <remarks>
    /// A note whose letter has another variant in the other list takes that form; a note whose letter is missing there stays as it is,
    /// and a finding says so. In scales that are the same both ways this is <see cref="Reversed"/>.
    /// </remarks>
    public Pattern Backwards() => new BackwardsPattern(this);

    /// <summary>Each line there and back: sung, then sung backwards as <see cref="Backwards"/> does, its last note once.</summary>
    public Pattern ThereAndBack() => new ThereAndBackPattern(this);
}

internal sealed record BackwardsPattern(Pattern Inner) : UnaryPattern(Inner)
{
    public static PatternWord WordEntry { get; } = 
        PatternWord.Combinator("backwards", "each line sung backwards between its own end notes, its runs refilled from the other list", p => p.Backwards())
        with { Said = "every line is then sung backwards" };

    internal override Operation Operation => new(WordEntry, default, default);

    internal override LawClass Class => LawClass.EachLine;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var lines = Map(Inner.Lines(frame, expander), l => TurnBack.Refill(l, frame.Scale, expander));
        expander.Bound(lines);
        return lines;
    }
}

internal sealed record ThereAndBackPattern(Pattern Inner) : UnaryPattern(Inner, 2 * Inner.UsualNotes, 2 * Inner.UsualLongest)
{
    public static PatternWord WordEntry { get; } = 
        PatternWord.Combinator("there-and-back", "each line, then backwards, its last note once", p => p.ThereAndBack())
        with { Said = "every line is sung there and back" };

    internal override Operation Operation => new(WordEntry, default, default);

    internal override LawClass Class => LawClass.EachLine;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var lines = Map(Inner.Lines(frame, expander), l => ThereAndBackLine(l, frame.Scale, expander));
        expander.Bound(lines);
        return lines;
    }

    private static Line ThereAndBackLine(Line line, Scale scale, Expander expander)
    {
        var there = line.Notes;
        var back = TurnBack.Refill(line, scale, expander).Notes;
        var notes = new LineNote[there.Count + back.Count - 1];
        there.AsSpan().CopyTo(notes);
        back.AsSpan().CopyTo(notes.AsSpan(there.Count - 1));

        // The turning note has the form of the run that leaves it and is still reached by the run that arrives.
        notes[there.Count - 1] = back[0] with { Approach = there[^1].Approach };
        return new Line(ValueList.Adopt(notes));
    }
}

/// <summary>Reads a line backwards over the other list.</summary>
internal static class TurnBack
{
    public static Line Refill(Line line, Scale scale, Expander expander)
    {
        var source = line.Notes;
        var notes = new List<LineNote>(source.Count) { Turned(source[^1], scale, expander) };

        // Walk the line from its end, one maximal run (or one leap) at a time.
        for (var last = source.Count - 1; last > 0;)
        {
            var approach = source[last].Approach;
            var first = last - 1;
            if (approach != Approach.Leap)
            {
                while (first > 0 && source[first].Approach == approach)
                {
                    first--;
                }

                var other = approach == Approach.Ascent ? Approach.Descent : Approach.Ascent;
                var direction = other == Approach.Ascent ? ScaleDirection.Ascent : ScaleDirection.Descent;
                AddRun(notes, source.AsSpan()[first..(last + 1)], direction, other, scale, expander);
            }
            else
            {
                notes[^1] = notes[^1] with { Rest = source[first].Rest };
                notes.Add(Turned(source[first], scale, expander));
            }

            last = first;
        }

        // The silence at the line's end stays there.
        notes[^1] = notes[^1] with { Rest = source[^1].Rest };
        return new Line(notes.ToValueList());
    }

    private static void AddRun(List<LineNote> notes, ReadOnlySpan<LineNote> source, ScaleDirection direction, Approach approach, Scale scale, Expander expander)
    {
        var list = scale.List(direction);
        var from = Leave(notes[^1].Tone, list, scale, expander);
        var to = Turned(source[0], scale, expander) with { Direction = direction, Approach = approach };
        var rises = to.Tone.Semitones > from.Semitones;
        var between = Between(list, rises ? from : to.Tone, rises ? to.Tone : from);

        // As many notes as before keep their lengths, silences and words; others are as long as the run's second note.
        var same = between.Length == source.Length - 2;
        notes[^1] = notes[^1] with { Tone = from, Direction = direction, Rest = same || source.Length == 2 ? source[^2].Rest : default };
        for (var i = 0; i < between.Length; i++)
        {
            var tone = between[rises ? i : between.Length - 1 - i];
            var like = same ? source[^(i + 2)] : source[^2] with { Rest = default, Sung = null };
            notes.Add(new LineNote(tone, direction, approach, like.Length) { Rest = same ? source[^(i + 3)].Rest : default, Sung = like.Sung });
        }

        notes.Add(to);
    }

    private static ReadOnlySpan<ScaleTone> Between(ScaleList list, ScaleTone low, ScaleTone high)
    {
        // Where the list repeats, the run is looked for in the middle octave and moved to its own.
        var octaves = list.HasUpperTonic ? low.Octave : 0;
        var between = list.Between(low.Raised(-octaves), high.Raised(-octaves)).ToArray();
        for (var i = 0; i < between.Length; i++)
        {
            between[i] = between[i].Raised(octaves);
        }

        return between;
    }

    /// <summary>A note in the form of the list that is not its own.</summary>
    private static LineNote Turned(LineNote note, Scale scale, Expander expander)
    {
        var direction = note.Direction == ScaleDirection.Ascent ? ScaleDirection.Descent : ScaleDirection.Ascent;
        return new LineNote(Leave(note.Tone, scale.List(direction), scale, expander), direction, Approach.Leap, note.Length) { Sung = note.Sung };
    }

    private static ScaleTone Leave(ScaleTone tone, ScaleList list, Scale scale, Expander expander)
    {
        if (list.FormOf(tone) is { } form)
        {
            return form;
        }

        var which = list.Direction == ScaleDirection.Ascent ? "ascent" : "descent";
        expander.Note(new Finding(
            FindingCode.NoteMissingFromList,
            Severity.Note,
            $"{scale.Name} has no {tone.Degree.SvaraLetter} in its {which}: {tone} stays as it is and the line goes on from the next note of the {which}",
            "nothing need change; take a scale that has the note both ways if the turn is unwanted"));
        return tone;
    }
}
