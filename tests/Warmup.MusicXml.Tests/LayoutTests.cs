namespace Warmup.MusicXml.Tests;

/// <summary>
/// How lengths become written values, in worked measures: w h q e s for whole to sixteenth, then 32 64 128; a dot behind, the tuplet's
/// number and a colon in front, r for a rest, ~ for a tie to the next. Source: counted by hand; where several ways are right, the
/// project's own choice: cuts at the tala's groups, then at beats; tuplets that save the most notes, and then the narrowest.
/// </summary>
public class LayoutTests
{
    [Theory]
    [InlineData(1, 4, 60, "q h.~ h~ q rq")] // R from 1 to 7 over the groups 4+2+2, breath from 7 to 8
    [InlineData(2, 4, 60, "e e~ h.~ h~ q rq")]
    [InlineData(3, 4, 60, "s e.~ h.~ h~ q rq")]
    [InlineData(1, 4, 75, "q h.~ h~ e. rs rq")] // a breath of 5/4: from 6 3/4
    [InlineData(1, 4, 80, "q h.~ h~ 3:q 3:re rq")] // a breath of 4/3: from 6 2/3
    [InlineData(1, 4, 72, "q h.~ h~ e.~ 3:64 3:r32 r32 rq")] // a breath of 6/5, rounded up to 29/24: from 6 19/24 = 6 3/4 + 1/24
    [InlineData(3, 3, 60, "3:e 3:q~ h.~ h~ q rq")]
    [InlineData(2, 3, 60, "3:q 3:h~ h~ h~ q rq")]
    [InlineData(1, 3, 60, "3:h 3:w~ h~ q rq")]
    [InlineData(3, 5, 60, "5:s 5:q~ h.~ h~ q rq")]
    public void The_first_line_in_Adi_line_by_line(int kalam, int gati, int tempo, string expected)
    {
        var drill = Drills.Of() with { Speeds = [new Speed(kalam, gati)], Tempo = tempo, Delivery = Delivery.LineByLine with { BreathGrid = 24 } };
        Assert.Equal(expected, Text(ReadScore.Of(drill.ToScore()).Measures[0]));
    }

    [Theory]
    [InlineData(72, "q h.~ h~ e re rq")] // a breath of 6/5, rounded up to 3/2: from 6 1/2
    [InlineData(100, "q h.~ h rh")] // a breath of 5/3, rounded up to 2: from 6
    public void By_default_a_breath_is_written_with_plain_values_at_any_tempo(int tempo, string expected)
    {
        var drill = Drills.Of() with { Tempo = tempo, Delivery = Delivery.LineByLine };
        Assert.Equal(expected, Text(ReadScore.Of(drill.ToScore()).Measures[0]));
    }

    [Fact]
    public void A_speed_that_does_not_fill_beats_fills_tuplets_of_several_beats()
    {
        // Tisra gati in the second speed: three notes in two aksharas, twelve in an avartana.
        var read = ReadScore.Of((Drills.Of(pattern: "figure(1 2 3).take(4)") with { Speeds = [new Speed(2, 3)] }).ToScore());
        Assert.Equal("3:q 3:q 3:q 3:q 3:q 3:q 3:q 3:q 3:q 3:q 3:q 3:q", Text(Assert.Single(read.Measures)));
        Assert.Equal(4, read.Notes.Count(n => n.TupletStart));
    }

    [Fact]
    public void Silence_is_cut_at_the_groups_and_takes_no_dots()
    {
        // One note and a silence of seven aksharas in 4+2+2.
        var score = Drills.Of().ToScore(new Expansion([new Line([new LineNote(default, ScaleDirection.Ascent, Approach.Leap, 1)])], []));
        Assert.Equal("q rq rh rh rh", Text(Assert.Single(ReadScore.Of(score).Measures)));
    }

    [Fact]
    public void A_note_over_the_bar_line_is_tied()
    {
        var note = new LineNote(default, ScaleDirection.Ascent, Approach.Leap, 10);
        var read = ReadScore.Of(Drills.Of().ToScore(new Expansion([new Line([note])], [])));
        Assert.Equal(["w~ h~ h~", "h rh rh rh"], read.Measures.Select(Text));
    }

    [Fact]
    public void A_measure_of_one_anga_is_not_cut_inside()
    {
        // Rupaka, 2+4: a note of six aksharas is a half and, over the bar line, a whole; nothing of the avartana's groups lies in an anga.
        Assert.True(Meter.TryParse("rupaka", out var rupaka, out _));
        var line = new Line([new LineNote(default, ScaleDirection.Ascent, Approach.Leap, 6)]);
        var score = (Drills.Of() with { Meter = rupaka! }).ToScore(new Expansion([line], []));
        var read = ReadScore.Of(score, new MusicXmlOptions { Measure = MusicXmlMeasure.Anga });
        Assert.Equal(["h~", "w"], read.Measures.Select(Text));
    }

    /// <summary>
    /// Lengths and silences (r) in beats, and the written values of the first measure. Counted by hand after common practice: a value that is one note
    /// stays one where it begins on a beat; what begins inside a beat is cut at its end; silences take no dots; in a compound meter a beat is a
    /// dotted quarter.
    /// </summary>
    [Theory]
    [InlineData("4/4", "1/2 1/2 1 2", "e e q h")]
    [InlineData("4/4", "3/2 1/2 2", "q. e h")]
    [InlineData("4/4", "1/2 3/2 2", "e e~ q h")]
    [InlineData("4/4", "5/2 3/2", "h~ e e~ q")]
    [InlineData("4/4", "3 1", "h. q")]
    [InlineData("4/4", "1 3", "q h.")]
    [InlineData("4/4", "4", "w")]
    [InlineData("4/4", "1/4 3/4 3/4 1/4 2", "s e. e. s h")]
    [InlineData("4/4", "1/4 1/2 1/4 3", "s e s h.")]
    [InlineData("4/4", "1/8 7/8 3", "32 s.~ e h.")] // cut in the middle of the beat: three eighths of it are a dotted sixteenth
    [InlineData("4/4", "1 r3", "q rq rh")]
    [InlineData("4/4", "2 r2", "h rh")]
    [InlineData("4/4", "3 r1", "h. rq")]
    [InlineData("4/4", "1/2 r1/2 1/2 r1/2 2", "e re e re h")]
    [InlineData("3/4", "1 r2", "q rq rq")] // a silence of two beats begins on an odd one: no half
    [InlineData("5/4", "5", "w~ q")]
    [InlineData("2/2", "1/2 3/2", "q q~ h")]
    [InlineData("7/8", "1 3 3", "e q. q.")]
    [InlineData("6/8", "1 1", "q. q.")]
    [InlineData("6/8", "2", "h.")]
    [InlineData("6/8", "1/3 2/3 1", "e q q.")]
    [InlineData("6/8", "2/3 1/3 1", "q e q.")]
    [InlineData("6/8", "1/3 5/3", "e q~ q.")]
    [InlineData("6/8", "5/3 1/3", "q.~ q e")]
    [InlineData("6/8", "1/2 1/2 1", "e. e. q.")]
    [InlineData("6/8", "1 r1", "q. rq.")]
    [InlineData("9/8", "3", "h.~ q.")]
    [InlineData("9/8", "1 2", "q. h.")]
    [InlineData("12/8", "4", "w.")]
    [InlineData("12/8", "3 1", "h.~ q. q.")]
    [InlineData("12/8", "1 r3", "q. rq. rh.")]
    [InlineData("4/4", "1/3 1/3 1/3 3", "3:e 3:e 3:e h.")]
    [InlineData("4/4", "2/3 1/3 3", "3:q 3:e h.")]
    [InlineData("4/4", "1/3 2/3 3", "3:e 3:q h.")]
    [InlineData("4/4", "2/3 2/3 2/3 2", "3:q 3:q 3:q h")] // three in two beats
    [InlineData("4/4", "4/3 4/3 4/3", "3:h 3:h 3:h")]
    [InlineData("4/4", "1/5 1/5 1/5 1/5 1/5 3", "5:s 5:s 5:s 5:s 5:s h.")]
    [InlineData("4/4", "2/5 3/5 3", "5:e 5:e. h.")]
    [InlineData("4/4", "1/3 r2/3 3", "3:e 3:rq h.")]
    public void Worked_measures(string meter, string lengths, string expected)
    {
        var notes = new List<LineNote>();
        foreach (var text in lengths.Split(' '))
        {
            if (text[0] == 'r')
            {
                notes[^1] = notes[^1] with { Rest = Rational.Parse(text[1..]) };
            }
            else
            {
                notes.Add(default(LineNote) with { Length = Rational.Parse(text) });
            }
        }

        var score = (Drills.Of() with { Meter = Meter.Parse(meter) }).ToScore(new Expansion([new Line(notes.ToValueList())], []));
        Assert.Equal(expected, Text(ReadScore.Of(score).Measures[0]));
    }

    private static string Text(ReadMeasure measure) => string.Join(' ', measure.Notes.Select(n =>
        (n.Modification is { } m ? $"{m.Actual}:" : string.Empty)
        + (n.IsRest ? "r" : string.Empty)
        + n.Type switch { "whole" => "w", "half" => "h", "quarter" => "q", "eighth" => "e", "16th" => "s", var t => t!.Replace("nd", string.Empty, StringComparison.Ordinal).Replace("th", string.Empty, StringComparison.Ordinal) }
        + new string('.', n.Element.Elements("dot").Count())
        + (n.TieStart ? "~" : string.Empty)));
}
