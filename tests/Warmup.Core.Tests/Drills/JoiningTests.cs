using FsCheck.Xunit;
using Warmup.Testing;

namespace Warmup.Tests;

/// <summary>
/// Slides, short notes and swells. Source: the words' own meaning (each note of each line; a slide and a swell turn in the middle of the
/// note, a short note falls silent there), checked note by note; the exercises are common practice.
/// </summary>
public class JoiningTests
{
    private static readonly Drill Ladder = new()
    {
        Scale = Scale.Parse("S R2 G3 P D2 S'"),
        Pattern = Pattern.Ladder,
        Tonic = Tonic.Parse("G3"),
    };

    private static ValueList<ScoreNote> Notes(string pattern, Delivery? delivery = null) =>
        (Ladder with { Pattern = Pattern.Parse(pattern), Delivery = delivery ?? Delivery.Continuous }).ToScore().Sections[0].Notes;

    [Theory]
    [InlineData("ladder.glide")]
    [InlineData("ladder.staccato")]
    [InlineData("(ladder + run).swell.up-down")]
    [InlineData("[S , P , S].glide.swell.sung(oo)")]
    public void The_words_are_read_and_printed(string text)
    {
        var pattern = Pattern.Parse(text);
        Assert.Equal(text, pattern.ToString());
        using var file = new MemoryStream();
        PatternFile.Write(pattern, file);
        Assert.Equal(pattern, PatternFile.Read(file.ToArray()));
        Assert.Contains("each note", pattern.Describe(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("ladder.glide.glide", "ladder.glide")]
    [InlineData("ladder.glide.staccato", "ladder.staccato")]
    [InlineData("ladder.swell.swell", "ladder.swell")]
    [InlineData("ladder.glide.reversed.reversed", "ladder.glide")]
    [InlineData("ladder.glide + run.glide", "(ladder + run).glide")]
    [InlineData("ladder.take(2).glide", "ladder.glide.take(2)")]
    public void They_have_normal_forms(string text, string normal)
    {
        Assert.Equal(Pattern.Parse(normal).Normalize(), Pattern.Parse(text).Normalize());
        var scale = Scale.Parse("S R2 G3 P D2 S' / S' N3 D2 P M1 G3 R2 S");
        Assert.Equal(Pattern.Parse(normal).Expand(scale).Lines, Pattern.Parse(text).Expand(scale).Lines);
    }

    [Property(Arbitrary = [typeof(WarmupArbitraries)])]
    public void The_normal_form_sounds_the_same(Pattern p, Scale scale)
    {
        Func<Pattern, Pattern>[] words = [x => x.Glide(), x => x.Staccato(), x => x.Swell()];
        Func<Pattern, Pattern>[] others =
        [
            x => x.Reversed(), x => x.Backwards(), x => x.Mirrored(), x => x.UpDown(), x => x.Take(2), x => x.LastFirst(), x => x.Hold(2), x => x.Join(),
            x => x.Returning(1), x => x.EachNote(2), x => x.Glide(), x => x.Swell(), x => x + p, x => x.Weave(p.Staccato()),
        ];
        foreach (var (word, other) in words.SelectMany(w => others.Select(o => (w, o))))
        {
            foreach (var q in (Pattern[])[other(word(p)), word(other(p))])
            {
                Assert.Equal(q.TryExpand(scale, out var lines, out _), q.Normalize().TryExpand(scale, out var same, out _));
                Assert.Equal(lines?.Lines ?? default, same?.Lines ?? default, (a, b) => a.Count == b.Count && a.Zip(b).All(l => l.First.SoundsAs(l.Second)));
            }
        }
    }

    [Theory]
    [InlineData("ladder.glide", "ladder")]
    [InlineData("ladder.staccato", "ladder.glide")]
    [InlineData("ladder.swell", "ladder")]
    public void Lines_that_differ_in_them_are_not_heard_as_the_same(string one, string other)
    {
        var (a, b) = (Pattern.Parse(one).Expand(Ladder.Scale), Pattern.Parse(other).Expand(Ladder.Scale));
        Assert.Equal(b.ToTones(), a.ToTones());
        Assert.NotEqual(b, a);
        Assert.All(a.Lines.Zip(b.Lines), l => Assert.False(l.First.SoundsAs(l.Second)));
    }

    [Fact]
    public void Backwards_keeps_how_notes_are_sung()
    {
        var scale = Scale.Parse("S R2 G3 P D2 S' / S' N3 D2 P M1 G3 R2 S");
        var lines = Pattern.Parse("ladder.glide.swell.there-and-back").Expand(scale).Lines;
        Assert.All(lines.SelectMany(l => l.Notes), n => Assert.Equal((Joining.Glide, Loudness.SwellAndFade), (n.Joining, n.Loudness)));
    }

    [Theory]
    [InlineData("[S , P , S , ,].glide", "12 23 3-")] // the last note of a line has no next one
    [InlineData("[S , P - G ,].glide", "12 2- 3-")] // none over a silence
    [InlineData("[S S P ,].glide", "1- 23 3-")] // none to the same pitch
    [InlineData("[S P / G P].glide", "12 2- 34 4-")] // none from line to line
    public void A_note_slides_where_another_pitch_follows_at_once_in_its_line(string pattern, string slides)
    {
        var notes = Notes(pattern);
        var found = notes.Select((n, i) => $"{i + 1}{(n.Joining == Joining.Glide ? $"{i + 2}" : "-")}");
        Assert.Equal(slides, string.Join(' ', found));
        Assert.All(notes, n => Assert.Equal(n.Onset + (n.Length / 2), n.Middle));
        Assert.All(notes, n => Assert.Equal(n.End, n.SoundEnd));
    }

    [Fact]
    public void A_short_note_falls_silent_in_its_middle_and_a_held_one_is_not_short()
    {
        var notes = Notes("[S G , P].staccato", Delivery.LineByLine);
        Assert.Equal([new Rational(1, 2), 2], notes.Take(2).Select(n => n.SoundEnd));
        Assert.Equal((true, Joining.Plain, notes[2].End), (notes[2].IsHeld, notes[2].Joining, notes[2].SoundEnd));
        Assert.Equal([Joining.Staccato, Joining.Staccato], notes.Take(2).Select(n => n.Joining));
    }

    [Fact]
    public void Nothing_slides_over_a_breath()
    {
        var score = (Ladder with { Pattern = Pattern.Parse("[S , , P].glide.swell") }).ToScore();
        var breathed = score.WithBreaths(0, [new Breath(2, 1, 0)]).Sections[0];
        Assert.Equal(Joining.Glide, score.Sections[0].Notes[0].Joining);
        Assert.Equal((Joining.Plain, Loudness.SwellAndFade), (breathed.Notes[0].Joining, breathed.Notes[0].Loudness));
    }

    [Fact]
    public void Drills_without_them_keep_their_grid()
    {
        Assert.Equal(1, Ladder.ToScore().Sections[0].Resolution);
        Assert.Equal(2, (Ladder with { Pattern = Pattern.Ladder.Swell() }).ToScore().Sections[0].Resolution);
    }

    [Fact]
    public void Answers_and_other_voices_keep_them()
    {
        var score = (Ladder with { Pattern = Pattern.Parse("run.glide.swell") }).ToScore();
        Assert.All(score.WithAnswers().Sections[0].Notes.SkipLast(1), n => Assert.Equal(Joining.Glide, n.Joining));
        Assert.All(score.Sections[0].Transposed(5).Notes, n => Assert.Equal(Loudness.SwellAndFade, n.Loudness));
    }

    [Theory]
    [InlineData("voice-1", "Slides")]
    [InlineData("voice-6", "Slides")]
    [InlineData("voice-7", "messa di voce")]
    [InlineData("voice-8", "Staccato")]
    [InlineData("choir-7", "Lip trill")]
    [InlineData("choir-8", "straw")]
    public void What_asks_more_of_a_voice_carries_its_caution(string exercise, string caution)
    {
        var score = (Ladder with { Scale = Catalogue.Default.Read("Major"), Pattern = Repertoire.Find(exercise)!.Pattern }).ToScore();
        Assert.Equal(Cautions.All, score.Cautions.Take(Cautions.All.Count));
        var own = Assert.Single(score.Cautions.Skip(Cautions.All.Count));
        Assert.Contains(caution, own.Text, StringComparison.Ordinal);
        Assert.NotEmpty(own.Source);
        Assert.Equal(Cautions.All, Ladder.ToScore().Cautions);
    }

    [Fact]
    public void The_exercises_are_what_their_titles_say() // common practice, from memory
    {
        var major = Catalogue.Default.Read("Major");
        Assert.Equal(
            ["S P S", "S S' S", "S", "S G P G S"],
            Repertoire.Voice.Take(4).Select(e => e.Pattern.Expand(major).ToLetters()));
        Assert.All(Repertoire.Voice.Take(4).Zip(Repertoire.Voice.Skip(4)), pair =>
        {
            var (svaras, choir) = (pair.First.Pattern.Expand(major).Lines[0].Notes, pair.Second.Pattern.Expand(major).Lines[0].Notes);
            Assert.Equal(svaras.Select(n => (n.Tone, n.Length, n.Joining, n.Loudness)), choir.Select(n => (n.Tone, n.Length, n.Joining, n.Loudness)));
            Assert.All(choir, n => Assert.NotNull(n.Sung));
        });
    }

    [Fact]
    public void Values_that_are_not_defined_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new LineNote() with { Joining = (Joining)3 });
        Assert.Throws<ArgumentOutOfRangeException>(() => new LineNote() with { Loudness = (Loudness)2 });
    }

    [Fact]
    public void A_note_of_a_line_stays_small() => Assert.InRange(System.Runtime.CompilerServices.Unsafe.SizeOf<LineNote>(), 1, 32);
}
