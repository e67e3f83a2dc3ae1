namespace Warmup.Research;

/// <summary>Covers lines, or the notes of one phrase, with slices of the rules of a table at the least size.</summary>
internal static class SearchCover
{
    // Of the rules that cover the same stretch only the first few are tried: the table has the smallest first.
    private const int MostTried = 100;
    private const int LongestPhrase = 400;

    // What a figure costs more that is sung only once: it is the line written out.
    private const int WrittenOut = 4;

    private readonly record struct Chunk(SearchEntry Entry, int From, int Count, int Times, int End)
    {
        /// <summary>The words it needs: the rule's own, and one for each end that is cut off.</summary>
        public int Cost => Entry.Pattern.Nodes + (From > 0 ? 1 : 0) + (From + Count < Entry.Lines.Length ? 1 : 0) + (Times > 1 ? 1 : 0)
            + (Entry.Steps > 0 && Times * Count == 1 ? WrittenOut : 0);

        public Pattern Build()
        {
            var pattern = From > 0 ? Entry.Pattern.Drop(From) : Entry.Pattern;
            pattern = From + Count < Entry.Lines.Length ? pattern.Take(Count) : pattern;
            return Times > 1 ? pattern.Repeat(Times) : pattern;
        }
    }

    /// <summary>The smallest sum of slices that gives the lines.</summary>
    public static Pattern? OfLines(SearchTable table, Line[] goal)
    {
        var best = new (int Cost, Chunk Chunk)?[goal.Length + 1];
        best[goal.Length] = (0, default);
        for (var at = goal.Length - 1; at >= 0; at--)
        {
            var tried = 0;
            foreach (var (entry, line) in table.Find(goal[at].Notes.AsSpan()))
            {
                if (++tried > MostTried)
                {
                    break;
                }

                for (var count = 1; at + count <= goal.Length && line + count <= entry.Lines.Length && entry.Lines[line + count - 1].SoundsAs(goal[at + count - 1]); count++)
                {
                    var times = 1;
                    Try(best, at, new Chunk(entry, line, count, 1, at + count));
                    while (at + ((times + 1) * count) <= goal.Length && Sound.Alike(goal.AsSpan(at, count), goal.AsSpan(at + (times * count), count)))
                    {
                        times++;
                        Try(best, at, new Chunk(entry, line, count, times, at + (times * count)));
                    }
                }
            }
        }

        return Build(best);
    }

    /// <summary>The smallest sum of slices whose lines, joined to one phrase, are the goal.</summary>
    public static Pattern? OfNotes(SearchTable table, Line goal)
    {
        var notes = goal.Notes.AsSpan().ToArray();
        if (notes.Length > LongestPhrase)
        {
            return null;
        }

        var best = new (int Cost, Chunk Chunk)?[notes.Length + 1];
        best[notes.Length] = (0, default);
        var lengths = table.LineLengths.ToArray();
        for (var at = notes.Length - 1; at >= 0; at--)
        {
            foreach (var length in lengths)
            {
                if (at + length > notes.Length)
                {
                    continue;
                }

                var tried = 0;
                foreach (var (entry, line) in table.Find(notes.AsSpan(at, length)))
                {
                    if (++tried > MostTried)
                    {
                        break;
                    }

                    var end = at;
                    for (var count = 1; line + count <= entry.Lines.Length && Matches(notes, end, entry.Lines[line + count - 1]); count++)
                    {
                        end += entry.Lines[line + count - 1].Notes.Count;
                        Try(best, at, new Chunk(entry, line, count, 1, end));
                        var block = end - at;
                        for (var times = 2; at + (times * block) <= notes.Length && Repeats(notes, at, block, times); times++)
                        {
                            Try(best, at, new Chunk(entry, line, count, times, at + (times * block)));
                        }
                    }
                }
            }
        }

        return Build(best)?.Join();
    }

    private static void Try((int Cost, Chunk Chunk)?[] best, int at, Chunk piece)
    {
        if (best[piece.End] is { } rest && (best[at] is not { } known || piece.Cost + rest.Cost < known.Cost))
        {
            best[at] = (piece.Cost + rest.Cost, piece);
        }
    }

    private static Pattern? Build((int Cost, Chunk Chunk)?[] best)
    {
        var parts = new List<Pattern>();
        for (var at = 0; at < best.Length - 1;)
        {
            if (best[at] is not { } step || parts.Count > 64)
            {
                return null;
            }

            parts.Add(step.Chunk.Build());
            at = step.Chunk.End;
        }

        try
        {
            return Pattern.Sum([.. parts]);
        }
        catch (ArgumentException)
        {
            return null;
        }
    }

    private static bool Matches(LineNote[] notes, int at, Line line)
    {
        if (at + line.Notes.Count > notes.Length)
        {
            return false;
        }

        for (var i = 0; i < line.Notes.Count; i++)
        {
            if (!notes[at + i].SoundsAs(line.Notes[i]))
            {
                return false;
            }
        }

        return true;
    }

    private static bool Repeats(LineNote[] notes, int at, int block, int times)
    {
        for (var i = 0; i < block; i++)
        {
            if (!notes[at + i].SoundsAs(notes[at + ((times - 1) * block) + i]))
            {
                return false;
            }
        }

        return true;
    }
}
