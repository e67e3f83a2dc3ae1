using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.Tests;

/// <summary>Lines to hear and write down. The levels are the project's own settings, written out here once more from the documentation.</summary>
public class SvaraGnanaTests
{
    private const string Letters = "SRGMPDN";

    private static int Position(LineNote note) => Letters.IndexOf(note.Tone.ToString()[0], StringComparison.Ordinal) + (7 * note.Tone.Octave);

    [Property(MaxTest = 200)]
    public Property Lines_keep_to_their_level_in_every_scale() => Prop.ForAll(
        (from entry in Gen.Elements<CatalogueEntry>([.. Catalogue.Default.Entries.Where(e => e.Kind is not null)])
         from level in Gen.Choose(1, SvaraGnana.HardestLevel)
         from seed in Gen.Choose(0, int.MaxValue)
         select (entry.Scale, Level: level, Seed: (ulong)seed)).ToArbitrary(),
        c =>
        {
            var (notes, low, high) = ((int[])[4, 6, 8, 8, 6])[c.Level - 1] is var n && c.Level >= 4 ? (n, -3, 9) : (((int[])[4, 6, 8, 8, 6])[c.Level - 1], 0, 7);
            var lines = SvaraGnana.Lines(c.Scale, c.Level, 5, c.Seed).Expand(c.Scale).Lines;
            Assert.Equal(5, lines.Count);
            foreach (var line in lines)
            {
                Assert.Equal((8, notes), ((int)line.Units.Floor(), line.Notes.Count));
                Assert.Equal(new ScaleTone(new Degree(1)), line.Notes[0].Tone);
                Assert.All(line.Notes.ToArray(), x => Assert.InRange(Position(x), low, high));
                Assert.All(line.Notes.Zip(line.Notes.Skip(1)), p => Assert.NotEqual(p.First.Tone, p.Second.Tone));
            }
        });

    [Fact]
    public void The_first_level_moves_by_step_and_the_second_leaps_over_one_at_most()
    {
        var scale = Scale.Parse("S R1 G3 M1 P D1 N3 S'");
        foreach (var (level, most) in ((int, int)[])[(1, 1), (2, 2), (3, 4)])
        {
            var moves = SvaraGnana.Lines(scale, level, 100, 5).Expand(scale).Lines
                .SelectMany(l => l.Notes.Zip(l.Notes.Skip(1), (a, b) => Math.Abs(Position(a) - Position(b)))).ToList();
            Assert.Equal(most, moves.Max());
            Assert.Equal(1, moves.Min());
        }
    }

    [Fact]
    public void A_move_takes_the_note_of_its_own_list() // Bilahari rises without M and N; Bhairavi has D2 up and D1 down
    {
        foreach (var text in (string[])["S R2 G3 P D2 S' / S' N3 D2 P M1 G3 R2 S", "S R2 G2 M1 P D2 N2 S' / S' N2 D1 P M1 G2 R2 S"])
        {
            var scale = Scale.Parse(text);
            var expansion = SvaraGnana.Lines(scale, 3, 100, 9).Expand(scale);
            Assert.Empty(expansion.Findings);
            foreach (var line in expansion.Lines)
            {
                foreach (var (from, to) in line.Notes.Zip(line.Notes.Skip(1)))
                {
                    var list = Position(to) > Position(from) ? scale.Ascent : scale.Descent;
                    Assert.Contains(list.ToArray(), t => t.Degree.Letter == to.Tone.Degree.Letter);
                }
            }
        }
    }

    /// <summary>
    /// The first numbers of SplitMix64 with the seed 1234567 are 6457827717110365317, 3203168211198807973, 9817491932198370423,
    /// 4593380528125082431 and 16408922859458223821 (published with the generator): 0.3501, 0.1736, 0.5322, 0.2490 and 0.8895 of the whole range.
    /// Worked by hand: the notes above, from the nearest, then those below, from the lowest, at most seven either way, from P_ to G'.
    /// </summary>
    [Fact]
    public void The_numbers_are_those_of_SplitMix64()
    {
        // From S the fourth of R G M P D N S' P_ D_ N_ (0.35 of ten), from P the third of D N S' R' G' P_ D_ N_ S R G M, from S' the fifth of
        // R' G' S R G M P D N, from G the third of M P D N S' R' G' P_ D_ N_ S R, from D the tenth of N S' R' G' D_ N_ S R G M P.
        var line = SvaraGnana.Lines(Repertoire.UsualScale, 4, 1, 1_234_567).Expand(Repertoire.UsualScale).Lines[0];
        Assert.Equal("S P S' G D M", string.Join(' ', line.ToLetters().Split(' ').Take(6)));
    }

    [Fact]
    public void Notes_last_equally_long_and_the_rest_of_the_avartana_is_the_last_ones_or_drawn()
    {
        var scale = Repertoire.UsualScale;
        Rational[][] Lengths(int level) => [.. SvaraGnana.Lines(scale, level, 60, 4).Expand(scale).Lines.Select(l => l.Notes.Select(n => n.Length).ToArray())];
        Assert.All(Lengths(1), l => Assert.Equal([2, 2, 2, 2], l)); // four notes in eight units
        Assert.All(Lengths(2), l => Assert.Equal([1, 1, 1, 1, 1, 3], l)); // six: the last holds what is left
        Assert.All(Lengths(3), l => Assert.Equal(Enumerable.Repeat(Rational.One, 8), l));
        var held = Lengths(5);
        Assert.All(held, l => Assert.Equal(8, l.Aggregate(Rational.Zero, (sum, n) => sum + n)));
        Assert.All(Enumerable.Range(0, 6), i => Assert.Contains(held, l => l[i] > 1)); // any of them may be held
        Assert.Contains(held, l => l.Contains(3)); // twice the same
    }

    [Fact]
    public void Each_level_reaches_its_ends_and_no_further()
    {
        var scale = Repertoire.UsualScale;
        foreach (var (level, low, high) in ((int, int, int)[])[(1, 0, 3), (3, 0, 7), (4, -3, 9), (5, -3, 9)]) // three steps from S lead to M
        {
            var positions = SvaraGnana.Lines(scale, level, 100, 11).Expand(scale).Lines.SelectMany(l => l.Notes.Select(Position)).ToList();
            Assert.Equal((level, low, high), (level, positions.Min(), positions.Max()));
        }

        Assert.Equal((5, 100), (SvaraGnana.HardestLevel, SvaraGnana.MostLines));
    }

    [Theory]
    [InlineData("S G3 P N3 S'", "S G3 P")] // three notes from S to P are enough for the first level
    [InlineData("S P N3 S'", "S P N3")] // two are not: it goes on to the next
    [InlineData("S R2 G3 P D2 S'", "S R2 G3 P")]
    public void The_first_level_stays_between_S_and_P_where_there_are_three_notes(string text, string sung)
    {
        var scale = Scale.Parse(text);
        var tones = SvaraGnana.Lines(scale, 1, 100, 3).Expand(scale).Lines.SelectMany(l => l.Notes.Select(n => n.Tone.ToString())).ToHashSet();
        Assert.Equal(sung.Split(' ').Order(StringComparer.Ordinal), tones.Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("S R2 G3 M1 N3 S' / S' N3 D2 M1 G3 R2 S", -2)] // without P the low D is the lowest note of the fourth level, and the descent alone has it
    [InlineData("S R2 G3 P N3 S' / S' N3 P R2 S", 9)] // the upper G is the highest, and the ascent alone has it
    public void From_the_last_note_of_the_range_the_line_turns_back(string text, int position)
    {
        var scale = Scale.Parse(text);
        var lines = SvaraGnana.Lines(scale, 4, 100, 8).Expand(scale).Lines;
        Assert.Contains(lines, l => l.Notes.SkipLast(1).Any(n => Position(n) == position));
        Assert.All(lines.ToArray(), l => Assert.All(l.Notes.Zip(l.Notes.Skip(1)), p => Assert.NotEqual(p.First.Tone, p.Second.Tone)));
    }

    [Fact]
    public void Scales_that_never_reach_the_upper_tonic_stay_in_their_octave()
    {
        var scale = Scale.Parse("S R1 G3 M1 P D1 N3 / N3 D1 P M1 G3 R1 S N3_");
        var positions = SvaraGnana.Lines(scale, 4, 100, 2).Expand(scale).Lines.SelectMany(l => l.Notes.Select(Position)).ToList();
        Assert.Equal((0, 6), (positions.Min(), positions.Max()));
    }

    [Fact]
    public void A_raised_note_is_sung_in_its_place_up_or_down_or_alone()
    {
        var scale = Scale.Parse("S R2 G3 P D2 S'");
        string[] Sung(int level)
        {
            var (wide, lines) = SvaraGnana.RaisedNotes(scale, level, 40, 6);
            return [.. lines.Expand(wide).Lines.Select(l => l.ToTones()).Distinct().Order(StringComparer.Ordinal)];
        }

        // R may rise to R3 and D to D3; G3 would reach M1, which Mohanam lacks, but G has no higher form than G3.
        Assert.Equal(["S R2 G3 P D3 S'", "S R3 G3 P D2 S'"], Sung(1));
        Assert.Equal(["S S' D2 P G3 R3 S", "S S' D3 P G3 R2 S"], Sung(2));
        Assert.Equal(["S D3", "S R3"], Sung(3));
        Assert.Equal(["S D3", "S R3"], Sung(5));
        Assert.All(SvaraGnana.RaisedNotes(scale, 4, 3, 1).Lines.Expand(SvaraGnana.RaisedNotes(scale, 4, 3, 1).Scale).Lines.ToArray(), l => Assert.Equal([4, 4], l.Notes.Select(n => n.Length)));
        Assert.Equal("One note raised", SvaraGnana.RaisedNotes(scale, 1, 1, 1).Scale.Name);
    }

    [Fact]
    public void The_seed_decides_the_lines()
    {
        var scale = Repertoire.UsualScale;
        Assert.Equal(SvaraGnana.Lines(scale, 2, 8, 7), SvaraGnana.Lines(scale, 2, 8, 7));
        Assert.Equal(20, Enumerable.Range(0, 20).Select(s => SvaraGnana.Lines(scale, 4, 8, (ulong)s)).Distinct().Count());
    }

    [Theory]
    [InlineData("S R1 G3 M1 P D1 N3 S'", "R2 M2 D2")]
    [InlineData("S R2 G3 M1 P D2 N3 S'", "R3 M2 D3")]
    [InlineData("S R2 G2 M1 P D1 N2 S'", "G3 M2 D2 N3")]
    [InlineData("S R2 G3 P D2 S'", "R3 D3")]
    public void One_note_is_raised_by_a_semitone(string text, string raised)
    {
        var scale = Scale.Parse(text);
        var own = scale.Ascent.Select(t => t.Degree).ToHashSet();
        var found = new HashSet<string>();
        for (var level = 1; level <= SvaraGnana.HardestLevel; level++)
        {
            var (wide, pattern) = SvaraGnana.RaisedNotes(scale, level, 60, 3);
            foreach (var line in pattern.Expand(wide).Lines)
            {
                var foreign = line.Notes.Select(n => n.Tone.Degree).Where(d => !own.Contains(d)).Distinct().ToList();
                var one = Assert.Single(foreign);
                found.Add(one.ToString());
                Assert.Contains(own, d => d.Letter == one.Letter && d.Semitones == one.Semitones - 1);
                Assert.Equal("S", line.Notes[0].Tone.ToString());
                Assert.Equal(0, line.Units.Floor() % 8);
                var wanted = scale.Ascent.Select(t => t.Degree.Letter).Distinct().Count();
                Assert.Equal(level switch { 1 => wanted + 1, 2 => wanted + 2, _ => 2 }, line.Notes.Count);
            }
        }

        Assert.Equal(raised.Split(' ').Order(StringComparer.Ordinal), found.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void What_cannot_be_drawn_is_refused_with_the_range()
    {
        var scale = Repertoire.UsualScale;
        Assert.Throws<ArgumentOutOfRangeException>(() => SvaraGnana.Lines(scale, 0, 1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => SvaraGnana.Lines(scale, SvaraGnana.HardestLevel + 1, 1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => SvaraGnana.Lines(scale, 1, 0, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => SvaraGnana.RaisedNotes(scale, 1, SvaraGnana.MostLines + 1, 1));
        Assert.Throws<ArgumentException>(() => SvaraGnana.RaisedNotes(Scale.Parse("S P S'"), 1, 1, 1));
    }
}
