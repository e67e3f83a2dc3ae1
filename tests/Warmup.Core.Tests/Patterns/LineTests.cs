namespace Warmup.Tests;

/// <summary>Lines and notes that a caller builds: what cannot be sung is refused when it is built. The bounds are the project's own.</summary>
public class LineTests
{
    private static readonly LineNote Note = new(default, ScaleDirection.Ascent, Approach.Leap, 1);

    [Fact]
    public void The_default_note_can_be_sung()
    {
        LineNote note = default;
        Assert.Equal(Rational.One, note.Length);
        Assert.Equal(Rational.Zero, note.Rest);
        Assert.Null(note.Sung);
        Assert.Equal(note, new LineNote(default, ScaleDirection.Ascent, Approach.Leap, 1));
        Assert.Equal(note.GetHashCode(), (note with { Length = new Rational(2, 2) }).GetHashCode());
        Assert.Equal("S", new Line([note]).ToString());
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(-3, 1)]
    [InlineData(-1, 2)]
    [InlineData(1, 4_097)]
    [InlineData(4_097, 1)]
    [InlineData(8_193, 2)]
    [InlineData(4_095, 4_097)] // finer parts of a unit than a score can hold
    [InlineData(long.MaxValue, 1)]
    [InlineData(1, long.MaxValue)]
    public void Lengths_outside_the_bounds_are_refused(long numerator, long denominator)
    {
        var length = new Rational(numerator, denominator);
        var message = Assert.Throws<ArgumentOutOfRangeException>(() => new LineNote(default, ScaleDirection.Ascent, Approach.Leap, length)).Message;
        Assert.Contains("1/4096 to 4096 units", message, StringComparison.Ordinal);
        Assert.Contains(length.ToString(), message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => Note with { Length = length });
        if (length != Rational.Zero)
        {
            Assert.Throws<ArgumentOutOfRangeException>(() => Note with { Rest = length });
        }
    }

    [Theory]
    [InlineData(1, 4_096)]
    [InlineData(4_096, 1)]
    [InlineData(8_191, 2)]
    [InlineData(4_095, 4_096)]
    [InlineData((4_096 * 4_096) - 1, 4_096)]
    [InlineData((4_095 * 4_096) - 1, 4_095)]
    public void Lengths_at_the_bounds_are_kept(long numerator, long denominator)
    {
        var length = new Rational(numerator, denominator);
        Assert.Equal(length, (Note with { Length = length }).Length);
        Assert.Equal(length, (Note with { Rest = length }).Rest);
    }

    [Fact]
    public void What_a_note_is_set_to_leaves_all_else_as_it_was()
    {
        // Every part at its lowest, its usual and its highest value, next to every other part at these.
        Rational[] lengths = [new(1, 4_096), 1, new((4_096 * 4_096) - 1, 4_096), 4_096];
        var tones =
            from letter in Enumerable.Range(1, 7)
            from alteration in Enumerable.Range(-2, 5)
            from octave in (int[])[-ScaleTone.HighestOctave, 0, ScaleTone.HighestOctave]
            select new ScaleTone(new Degree(letter, alteration), octave);
        var manners =
            from direction in Enum.GetValues<ScaleDirection>()
            from approach in Enum.GetValues<Approach>()
            from joining in Enum.GetValues<Joining>()
            from loudness in Enum.GetValues<Loudness>()
            select (Direction: direction, Approach: approach, Joining: joining, Loudness: loudness);
        foreach (var (tone, length, manner) in from tone in tones from length in lengths from manner in manners select (tone, length, manner))
        {
            LineNote note = new(new ScaleTone(new Degree(7, 2), -1), manner.Direction, manner.Approach, length) { Joining = manner.Joining, Loudness = manner.Loudness };
            Same(note with { Tone = tone });
            Same(note with { Direction = ScaleDirection.Descent, Tone = tone } with { Direction = manner.Direction });
            Same(note with { Approach = Approach.Descent, Tone = tone } with { Approach = manner.Approach });
            Same(note with { Length = 3, Tone = tone } with { Length = length });
            Same(note with { Joining = Joining.Staccato, Tone = tone } with { Joining = manner.Joining });
            Same(note with { Loudness = Loudness.SwellAndFade, Tone = tone } with { Loudness = manner.Loudness });

            void Same(LineNote made) => Assert.Equal(
                (tone, length, manner), (made.Tone, made.Length, (made.Direction, made.Approach, made.Joining, made.Loudness)));
        }
    }

    [Fact]
    public void A_silence_and_a_text_are_kept_apart_from_each_other()
    {
        var both = Note with { Rest = 2, Sung = "ma" };
        Assert.Equal((2, "ma"), ((int)both.Rest.Numerator, both.Sung));
        Assert.Equal("ma", (both with { Rest = 0 }).Sung);
        Assert.Equal(2, (both with { Sung = null }).Rest);
        Assert.Equal(Note, both with { Rest = 0, Sung = null });
        Assert.Equal(string.Empty, (Note with { Sung = string.Empty }).Sung); // goes on with the word before
    }

    [Theory]
    [InlineData("a\nb")]
    [InlineData("a\u202Eb")]
    [InlineData("more than twenty characters")]
    public void A_text_that_cannot_be_printed_is_refused(string text) => Assert.ThrowsAny<ArgumentException>(() => Note with { Sung = text });

    [Fact]
    public void Values_outside_an_enum_are_refused_by_name()
    {
        Assert.Contains("Direction", Assert.Throws<ArgumentOutOfRangeException>(() => new LineNote(default, (ScaleDirection)2, Approach.Leap, 1)).Message, StringComparison.Ordinal);
        Assert.Contains("Approach", Assert.Throws<ArgumentOutOfRangeException>(() => Note with { Approach = (Approach)7 }).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => Note with { Approach = (Approach)256 }); // would be 0 in a byte
        Assert.Throws<ArgumentOutOfRangeException>(() => Note with { Direction = (ScaleDirection)(-1) });
    }

    [Fact]
    public void A_line_without_notes_is_refused_by_name() =>
        Assert.Equal("notes", Assert.Throws<ArgumentException>(() => new Line([])).ParamName);

    [Fact]
    public void The_default_line_is_the_middle_tonic()
    {
        Line made = new([default]), line = default;
        Assert.Equal("S", line.ToTones());
        Assert.Equal(1, line.Units);
        Assert.Equal(made, line);
        Assert.Equal(made.GetHashCode(), line.GetHashCode());
        Assert.True(line.SoundsAs(made));
        Assert.Equal(1, new Expansion([line]).NoteCount);
    }

    [Fact]
    public void More_notes_than_a_pattern_may_give_are_refused()
    {
        var line = new Line([.. Enumerable.Repeat(Note, 100_000)]);
        Assert.Equal(100_000, new Expansion([line]).NoteCount);
        Assert.Contains("at most 100000 notes, not 100001", Assert.Throws<ArgumentException>(() => new Expansion([line, new Line([Note])])).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_printed_for_a_log_is_short_and_the_tones_are_whole()
    {
        var expansion = Pattern.Parse("ladder.repeat(20)").Expand(Scale.Parse("S R2 G3 M1 P D2 N3 S'"));
        Assert.Equal(200, expansion.ToString().Length);
        Assert.EndsWith("...", expansion.ToString(), StringComparison.Ordinal);
        Assert.True(expansion.ToTones().Length > 1_000);
        Assert.StartsWith("S R2 / S R2 G3 / ", expansion.ToTones(), StringComparison.Ordinal);
        Assert.Equal("S R2", expansion.Lines[0].ToString());
    }
}
