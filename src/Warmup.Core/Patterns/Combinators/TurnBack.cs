namespace Warmup;

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
        return new Line(ValueList.Adopt(notes.ToArray()));
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
            var like = same ? source[^(i + 2)] : source[^2] with { Rest = default, CheckedText = null };
            notes.Add(like with { Tone = tone, Direction = direction, Approach = approach, Rest = same ? source[^(i + 3)].Rest : default });
        }

        notes.Add(to);
    }

    private static ReadOnlySpan<ScaleTone> Between(ScaleList list, ScaleTone low, ScaleTone high)
    {
        // Where the list repeats, the run is looked for in the middle octave and moved to its own.
        var octaves = list.HasUpperTonic ? low.Octave : 0;
        var between = list.Between(low.Raised(-octaves), high.Raised(-octaves));
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
        return note with { Tone = Leave(note.Tone, scale.List(direction), scale, expander), Direction = direction, Approach = Approach.Leap, Rest = default };
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
            "nothing needs to change; for another turn take a scale that has the note in both lists"));
        return tone;
    }
}
