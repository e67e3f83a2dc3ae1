namespace Warmup.Research;

/// <summary>Takes combinators off lines. A guess may be wrong: whoever uses it checks the lines again.</summary>
internal static class SearchGuesses
{
    public static IEnumerable<SearchGuess> Of(Line[] lines, Scale scale) =>
        [.. Multiples(lines), .. Turns(lines, scale), .. SearchLengths.Of(lines), .. Orders(lines), .. Pieces(lines), .. Interleavings(lines), .. Returns(lines)];

    private static SearchGuess One(Line[] before, Func<Pattern, Pattern> build, bool cheap = false) => new([before], p => build(p[0]), cheap);

    private static IEnumerable<SearchGuess> Multiples(Line[] lines)
    {
        for (var n = 2; n <= Math.Min(8, lines.Length); n++)
        {
            var times = n;
            if (lines.Length % n != 0)
            {
                continue;
            }

            var block = lines.Length / n;
            if (Enumerable.Range(1, n - 1).All(i => Sound.Alike(lines.AsSpan(0, block), lines.AsSpan(i * block, block))))
            {
                yield return One(lines[..block], p => p.Repeat(times));
            }

            if (Enumerable.Range(0, lines.Length).All(i => lines[i].SoundsAs(lines[i - (i % times)])))
            {
                yield return One([.. lines.Where((_, i) => i % times == 0)], p => p.EachLine(times));
            }
        }

        for (var n = 2; n <= 6; n++)
        {
            var times = n;
            if (lines.All(l => l.Notes.Count % times == 0 && Enumerable.Range(0, l.Notes.Count).All(i => l.Notes[i].Tone == l.Notes[i - (i % times)].Tone)))
            {
                yield return One(
                    [.. lines.Select(l => new Line(Enumerable.Range(0, l.Notes.Count / times).Select(i => l.Notes[i * times] with { Rest = l.Notes[(i * times) + times - 1].Rest }).ToValueList()))],
                    p => p.EachNote(times));
            }
        }
    }

    private static IEnumerable<SearchGuess> Turns(Line[] lines, Scale scale)
    {
        if (lines.Length % 2 == 0)
        {
            yield return One(lines[..(lines.Length / 2)], p => p.UpDown());
        }

        if (lines.All(l => l.Notes.Count % 2 == 1) && lines.Any(l => l.Notes.Count > 1))
        {
            yield return One([.. lines.Select(l => l.Part(0, (l.Notes.Count / 2) + 1))], p => p.ThereAndBack());
        }

        Line[] turned = new FixedLines([.. lines]).Reversed().Expand(scale).Lines.AsSpan().ToArray();
        yield return One(turned, p => scale.IsSymmetric ? p.Reversed() : p.Swapped().Reversed());
        yield return One(turned, p => p.Backwards());
    }

    private static IEnumerable<SearchGuess> Orders(Line[] lines)
    {
        if (lines.Length < 2)
        {
            yield break;
        }

        yield return One([.. Enumerable.Reverse(lines)], p => p.LastFirst());
        for (var n = 1; n <= Math.Min(4, lines.Length - 1); n++)
        {
            var count = n;
            yield return One([.. lines[^n..], .. lines[..^n]], p => p.Rotate(count), true);
        }

        foreach (var order in (int[][])[[2, 1], [1, 3, 2], [2, 3, 1], [3, 1, 2], [3, 2, 1]])
        {
            if (order.Length <= lines.Length)
            {
                var before = new Line[order.Length];
                for (var i = 0; i < order.Length; i++)
                {
                    before[order[i] - 1] = lines[i];
                }

                yield return One([.. before, .. lines[order.Length..]], p => p.Order(order), true);
            }
        }
    }

    private static IEnumerable<SearchGuess> Pieces(Line[] lines)
    {
        if (Grown(lines) is { } whole)
        {
            yield return One(whole, p => p.Grow());
        }

        var longest = lines.Max(l => l.Notes.Count);
        if (lines.Length < 2)
        {
            yield break;
        }

        if (longest >= 2 && Slid(lines, longest) is { } slid)
        {
            yield return One(slid, p => p.Windows(longest));
        }

        // Pieces of the same number of notes, but for the last of each line that was split.
        if (2 * lines.Count(l => l.Notes.Count == longest) < lines.Length)
        {
            yield break;
        }

        yield return One([Joined(lines)], p => p.Split(longest));
        for (var n = 2; n <= Math.Min(5, lines.Length / 2); n++)
        {
            if (lines.Length % n == 0)
            {
                yield return One([.. lines.Chunk(n).Select(Joined)], p => p.Split(longest), true);
            }
        }
    }

    /// <summary>The last line of each group of beginnings.</summary>
    private static Line[]? Grown(Line[] lines)
    {
        var whole = new List<Line>();
        for (var i = 0; i < lines.Length; i++)
        {
            var continues = i + 1 < lines.Length
                && lines[i + 1].Notes.Count == lines[i].Notes.Count + 1
                && lines[i + 1].Part(0, lines[i].Notes.Count).SoundsAs(lines[i]);
            var begins = i == 0 || whole.Count > 0 && whole[^1] == lines[i - 1];
            if (begins && lines[i].Notes.Count > 2)
            {
                return null;
            }

            if (!continues)
            {
                whole.Add(lines[i]);
            }
        }

        return whole.Count < lines.Length ? [.. whole] : null;
    }

    /// <summary>The lines over which a window slid.</summary>
    private static Line[]? Slid(Line[] lines, int width)
    {
        var whole = new List<List<LineNote>>();
        for (var i = 0; i < lines.Length; i++)
        {
            var overlaps = i > 0 && lines[i].Notes.Count == width && lines[i - 1].Notes.Count == width
                && lines[i].Part(0, width - 1).SoundsAs(lines[i - 1].Part(1, width - 1));
            if (overlaps)
            {
                whole[^1].Add(lines[i].Notes[^1]);
            }
            else
            {
                whole.Add([.. lines[i].Notes]);
            }
        }

        return whole.Count < lines.Length ? [.. whole.Select(n => new Line(n.ToValueList()))] : null;
    }

    private static IEnumerable<SearchGuess> Interleavings(Line[] lines)
    {
        for (var first = 1; first < lines.Length; first++)
        {
            var second = lines.Length - first;
            var shared = Math.Min(first, second);
            Line[] rest = lines[(2 * shared)..];
            Line[] one = [.. Enumerable.Range(0, shared).Select(i => lines[2 * i]), .. first > second ? rest : []];
            Line[] other = [.. Enumerable.Range(0, shared).Select(i => lines[(2 * i) + 1]), .. second > first ? rest : []];
            yield return new SearchGuess([one, other], p => p[0].Alternate(p[1]), Math.Abs(first - second) > 1);
        }

        // Lines of the same number of notes woven, or each line woven with one of a constant number of notes.
        if (lines.All(l => l.Notes.Count % 2 == 0))
        {
            yield return Woven(lines, l => l.Notes.Count / 2, l => l.Notes.Count / 2);
        }

        var least = lines.Min(l => l.Notes.Count);
        for (var constant = 1; constant <= Math.Min(4, least - 1); constant++)
        {
            var count = constant;
            yield return Woven(lines, l => l.Notes.Count - count, _ => count);
            yield return Woven(lines, _ => count, l => l.Notes.Count - count);
        }

        // One pattern can have fewer lines: the other's follow as they are.
        for (var shared = 1; shared < Math.Min(12, lines.Length); shared++)
        {
            var woven = lines[..shared];
            for (var constant = 1; constant <= Math.Min(6, woven.Min(l => l.Notes.Count) - 1); constant++)
            {
                var count = constant;
                var (one, other) = (Woven(woven, l => l.Notes.Count - count, _ => count), Woven(woven, _ => count, l => l.Notes.Count - count));
                yield return one with { Before = [[.. one.Before[0], .. lines[shared..]], one.Before[1]] };
                yield return other with { Before = [other.Before[0], [.. other.Before[1], .. lines[shared..]]] };
            }
        }
    }

    private static SearchGuess Woven(Line[] lines, Func<Line, int> first, Func<Line, int> second)
    {
        var one = new Line[lines.Length];
        var other = new Line[lines.Length];
        for (var l = 0; l < lines.Length; l++)
        {
            var notes = lines[l].Notes;
            var shared = Math.Min(first(lines[l]), second(lines[l]));
            var rest = notes.Skip(2 * shared);
            one[l] = new Line(Enumerable.Range(0, shared).Select(i => notes[2 * i]).Concat(first(lines[l]) > shared ? rest : []).ToValueList());
            other[l] = new Line(Enumerable.Range(0, shared).Select(i => notes[(2 * i) + 1]).Concat(second(lines[l]) > shared ? rest : []).ToValueList());
        }

        return new SearchGuess([one, other], p => p[0].Weave(p[1]), true);
    }

    private static IEnumerable<SearchGuess> Returns(Line[] lines)
    {
        for (var step = 0; step <= 2; step++)
        {
            var to = step;
            foreach (var home in lines.Where(l => l.Notes.Count > 1).Select(l => l.Notes[^1].Tone).Concat(lines.Where(l => l.Notes.Count > 1).Select(l => l.Notes[1].Tone)).Distinct().Take(2))
            {
                if (Stripped(lines, home) is { } before)
                {
                    yield return One(before, p => p.Returning(to));
                }
            }
        }
    }

    private static Line[]? Stripped(Line[] lines, ScaleTone home)
    {
        var stripped = new Line[lines.Length];
        var some = false;
        for (var l = 0; l < lines.Length; l++)
        {
            var notes = new List<LineNote>();
            for (var i = 0; i < lines[l].Notes.Count; i++)
            {
                var note = lines[l].Notes[i];
                if (note.Tone == home)
                {
                    notes.Add(note);
                    continue;
                }

                if (i + 1 >= lines[l].Notes.Count || lines[l].Notes[i + 1].Tone != home)
                {
                    return null;
                }

                notes.Add(note with { Rest = lines[l].Notes[i + 1].Rest });
                some = true;
                i++;
            }

            stripped[l] = new Line(notes.ToValueList());
        }

        return some ? stripped : null;
    }

    private static Line Joined(Line[] lines) => new(lines.SelectMany(l => l.Notes.AsEnumerable()).ToValueList());
}
