namespace Warmup.Voices.Tests;

/// <summary>
/// Which changes are tried, and in which order. A check of one's own that is not content sees every score that is tried. Source: docs/voices.md,
/// "Findings and remedies": what is tried, how large each change counts, and that the smallest comes first.
/// </summary>
public class TriedChangesTests
{
    private static readonly Singer Anyone = new("Mira", NoteName.Parse("C1"), NoteName.Parse("C8"), 120);

    private static readonly Drill Plain = Sung("[S R G M] + [S R]");

    private static Drill Sung(string pattern) =>
        new() { Scale = Catalogue.Default.Read("major"), Pattern = Pattern.Parse(pattern), Tonic = Tonic.Parse("C4"), Tempo = 60, HasDrone = false };

    /// <summary>The sections that are tried in the drill's own scale, each after a single change: since another scale is found good, no two are tried together.</summary>
    private static List<Section> Singles(Drill drill, params int[] faultyLines) =>
        Tried(drill, s => s.Scale != drill.Scale, faultyLines).FindAll(s => s.Scale == drill.Scale);

    /// <summary>The sections that are tried, without the drill's own.</summary>
    private static List<Section> Tried(Drill drill, Predicate<Section> isGood, params int[] faultyLines)
    {
        var tried = new List<Section>();
        drill.Advise([Anyone], OwnCheck.Only(See), planned: BreathNeed.Of(Anyone));
        return tried[1..];

        IEnumerable<Finding> See(Score score, Singer singer)
        {
            tried.Add(score.Sections[0]);
            var finding = new Finding("studio.never", Severity.Error, "not content") { Singer = singer.Alias };
            return isGood(score.Sections[0]) ? []
                : faultyLines.Length == 0 || tried.Count > 1 ? [finding]
                : faultyLines.Select(l => finding with { Place = new ScorePlace(1, l) });
        }
    }

    private static Rational Last(Section section) => section.TempoChanges.IsEmpty ? section.Tempo : section.TempoChanges[^1].Tempo;

    private static int Twentieths(Rational a, Rational b) => (int)(20 * (Rational.Max(a, b) - Rational.Min(a, b)) / Rational.Min(a, b)).Ceiling();

    /// <summary>What was changed, by what each change counts; for drills in one speed.</summary>
    private static List<int> Changes(Drill drill, Section changed)
    {
        var (was, now) = (drill.Delivery, changed.Delivery);
        var semitones = Math.Abs(changed.Tonic.Midi - drill.Tonic.Midi);
        var lines = drill.Expand().Lines.Count;
        var fill = was.IsLineByLine == now.IsLineByLine || was.Fill != Fill.None ? was.Fill : Fill.Avartana;
        int[] all =
        [
            semitones % 12 == 0 ? semitones / 2 : semitones,
            Twentieths(drill.Tempo.Start, changed.Tempo) + Twentieths(drill.Tempo.Ceiling, Last(changed)),
            8 * Math.Abs(changed.Speed.Kalam - drill.Speeds[0].Kalam),
            (int)new Rational(20 * (lines - (changed.Lines.Count / changed.Rounds)), lines).Ceiling(),
            was.IsLineByLine == now.IsLineByLine ? 0 : 4,
            fill == now.Fill ? 0 : 3,
            was.FillBy == now.FillBy ? 0 : 3,
            (int)(now.BreathSeconds - was.BreathSeconds).Ceiling(),
        ];
        return [.. all.Where(size => size > 0)];
    }

    /// <summary>The delivery of each section that differs from the drill in nothing else.</summary>
    private static IEnumerable<Delivery> Deliveries(Drill drill, List<Section> tried) => tried
        .Where(s => (s.Tonic, s.Tempo, s.Speed, s.Lines.Count) == (drill.Tonic, drill.Tempo.Start, drill.Speeds[0], drill.Expand().Lines.Count) && s.Delivery != drill.Delivery)
        .Select(s => s.Delivery);

    [Fact]
    public void Tonics_up_to_two_octaves_away_are_tried()
    {
        var by = Singles(Plain).Select(s => s.Tonic.Midi - 60).Where(b => b != 0).ToList();
        Assert.Equal([.. Enumerable.Range(-24, 24), .. Enumerable.Range(1, 24)], by.Order());

        // Of two as near the lower one; an octave counts 6.
        Assert.Equal([-1, 1, -2, 2, -3, 3, -4, 4, -5, 5, -6, 6, -12, 12, -7, 7], by.Take(16));
    }

    [Fact]
    public void All_whole_tempi_are_tried_the_nearest_first()
    {
        var tempi = Singles(Plain).Select(s => s.Tempo).Where(t => t != 60).ToList();
        Assert.Equal(Enumerable.Range(10, 391).Where(t => t != 60).Select(t => new Rational(t)), tempi.Order());

        // Up to 63 is one twentieth of the slower tempo begun, and so is down to 58; of two as near the slower one comes first.
        Assert.Equal([59, 61, 58, 62, 63, 57, 56, 64, 55, 65], tempi.Take(10));
    }

    [Fact]
    public void A_rise_ends_earlier_begins_later_or_is_left_out()
    {
        var drill = Plain with { Tempo = new TempoRamp(60, 30, 120) };
        var tried = Singles(drill).FindAll(s => s.Tonic == drill.Tonic && s.Lines.Count == 2 * s.Rounds && s.Speed == Speed.First && s.Delivery == drill.Delivery);
        var rises = tried.Select(s => (First: s.Tempo, Last: Last(s))).Distinct().ToList();
        Rational[] between = [.. Enumerable.Range(61, 59)];
        Assert.Equal(Enumerable.Range(10, 391).Select(t => new Rational(t)), rises.Where(r => r.First == r.Last).Select(r => r.First).Order());

        // The nearest comes first: the latest end, and the earliest beginning.
        Assert.Equal(between.Reverse(), rises.Where(r => r.First == 60 && r.Last is var last && last > 60 && last < 120).Select(r => r.Last));
        Assert.Equal(between, rises.Where(r => r.First > 60 && r.Last == 120 && r.First < 120).Select(r => r.First));
        Assert.Equal(391 + 59 + 59, rises.Count);
        Assert.All(tried.Where(s => s.Tempo == 70 && Last(s) == 120), s => Assert.Equal([100, 120], s.TempoChanges.Select(c => c.Tempo)));
    }

    [Fact]
    public void Other_speeds_in_the_same_gati_are_tried()
    {
        var drill = Plain with { Speeds = [new Speed(2, 3)] };
        Assert.Equal([new Speed(1, 3), new Speed(3, 3), new Speed(4, 3)], Singles(drill).Select(s => s.Speed).Where(s => s.Kalam != 2));
    }

    [Fact]
    public void Of_several_speeds_the_fastest_or_the_slowest_are_left_out()
    {
        var drill = Plain with { Speeds = [Speed.Second, Speed.First, Speed.Third] };
        var kept = Singles(drill).Select(s => string.Join(' ', s.Lines.Select(l => l.Speed.Kalam).Where((_, l) => l % 2 == 0))).Where(s => s.Length is > 0 and < 5);

        // Each speed that goes counts 8; of equally large changes the one that keeps the slower ones comes first.
        Assert.Equal(["2 1", "2 3", "1", "3"], kept.Distinct());
    }

    [Fact]
    public void The_last_lines_are_left_out_until_half_of_them_is_left()
    {
        Assert.Equal(["S R G M P", "S R G M", "S R G"], Kept("S R G M P D", Singles(Sung("[S] + [R] + [G] + [M] + [P] + [D]"))));
        Assert.Equal(["S R G M", "S R G"], Kept("S R G M P", Singles(Sung("[S] + [R] + [G] + [M] + [P]"))));
        Assert.Equal(["S"], Kept("S R", Singles(Sung("[S] + [R]"))));
        Assert.Empty(Kept("S", Singles(Sung("[S]"))));
    }

    [Fact]
    public void Lines_with_a_fault_are_left_out_where_half_of_the_lines_is_left()
    {
        var drill = Sung("[S] + [R] + [G] + [M] + [P] + [D]");
        Assert.Contains("S G P D", Kept("S R G M P D", Singles(drill, 2, 4)));
        Assert.Contains("M P D", Kept("S R G M P D", Singles(drill, 1, 2, 3)));
        Assert.Equal(["S R G M P", "S R G M", "S R G"], Kept("S R G M P D", Singles(drill, 1, 2, 3, 4)));
    }

    private static IEnumerable<string> Kept(string all, List<Section> tried) => tried
        .Where(s => s.Tonic.Midi == 60).Select(s => string.Join(' ', s.Sung())).Where(k => k != all).Distinct();

    [Fact]
    public void Lines_that_run_on_are_sung_one_by_one_or_filled_up() => Assert.Equal(
        [Delivery.Continuous with { Fill = Fill.Anga }, Delivery.Continuous with { Fill = Fill.Avartana }, Delivery.LineByLine], Deliveries(Plain, Singles(Plain)));

    [Fact]
    public void In_free_rhythm_nothing_is_filled_up()
    {
        var free = Plain with { Meter = Meter.Free };
        Assert.Equal([Delivery.LineByLine], Deliveries(free, Singles(free)));
    }

    [Fact]
    public void Line_by_line_fills_and_what_fills_are_changed_and_breaths_grow_by_half_a_second_up_to_ten()
    {
        var drill = Plain with { Delivery = Delivery.LineByLine with { BreathSeconds = 8 } };
        var own = drill.Delivery;
        Delivery[] expected =
        [
            own with { BreathSeconds = new Rational(17, 2) }, own with { BreathSeconds = 9 }, own with { BreathSeconds = new Rational(19, 2) }, own with { BreathSeconds = 10 },
            own with { Fill = Fill.None }, own with { Fill = Fill.Anga }, own with { FillBy = FillBy.Rest }, own with { FillBy = FillBy.Hold },
        ];
        var tried = Deliveries(drill, Singles(drill)).ToList();
        Assert.Equal(expected.Length, tried.Count);
        Assert.All(expected, e => Assert.Contains(e, tried));

        // Lines that are not filled up are filled with nothing.
        var unfilled = Plain with { Delivery = Delivery.LineByLine with { BreathSeconds = 10, Fill = Fill.None } };
        Assert.Equal([unfilled.Delivery with { Fill = Fill.Anga }, unfilled.Delivery with { Fill = Fill.Avartana }], Deliveries(unfilled, Singles(unfilled)));

        // A hold that is asked for needs something to fill.
        var held = Plain with { Delivery = Delivery.LineByLine with { BreathSeconds = 10, FillBy = FillBy.Hold } };
        var others = Deliveries(held, Singles(held)).ToList();
        Assert.Equal(3, others.Count);
        Assert.DoesNotContain(others, d => d.Fill == Fill.None);
    }

    [Theory]
    [InlineData("continuous")]
    [InlineData("line by line")]
    [InlineData("a rise")]
    [InlineData("the third speed")]
    public void The_smaller_change_is_tried_first_whatever_it_changes(string which)
    {
        var drill = Sung("[S R G] + [S R] + [S G] + [R S] + [R G]");
        drill = which switch
        {
            "continuous" => drill,
            "line by line" => drill with { Delivery = Delivery.LineByLine },
            "a rise" => drill with { Tempo = new TempoRamp(80, 20, 120) },
            _ => drill with { Speeds = [Speed.Third] },
        };
        var sizes = Singles(drill).ConvertAll(s => Assert.Single(Changes(drill, s)));
        Assert.Equal(sizes.Order(), sizes);
        Assert.Equal(1, sizes[0]);
    }

    [Fact]
    public void Two_changes_are_tried_together_the_smaller_ones_first_with_tempi_a_twentieth_apart()
    {
        var drill = Sung("[S] + [R]");
        var tried = Tried(drill, _ => false);
        var pairs = tried.SkipWhile(s => Changes(drill, s).Count < 2).ToList();
        Assert.All(pairs, s => Assert.Equal(2, Changes(drill, s).Count));
        var sizes = pairs.ConvertAll(s => Changes(drill, s).Sum());
        Assert.Equal(sizes.Order(), sizes);

        // Each tempo is the next whole one at least a twentieth beyond the one before, up to 400 and down to 10.
        var tempi = pairs.Where(s => s.Tonic.Midi == 61 && s.Tempo != 60).Select(s => s.Tempo).Distinct().Order().ToList();
        Assert.Equal([63, 67, 71, 75], tempi.Where(t => t > 60).Take(4));
        Assert.Equal([57, 54, 51, 48], tempi.Where(t => t < 60).OrderDescending().Take(4));
        Assert.True(tempi[^1] <= 400 && tempi[^1] * 21 / 20 > 400);
        Assert.Equal(10, tempi[0]);
        foreach (var by in (int[])[-24, -12, -1, 12, 24])
        {
            Assert.Equal(tempi, pairs.Where(s => s.Tonic.Midi == 60 + by && s.Tempo != 60).Select(s => s.Tempo).Distinct().Order());
        }

        // Every two kinds.
        Assert.Contains(pairs, s => s.Tonic.Midi == 59 && s.Speed == Speed.Second);
        Assert.Contains(pairs, s => s.Tonic.Midi == 59 && s.Lines.Count == 1);
        Assert.Contains(pairs, s => s.Speed == Speed.Second && s.Lines.Count == 1);
        Assert.Contains(pairs, s => s.Speed == Speed.Second && s.Tempo == 57);
        Assert.Contains(pairs, s => s.Lines.Count == 1 && s.Tempo == 57);
        Assert.Contains(pairs, s => s.Delivery == Delivery.LineByLine && s.Tonic.Midi == 59);
        Assert.Contains(pairs, s => s.Delivery.Fill == Fill.Anga && s.Tempo == 57);

        // Line by line, and what is possible only then.
        Assert.Contains(pairs, s => s.Delivery == Delivery.LineByLine with { BreathSeconds = 10 });
        Assert.Contains(pairs, s => s.Delivery == Delivery.LineByLine with { Fill = Fill.None });
        Assert.Contains(pairs, s => s.Delivery == Delivery.LineByLine with { FillBy = FillBy.Rest });
    }
}
