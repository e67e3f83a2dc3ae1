using System.Xml.Linq;

namespace Warmup.MusicXml.Tests;

/// <summary>What must hold of every file, whatever the score.</summary>
internal static class Checks
{
    public static void All(Score score)
    {
        var read = ReadScore.Of(score);
        MeasuresAreFull(read);
        ValuesAgree(read);
        TupletsAreWhole(read);
        BeamsAreWhole(read);
        AccidentalsSayThePitch(read);
        ReadsBack(score, read);
    }

    public static void MeasuresAreFull(ReadScore read)
    {
        foreach (var measure in read.Measures)
        {
            Assert.Equal(measure.Length, measure.Notes.Where(n => !n.IsInChord).Aggregate(Rational.Zero, (sum, n) => sum + n.Length));
        }
    }

    /// <summary>A note's duration is its note value with its dots, times normal over actual notes.</summary>
    public static void ValuesAgree(ReadScore read)
    {
        foreach (var note in read.Notes)
        {
            Assert.True(note.Length > 0, "a duration of 0");
            Assert.Equal(note.Written, note.Length);
            Assert.InRange(note.Element.Elements("dot").Count(), 0, 1);
        }
    }

    public static void TupletsAreWhole(ReadScore read)
    {
        foreach (var measure in read.Measures)
        {
            (int Actual, int Normal, string NormalType)? open = null;
            var sum = Rational.Zero;
            foreach (var note in measure.Notes)
            {
                Assert.Equal(note.TupletStart, note.Element.Descendants("tuplet").Any(t => (string?)t.Attribute("bracket") == "yes"));
                if (note.TupletStart)
                {
                    Assert.Null(open);
                    open = Assert.NotNull(note.Modification);
                    sum = Rational.Zero;
                }

                Assert.Equal(open, note.Modification);
                sum += note.Length;
                if (note.TupletStop)
                {
                    // A whole tuplet lasts as long as its normal notes.
                    var (_, normal, type) = Assert.NotNull(open);
                    Assert.Equal(ReadNote.Value(type) * normal, sum);
                    open = null;
                }
            }

            Assert.Null(open);
        }
    }

    /// <summary>On every level a beam begins before it goes on or ends, and nothing but beamed notes lies between.</summary>
    public static void BeamsAreWhole(ReadScore read)
    {
        foreach (var measure in read.Measures)
        {
            var open = new HashSet<int>();
            foreach (var note in measure.Notes)
            {
                var flags = note.IsRest ? 0 : note.Type switch { "eighth" => 1, "16th" => 2, "32nd" => 3, "64th" => 4, "128th" => 5, _ => 0 };
                Assert.Contains(note.Beams.Length, new[] { 0, flags });
                for (var level = 1; level <= Math.Max(note.Beams.Length, open.Count == 0 ? 0 : open.Max()); level++)
                {
                    var value = level <= note.Beams.Length ? note.Beams[level - 1] : null;
                    Assert.Equal(open.Contains(level), value is "continue" or "end");
                    if (value is "begin")
                    {
                        open.Add(level);
                    }
                    else if (value is "end")
                    {
                        open.Remove(level);
                    }
                }
            }

            Assert.Empty(open);
        }
    }

    /// <summary>
    /// A reader that looks at signature and accidentals alone, which hold for their letter and octave to the bar line, sees the right pitch.
    /// </summary>
    public static void AccidentalsSayThePitch(ReadScore read)
    {
        var fifths = 0;
        var tied = false;
        foreach (var measure in read.Measures)
        {
            if (measure.Element.Elements("attributes").Elements("key").LastOrDefault() is { } key)
            {
                fifths = (int)key.Element("fifths")!;
            }

            var written = new Dictionary<(string, int), int>();
            foreach (var note in measure.Notes)
            {
                if (note.Pitch is { } pitch && !tied)
                {
                    var place = (pitch.Step, pitch.Octave);
                    if (note.Accidental is { } accidental)
                    {
                        written[place] = accidental switch { "natural" => 0, "sharp" => 1, "flat" => -1, "double-sharp" => 2, "flat-flat" => -2, _ => 99 };
                    }

                    Assert.Equal(pitch.Alter, written.TryGetValue(place, out var holds) ? holds : InSignature(fifths, pitch.Step));
                }
                else
                {
                    Assert.Null(note.Accidental);
                }

                tied = note.TieStart;
            }
        }
    }

    public static void ReadsBack(Score score, ReadScore read)
    {
        var expected = new List<SungNote>();
        var offset = Rational.Zero;
        foreach (var section in score.Sections)
        {
            // Quarter notes an akshara: the file's own time.
            var quarters = 4 * section.Meter.BeatValue;
            for (var i = 0; i < section.Notes.Count; i++)
            {
                var note = section.Notes[i];
                var name = section.PitchOf(note).Name;
                var breathes = section.Breaths.AsSpan().ToArray().Any(b => b.AfterNote == i);
                expected.Add(new SungNote(
                    (name.Letter.ToString(), name.Alteration, name.Octave),
                    offset + (note.Onset * quarters),
                    note.Length * quarters,
                    OctaveDotted.Of(section.SyllableOf(note), section.PitchOf(note).Tone.Octave),
                    breathes,
                    note.IsHeld && section.Meter.IsFree));
            }

            offset += section.Length * quarters;
        }

        Assert.Equal(expected, read.Sung());
        Assert.Equal(score.Sections.AsSpan().ToArray().Sum(s => s.Measures.Count), read.Measures.Count);
    }

    // The order in which sharps are added, and flats from its end.
    private static int InSignature(int fifths, string step)
    {
        var place = "FCGDAEB".IndexOf(step, StringComparison.Ordinal);
        return place < fifths ? 1 : 6 - place < -fifths ? -1 : 0;
    }
}
