namespace Warmup.ManyMachines;

/// <summary>Works through ranges of a job's patterns. A range gives the same tally wherever and however often it is done.</summary>
internal sealed class PatternWork(PatternJob job)
{
    // Far beyond any tone's semitones.
    private const int EndOfLine = 1_000_000;
    private const int Refusal = 2_000_000;

    private readonly PatternEnumeration _patterns = job.Enumeration();
    private readonly ValueList<Scale> _scales = job.ReadScales();
    private readonly Int128 _count = job.Count();

    public PatternJob Job { get; } = job;

    /// <summary>The number of ranges; the last one may be shorter.</summary>
    public int Ranges => (int)((_count + Job.RangeLength - 1) / Job.RangeLength);

    /// <summary>The first index of a range.</summary>
    public long FirstOf(int range) => Job.First + ((long)range * Job.RangeLength);

    /// <summary>The number of indexes in a range.</summary>
    public int CountOf(int range) => (int)Int128.Min(Job.RangeLength, _count - ((Int128)range * Job.RangeLength));

    /// <summary>What is found at each index of a range, in order.</summary>
    public IEnumerable<Found> RowsOf(int range, CancellationToken stop)
    {
        var first = FirstOf(range);
        for (var i = 0; i < CountOf(range); i++)
        {
            stop.ThrowIfCancellationRequested();
            yield return OfIndex(first + i, stop);
        }
    }

    /// <summary>The tally of one range.</summary>
    public Tally Of(int range, CancellationToken stop) => RowsOf(range, stop).Aggregate(Tally.Empty, (sum, found) => sum + found);

    /// <summary>The tally of all ranges, one after the other, on this thread.</summary>
    public Tally OfAll(CancellationToken stop)
    {
        var tally = Tally.Empty;
        for (var range = 0; range < Ranges; range++)
        {
            tally += Of(range, stop);
        }

        return tally;
    }

    /// <summary>The tally of indexes spread evenly over the job, which shows what the whole would cost.</summary>
    public Tally OfSpread(int samples, CancellationToken stop)
    {
        var tally = Tally.Empty;
        var taken = Int128.Min(samples, _count);
        for (var i = Int128.Zero; i < taken; i++)
        {
            stop.ThrowIfCancellationRequested();
            tally += OfIndex((long)(Job.First + (_count * i / taken)), stop);
        }

        return tally;
    }

    private Found OfIndex(long index, CancellationToken stop)
    {
        var pattern = _patterns[index];
        var (refused, lines, notes, palindromes, heard) = (0, 0, 0, 0, 0UL);
        foreach (var scale in _scales)
        {
            if (!pattern.TryExpand(scale, out var expansion, out _, stop))
            {
                refused++;
                heard = Add(heard, Refusal);
                continue;
            }

            lines += expansion!.Lines.Count;
            var isPalindrome = true;
            foreach (var line in expansion.Lines)
            {
                var tones = line.Notes.AsSpan();
                notes += tones.Length;
                isPalindrome &= ReadsTheSame(tones);
                foreach (var note in tones)
                {
                    heard = Add(heard, note.Tone.Semitones);
                }

                heard = Add(heard, EndOfLine);
            }

            palindromes += isPalindrome ? 1 : 0;
        }

        return new Found(index, refused, lines, notes, palindromes, _patterns.IndexOf(Pattern.Parse(pattern.ToString())) != index, heard);
    }

    private static ulong Add(ulong heard, int what) => Found.Mix(unchecked(heard + (ulong)what));

    private static bool ReadsTheSame(ReadOnlySpan<LineNote> notes)
    {
        for (var i = 0; i < notes.Length / 2; i++)
        {
            if (!notes[i].SoundsAs(notes[^(i + 1)]))
            {
                return false;
            }
        }

        return true;
    }
}
