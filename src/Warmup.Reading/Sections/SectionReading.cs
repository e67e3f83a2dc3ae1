using System.Globalization;

namespace Warmup.Reading;

/// <summary>Makes lines over a scale and a tonic of a section's notes.</summary>
internal sealed class SectionReading(RawPiece piece, RawPart part, RawSection section, ReadingOptions options, int sections)
{
    // MIDI performances fall between all grids: what has no place in a line goes to the nearest 960th of an akshara (the project's own setting).
    private const int Finest = 960;

    private static readonly Rational Least = new(1, Finest);

    private static readonly Rational[] Eduppus = [0, new(1, 4), new(1, 2), new(3, 4), 1];

    public ReadSection Read()
    {
        var notes = section.Notes;
        var proposals = default(ValueList<TonicProposal>);
        var tonic = options.Tonic ?? WrittenTonic();
        var scale = options.Scale ?? WrittenScale();
        var (starts, by) = LineFinder.Find(piece, part, section);
        if (tonic is null || scale is null)
        {
            proposals = TonicRanking.Rank(piece, section, starts, scale, tonic);
            tonic ??= proposals[0].Tonic;
            scale ??= proposals[0].Scale;
        }

        var meter = new MeterReading(piece, part, section).Read();
        var akshara = 4 * meter.BeatValue;
        var times = Times(notes, akshara);
        var tones = Tones(notes, scale, tonic);
        var (syllables, sung) = SyllableReading.Of(notes, tones, (message, onset) => Remark(RemarkKind.Syllable, message, onset));
        var (countIn, eduppu) = Beginning(times[0].Onset, meter);
        var lines = new Line[starts.Count];
        for (var l = 0; l < lines.Length; l++)
        {
            var end = l + 1 < lines.Length ? starts[l + 1] : notes.Length;
            lines[l] = LineOf(starts[l], end, times, tones, sung);
        }

        var (tempo, changes) = Tempi(akshara);
        KeyChanges();
        return new ReadSection(scale, tonic)
        {
            Number = section.Number,
            Title = PlainText.Of(section.Title.Length > 0 ? section.Title : piece.Title),
            Proposals = proposals,
            Meter = meter,
            Tempo = tempo,
            TempoChanges = changes,
            CountIn = countIn,
            Eduppu = eduppu,
            Repetitions = sections == 1 ? part.Repetitions : 1,
            Lines = lines.ToValueList(),
            LinesFoundBy = by,
            Syllables = syllables,
            Breaths = Breaths(times, times[0].Onset - (countIn * meter.Beats) - eduppu),
        };
    }

    private void KeyChanges()
    {
        var before = piece.Keys.FindLast(k => k.Onset <= section.Start);
        foreach (var key in piece.Keys)
        {
            if (key.Onset > section.Start && key.Onset < section.End && (key.Fifths, key.IsMinor) != (before.Fifths, before.IsMinor))
            {
                Remark(RemarkKind.KeyChange, "the key signature changes; the notes keep their pitches over one tonic", key.Onset);
            }

            before = key.Onset > section.Start ? key : before;
        }
    }

    private Tonic? WrittenTonic()
    {
        if (section.Head is not { } head)
        {
            return null;
        }

        var a4 = head.A4 ?? Tonic.StandardA4;
        return piece.TonicOffsets.TryGetValue(section.Number, out var cents) && cents != 0
            ? Tonic.FromHz(a4 * Math.Pow(2, (head.Tonic.Midi - 69 + (cents / 100)) / 12), a4)
            : Tonic.FromNote(head.Tonic, a4);
    }

    private Scale? WrittenScale()
    {
        if (section.Head is { } head)
        {
            if (head.FindScale(out var name) is { } scale)
            {
                return scale;
            }

            Remark(RemarkKind.Words, $"the scale {TextError.Quote(name)} is not in the catalogue; give its notes to read it as it was", section.Start);
            return null;
        }

        // A MIDI file has no scale, but this project's titles begin with its name.
        return piece.IsOurs && sections == 1 && piece.Title.IndexOf(':', StringComparison.Ordinal) is var colon and > 0 ? Catalogue.Default.Find(piece.Title[..colon])?.Scale : null;
    }

    /// <summary>Onsets and lengths in aksharas from the section's beginning, with the silence after each.</summary>
    private NoteTime[] Times(RawNote[] notes, Rational akshara)
    {
        var times = new NoteTime[notes.Length];
        var fits = true;
        for (var pass = 0; pass < 2; pass++)
        {
            for (var n = 0; n < notes.Length; n++)
            {
                var onset = (notes[n].Onset - section.Start) / akshara;
                var end = (notes[n].End - section.Start) / akshara;
                if (!fits)
                {
                    // Notes that are rounded to one point follow each other at the least distance.
                    onset = n == 0 ? Rounded(onset) : Rational.Max(Rounded(onset), times[n - 1].Onset + Least);
                    end = Rational.Max(Rounded(end), onset + Least);
                }

                times[n] = new NoteTime(onset, end - onset, default);
                if (n > 0)
                {
                    times[n - 1] = times[n - 1].Before(onset);
                }
            }

            var silence = Rational.Max(default, (section.End - notes[^1].End) / akshara);
            times[^1] = times[^1] with { Rest = notes[^1].HasBreath || part.Repetitions > 1 ? silence : default };
            if (Array.TrueForAll(times, t => t.Fits))
            {
                break;
            }

            fits = false;
            if (pass == 0)
            {
                Remark(RemarkKind.Time, "onsets and lengths were taken to the nearest 960th of an akshara", notes[0].Onset);
            }
        }

        for (var n = 0; n < times.Length; n++)
        {
            if (!times[n].Fits)
            {
                Remark(RemarkKind.Time, "a note or a silence of more than 4096 aksharas was shortened to them", notes[n].Onset);
                times[n] = times[n].Bounded();
            }
        }

        return times;
    }

    private static Rational Rounded(Rational at) => new(((at * Finest) + new Rational(1, 2)).Floor(), Finest);

    private ScaleTone[] Tones(RawNote[] notes, Scale scale, Tonic tonic)
    {
        var namer = new ToneNamer(scale, tonic, tonic.TypedName);
        var tones = new ScaleTone[notes.Length];
        for (var n = 0; n < notes.Length; n++)
        {
            tones[n] = namer.Of(notes[n], out var isInScale);
            if (!isInScale)
            {
                Remark(RemarkKind.OutsideScale, $"{tones[n]} ({notes[n].Name ?? NoteName.FromMidi(notes[n].Midi)}) is not in {scale.Name}", notes[n].Onset);
            }
        }

        return tones;
    }

    private (int CountIn, Rational Eduppu) Beginning(Rational silence, Meter meter)
    {
        var countIn = meter.IsFree ? 0 : (int)Math.Min((silence / meter.Beats).Floor(), Drill.LongestCountIn);
        var left = silence - (countIn * meter.Beats);
        if (Eduppus.Contains(left))
        {
            return (countIn, left);
        }

        Remark(RemarkKind.Time, $"the silence of {left} aksharas before the first note was left out", section.Notes[0].Onset);
        return (countIn, default);
    }

    private Line LineOf(int start, int end, NoteTime[] times, ScaleTone[] tones, string?[]? sung)
    {
        var notes = new LineNote[end - start];
        for (var n = start; n < end; n++)
        {
            var direction = GoesForward(tones.AsSpan(start, end - start), n - start) ? ScaleDirection.Ascent : ScaleDirection.Descent;
            var raw = section.Notes[n];
            var slides = raw.Joining == Joining.Glide;
            var joining = slides && (n + 1 == end || times[n].Rest.Sign > 0 || tones[n + 1] == tones[n]) ? Joining.Plain : raw.Joining;
            notes[n - start] = new LineNote(tones[n], direction, Approach.Leap, times[n].Length)
            {
                Rest = times[n].Rest,
                Sung = sung?[n],
                Joining = joining,
                Loudness = raw.Loudness,
            };
        }

        return new Line(notes.ToValueList());
    }

    /// <summary>Whether a line goes up from a note; where it ends, whether it came up.</summary>
    private static bool GoesForward(ReadOnlySpan<ScaleTone> line, int at)
    {
        for (var i = at + 1; i < line.Length; i++)
        {
            if (line[i] != line[at])
            {
                return line[i].CompareTo(line[at]) > 0;
            }
        }

        for (var i = at - 1; i >= 0; i--)
        {
            if (line[i] != line[at])
            {
                return line[i].CompareTo(line[at]) < 0;
            }
        }

        return true;
    }

    private ValueList<Breath> Breaths(NoteTime[] times, Rational shift)
    {
        var breaths = new List<Breath>();
        for (var n = 0; n < times.Length; n++)
        {
            if (section.Notes[n].HasBreath && times[n].Rest.Sign > 0)
            {
                breaths.Add(new Breath(times[n].Onset + times[n].Length - shift, times[n].Rest, n));
            }
        }

        return breaths.ToValueList();
    }

    private (Rational Tempo, ValueList<ReadTempo> Changes) Tempi(Rational akshara)
    {
        var changes = new List<ReadTempo>();
        var first = Warmup.Tempo.Default;
        foreach (var (onset, quarters) in piece.Tempi)
        {
            var tempo = quarters / akshara;
            if (onset <= section.Start)
            {
                first = tempo;
            }
            else if (onset < section.End && tempo != (changes.Count == 0 ? first : changes[^1].Tempo))
            {
                changes.Add(new ReadTempo((onset - section.Start) / akshara, tempo));
            }
        }

        if (first < Warmup.Tempo.Slowest || first > Warmup.Tempo.Fastest)
        {
            var kept = Rational.Max(Warmup.Tempo.Slowest, Rational.Min(Warmup.Tempo.Fastest, first));
            Remark(RemarkKind.Tempo, $"a tempo of {first.ToDouble().ToString("0.##", CultureInfo.InvariantCulture)} aksharas a minute became {kept}", section.Start);
            first = kept;
        }

        if (changes.Count > 0)
        {
            Remark(RemarkKind.Tempo, "the tempo changes; a drill made of the section keeps its first", section.Start + (changes[0].Onset * akshara));
        }

        return (first, changes.ToValueList());
    }

    private void Remark(RemarkKind kind, string message, Rational onset) => piece.Remarks.Add(kind, message, part.Place(onset));
}
