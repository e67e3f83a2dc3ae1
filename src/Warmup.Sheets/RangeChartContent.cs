namespace Warmup.Sheets;

/// <summary>What a chart shows, before it has a place on the paper.</summary>
internal sealed class RangeChartContent
{
    private RangeChartContent(SortedDictionary<int, ChartNote> notes, List<ChartColumn> columns, int notShown)
    {
        Notes = notes;
        Columns = columns;
        NotShown = notShown;
        var drawn = columns.SelectMany(c => (IEnumerable<int>)[
                c.Singer.Low.Midi, c.Singer.High.Midi, c.Singer.FullLow?.Midi ?? c.Singer.Low.Midi, c.Singer.FullHigh?.Midi ?? c.Singer.High.Midi,
                notes.First().Key + (12 * c.Octaves), notes.Last().Key + (12 * c.Octaves)])
            .Append(notes.First().Key)
            .Append(notes.Last().Key)
            .ToList();
        Lowest = Math.Max(0, drawn.Min() - 1);
        Highest = Math.Min(127, drawn.Max() + 1);
    }

    /// <summary>The time on each written note, by MIDI number.</summary>
    public SortedDictionary<int, ChartNote> Notes { get; }

    /// <summary>The singers from the highest range to the lowest.</summary>
    public List<ChartColumn> Columns { get; }

    public int NotShown { get; }

    /// <summary>The lowest row of the chart, as a MIDI number.</summary>
    public int Lowest { get; }

    public int Highest { get; }

    public static RangeChartContent Of(Score score, ValueList<Singer> singers, int most, CancellationToken cancellation)
    {
        if (singers.IsEmpty)
        {
            throw new ArgumentException("a range chart must have at least 1 singer, not 0", nameof(singers));
        }

        var notes = new SortedDictionary<int, ChartNote>();
        foreach (var section in score.Sections)
        {
            cancellation.ThrowIfCancellationRequested();
            foreach (var note in section.Notes)
            {
                var pitch = section.PitchOf(note);
                var seconds = section.SecondsAt(note.Onset + note.Length) - section.SecondsAt(note.Onset);
                var known = notes.GetValueOrDefault(pitch.Midi, new ChartNote(Rational.Zero, pitch.Tone.ToString(), pitch.Name.ToString()));
                notes[pitch.Midi] = known with { Seconds = known.Seconds + seconds };
            }
        }

        var shown = ((IEnumerable<Singer>)singers).Take(most).ToValueList();
        var tonic = score.Sections[0].Tonic.Midi;
        var fits = ((IEnumerable<TonicFit>)score.RankTonics(shown)).First(t => (t.Tonic.Midi - tonic) % 12 == 0);
        var columns = ((IEnumerable<SingerFit>)fits.Singers)
            .Select(f => new ChartColumn(f.Singer, (f.Tonic.Midi - tonic) / 12, f))
            .OrderByDescending(c => c.Singer.Low.Midi + c.Singer.High.Midi)
            .ToList();
        return new RangeChartContent(notes, columns, singers.Count - shown.Count);
    }
}

/// <summary>A note of the drill: its seconds, its tone and its written name.</summary>
internal sealed record ChartNote(Rational Seconds, string Tone, string Name);

/// <summary>A singer of the chart, the octave they sing in, and how that fits.</summary>
internal sealed record ChartColumn(Singer Singer, int Octaves, SingerFit Fit);
