namespace Warmup.Drawing;

/// <summary>What a chart shows, before it has a place on the paper.</summary>
internal sealed class RangeChartContent
{
    private RangeChartContent(SortedDictionary<int, ChartNote> notes, List<RangeBar> bars, int notShown)
    {
        Notes = notes;
        Bars = bars;
        NotShown = notShown;
        var (lowest, highest) = (notes.First().Key, notes.Last().Key);
        foreach (var bar in bars)
        {
            lowest = Math.Min(lowest, Math.Min((bar.FullLow ?? bar.Band.Low).Midi, notes.First().Key + (12 * bar.Octaves)));
            highest = Math.Max(highest, Math.Max((bar.FullHigh ?? bar.Band.High).Midi, notes.Last().Key + (12 * bar.Octaves)));
        }

        Lowest = Math.Max(0, lowest - 1);
        Highest = Math.Min(127, highest + 1);
    }

    /// <summary>The time on each written note, by MIDI number.</summary>
    public SortedDictionary<int, ChartNote> Notes { get; }

    /// <summary>The bars from the highest range to the lowest.</summary>
    public List<RangeBar> Bars { get; }

    /// <summary>How many bars are not drawn.</summary>
    public int NotShown { get; }

    /// <summary>The lowest row of the chart, as a MIDI number.</summary>
    public int Lowest { get; }

    /// <summary>The highest row of the chart, as a MIDI number.</summary>
    public int Highest { get; }

    public static RangeChartContent Of(Score score, ValueList<RangeBar> bars, int most, CancellationToken cancellation)
    {
        if (bars.IsEmpty)
        {
            throw new ArgumentException("a range chart must have at least 1 bar, not 0", nameof(bars));
        }

        foreach (var bar in bars)
        {
            ArgumentNullException.ThrowIfNull(bar, nameof(bars));
        }

        var notes = new SortedDictionary<int, ChartNote>();
        foreach (var section in score.Sections)
        {
            cancellation.ThrowIfCancellationRequested();
            foreach (var note in section.Notes)
            {
                var pitch = section.PitchOf(note);
                var seconds = section.SecondsAt(note.End) - section.SecondsAt(note.Onset);
                var known = notes.GetValueOrDefault(pitch.Midi, new ChartNote(Rational.Zero, pitch.Tone.ToString(), pitch.Name.ToString()));
                notes[pitch.Midi] = known with { Seconds = SecondsSum.Of(known.Seconds, seconds) };
            }
        }

        if (notes.Count == 0)
        {
            throw new ArgumentException("a range chart must have at least 1 note, not 0", nameof(score));
        }

        var shown = bars.Take(most).OrderByDescending(b => b.Band.Low.Midi + b.Band.High.Midi).ToList();
        return new RangeChartContent(notes, shown, bars.Count - shown.Count);
    }
}

/// <summary>A note of the drill: its seconds, its tone and its written name.</summary>
internal sealed record ChartNote(Rational Seconds, string Tone, string Name);
