namespace Warmup.Tests;

/// <summary>What a listener hears of a line (tones, lengths, silences, words, slides, short notes, swells) and what he does not hear (where a note came from).</summary>
public class SoundsAlikeTests
{
    private static readonly LineNote Note = new(ScaleTone.Parse("G3"), ScaleDirection.Ascent, Approach.Leap, new Rational(3, 2)) { Rest = 2, Sung = "ma" };

    public static TheoryData<string> Heard => ["tone", "octave", "length", "part of a unit", "silence", "no silence", "word", "no word", "joining", "loudness"];

    private static LineNote Changed(string what) => what switch
    {
        "tone" => Note with { Tone = ScaleTone.Parse("G2") },
        "octave" => Note with { Tone = ScaleTone.Parse("G3'") },
        "length" => Note with { Length = new Rational(5, 2) },
        "part of a unit" => Note with { Length = new Rational(3, 4) },
        "silence" => Note with { Rest = 1 },
        "no silence" => Note with { Rest = 0 },
        "word" => Note with { Sung = "me" },
        "no word" => Note with { Sung = null },
        "joining" => Note with { Joining = Joining.Glide },
        _ => Note with { Loudness = Loudness.SwellAndFade },
    };

    [Theory]
    [MemberData(nameof(Heard))]
    public void Notes_that_differ_in_one_thing_that_is_heard_do_not_sound_alike(string what)
    {
        Assert.False(Note.SoundsAs(Changed(what)));
        Assert.False(Changed(what).SoundsAs(Note));
        Assert.NotEqual(Note, Changed(what));
        Assert.False(new Line([Note, Changed(what)]).SoundsAs(new Line([Note, Note])));
    }

    [Fact]
    public void Where_a_note_came_from_is_not_heard()
    {
        var other = Note with { Direction = ScaleDirection.Descent, Approach = Approach.Descent };
        Assert.True(Note.SoundsAs(other));
        Assert.NotEqual(Note, other);
        Assert.True(new Line([Note, other]).SoundsAs(new Line([other, Note])));
        Assert.False(new Line([Note, Note]).SoundsAs(new Line([Note])));
        Assert.False(new Line([Note]).SoundsAs(new Line([Note, Note])));
        Assert.Equal((ScaleDirection.Descent, Approach.Descent), (other.Direction, other.Approach));
    }

    [Fact]
    public void Joining_and_loudness_are_kept_and_others_than_the_defined_are_refused()
    {
        var changed = Note with { Joining = Joining.Staccato, Loudness = Loudness.SwellAndFade };
        Assert.Equal((Joining.Staccato, Loudness.SwellAndFade), (changed.Joining, changed.Loudness));
        Assert.Equal((Joining.Plain, Loudness.Even), (Note.Joining, Note.Loudness));
        Assert.Equal(Joining.Glide, (Note with { Joining = Joining.Glide }).Joining);
        Assert.Contains("Joining", Assert.Throws<ArgumentOutOfRangeException>(() => Note with { Joining = (Joining)3 }).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => Note with { Joining = (Joining)(-1) });
        Assert.Contains("Loudness", Assert.Throws<ArgumentOutOfRangeException>(() => Note with { Loudness = (Loudness)2 }).Message, StringComparison.Ordinal);
        Assert.Contains("Approach", Assert.Throws<ArgumentOutOfRangeException>(() => Note with { Approach = (Approach)(-1) }).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_lines_units_are_its_lengths_and_silences()
    {
        var line = new Line([Note, default]);
        Assert.Equal(new Rational(9, 2), line.Units); // 3/2 + 2 + 1
        Assert.Equal("G - - S", line.ToNotation()); // whole units only
        Assert.Equal(("G S", "G3 S"), (line.ToLetters(), line.ToTones()));
        Assert.Equal("S , ,", new Line([default(LineNote) with { Length = 3 }]).ToNotation());
        Assert.Equal("S", new Line([default(LineNote) with { Length = new Rational(1, 2) }]).ToNotation());
    }

    [Fact]
    public void Slides_short_notes_and_swells_reach_every_note_and_the_last_word_counts()
    {
        static (Joining, Loudness)[] Of(string pattern) => [.. Pattern.Parse(pattern).Expand(Scale.Parse("S R2 G3 P D2 S'")).Lines.SelectMany(l => l.Notes.Select(n => (n.Joining, n.Loudness)))];
        Assert.Equal([(Joining.Glide, Loudness.Even), (Joining.Glide, Loudness.Even), (Joining.Glide, Loudness.Even)], Of("[S R / G].glide"));
        Assert.Equal([(Joining.Staccato, Loudness.SwellAndFade), (Joining.Staccato, Loudness.SwellAndFade)], Of("[S R].glide.swell.staccato"));
        Assert.Equal("run.glide.swell.staccato", Pattern.Run.Glide().Swell().Staccato().ToString());
    }
}
