namespace Warmup.ManyMachines;

/// <summary>Works through ranges of a job's patterns. A range gives the same tally wherever and however often it is done.</summary>
internal sealed class PatternWork(PatternJob job)
{
    private readonly PatternEnumeration _patterns = job.Enumeration();
    private readonly ValueList<Scale> _scales = job.ReadScales();
    private readonly Int128 _count = job.Count();

    public PatternJob Job { get; } = job;

    /// <summary>The number of ranges; the last one may be shorter.</summary>
    public int Ranges => (int)((_count + Job.RangeLength - 1) / Job.RangeLength);

    /// <summary>The tally of one range.</summary>
    public Tally Of(int range, CancellationToken stop)
    {
        var first = Job.First + ((Int128)range * Job.RangeLength);
        var end = Int128.Min(Job.First + _count, first + Job.RangeLength);
        var tally = Tally.Empty;
        for (var index = first; index < end; index++)
        {
            stop.ThrowIfCancellationRequested();
            tally += OfIndex(index, stop);
        }

        return tally;
    }

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
            tally += OfIndex(Job.First + (_count * i / taken), stop);
        }

        return tally;
    }

    private Tally OfIndex(Int128 index, CancellationToken stop)
    {
        var pattern = _patterns[index];
        var (refused, lines, notes, palindromes) = (0L, 0L, 0L, 0L);
        var heard = Mix((ulong)index);
        foreach (var scale in _scales)
        {
            if (!pattern.TryExpand(scale, out var expansion, out _, stop))
            {
                refused++;
                heard = Mix(heard);
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
                    heard = Mix(unchecked(heard + (ulong)note.Tone.Semitones));
                }
            }

            palindromes += isPalindrome ? 1 : 0;
        }

        return new Tally
        {
            Patterns = 1,
            Refused = refused,
            Lines = lines,
            Notes = notes,
            Palindromes = palindromes,
            Broken = _patterns.IndexOf(Pattern.Parse(pattern.ToString())) == index ? 0 : 1,
            Checksum = heard,
        };
    }

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

    /// <summary>The output function of SplitMix64 (Steele, Lea and Flood, OOPSLA 2014): every bit depends on every bit.</summary>
    private static ulong Mix(ulong z)
    {
        unchecked
        {
            z += 0x9E3779B97F4A7C15;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return z ^ (z >> 31);
        }
    }
}
