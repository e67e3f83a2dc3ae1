namespace Warmup.Tests;

/// <summary>
/// The beats of every exercise, in its own tala and in all others and in every speed, counted by a strict reader of this file's own: whole
/// avartanas, or a finding that says how to make it even. The reader knows letters, octave marks and the signs for holds and silences, and
/// fails on anything else; notes an akshara are gati x 2^(kalam - 1) / 4 (common practice).
/// </summary>
public class ExerciseBeatsTests
{
    private static readonly Scale Fifteenth = Scale.Parse("S R1 G3 M1 P D1 N3 S'");

    private static readonly List<string[]> Rows = ReadRows();

    private static IEnumerable<Exercise> All => [.. Repertoire.Traditional, .. Repertoire.Choir, .. Repertoire.Alankaras];

    public static TheoryData<string> Names => [.. WholeCheck.OneIn(2, All.Select(e => e.Name).Distinct())];

    [Theory]
    [MemberData(nameof(Names))]
    public void An_exercise_fills_its_avartanas_or_says_what_would(string name)
    {
        var exercise = Repertoire.Find(name)!;
        var units = Lines(exercise).Sum(Units);
        foreach (var gati in (int[])[4, 3, 5, 7, 9])
        {
            for (var kalam = 1; kalam <= 4; kalam++)
            {
                Check(exercise, exercise.Meter, new Speed(kalam, gati), units);
            }
        }

        foreach (var meter in (IEnumerable<Meter>)[.. Meter.Talas, .. Meter.Chapus, Meter.TimeSignature(3, 4)])
        {
            Check(exercise, meter, Speed.First, units);
            Check(exercise, meter, Speed.Third, units);
        }
    }

    [Fact]
    public void The_talas_of_the_exercises_add_up_and_the_first_speeds_fill_them()
    {
        foreach (var exercise in All.Where(e => e.Tala is not ("" or "free")))
        {
            Assert.Equal(Aksharas(exercise.Tala), exercise.Meter.Beats);
            var units = Lines(exercise).Sum(Units);

            // What choirs sing is begun in the second speed; the alankaras and the varisais fill their talas in the first two.
            Assert.Equal(0, units % (exercise.Meter.Beats * (exercise.Group == "choir" ? 2 : 1)));
            if (Repertoire.Traditional.Contains(exercise))
            {
                Assert.Equal(0, units % (exercise.Meter.Beats * 2));
            }
        }
    }

    [Fact]
    public void Choirs_sing_whole_bars_with_a_held_last_note_and_a_bar_of_rest()
    {
        foreach (var exercise in Repertoire.Choir)
        {
            Assert.Equal(("4/4", Speed.Second), (exercise.Tala, exercise.Speed));
            Assert.All(Lines(exercise), line =>
            {
                // Two notes a beat: eight units a bar; the last note is held, then a whole bar is silent.
                Assert.Equal(0, Units(line) % 8);
                Assert.EndsWith(string.Concat(Enumerable.Repeat(" -", 8)), line, StringComparison.Ordinal);
                Assert.EndsWith(" ,", line[..^16], StringComparison.Ordinal);
            });
            Assert.Null((Drill(exercise) with { Meter = exercise.Meter, Speeds = [exercise.Speed] }).ToScore().Sections[0].UnevenEnd(exercise));
        }
    }

    [Fact]
    public void Trikalam_ends_on_the_first_beat_and_three_speeds_in_a_row_say_where_they_do_not()
    {
        foreach (var exercise in Repertoire.Traditional.Where(e => e.Tala != "free"))
        {
            var drill = Drill(exercise) with { Meter = exercise.Meter };
            var trikalam = (drill with { Speeds = SpeedSequences.Trikalam() }).ToScore();
            Assert.DoesNotContain(trikalam.Findings, f => f.Code == FindingCode.EndsInsideAvartana);
            Assert.True(trikalam.Sections[0].IsLastAvartanaFull);

            // One, a half and a quarter: seven quarters of the units.
            var isFull = Lines(exercise).Sum(Units) * 7 % (4 * exercise.Meter.Beats) == 0;
            var three = (drill with { Speeds = SpeedSequences.ThreeSpeeds() }).ToScore();
            Assert.Equal(isFull ? 0 : 1, three.Findings.Count(f => f.Code == FindingCode.EndsInsideAvartana));
        }
    }

    [Fact]
    public void An_exercise_in_a_foreign_tala_names_its_own()
    {
        var exercise = Repertoire.Find("alankara-1")!;
        var finding = (Drill(exercise) with { Meter = Meter.Adi }).ToScore().Sections[0].UnevenEnd(exercise)!;
        Assert.Equal("alankara-1 is written for chatusra-jati dhruva (4+2+4+4): the lines end inside the avartana of Adi (4+2+2), after 4 of its 8 aksharas", finding.Message);
        Assert.Equal("take its own tala, chatusra-jati dhruva, or sing all of it twice, or fill each line up to the avartana", finding.Fix);
    }

    [Theory]
    [InlineData("S R' N_ , -", 5)]
    [InlineData("S , , ,", 4)]
    public void The_reader_counts_units(string line, int units) => Assert.Equal(units, Units(line));

    [Theory]
    [InlineData("S X")]
    [InlineData(", S")]
    [InlineData("S 'R")]
    [InlineData("S  R")]
    public void The_reader_refuses_what_it_does_not_know(string line) => Assert.Throws<FormatException>(() => Units(line));

    private static Drill Drill(Exercise exercise) => new() { Scale = Fifteenth, Pattern = exercise.Pattern, Tonic = Tonic.Parse("C4") };

    private static void Check(Exercise exercise, Meter meter, Speed speed, int units)
    {
        var section = (Drill(exercise) with { Meter = meter, Speeds = [speed] }).ToScore().Sections[0];
        var finding = section.UnevenEnd(exercise);
        if (meter.IsFree)
        {
            Assert.Null(finding);
            return;
        }

        // Aksharas are 4 x units / notes; after so many times they are whole avartanas.
        var notes = speed.Gati << (speed.Kalam - 1);
        bool IsFull(int times) => 4L * units * times % (notes * meter.Beats) == 0;
        Assert.Equal(IsFull(1), finding is null);
        if (finding is not null)
        {
            var times = Enumerable.Range(1, 100_000).First(IsFull);
            Assert.Equal(times, section.RoundsToFirstBeat);
            Assert.NotEmpty(finding.Fix);
            Assert.Equal(meter != exercise.Meter, finding.Fix.StartsWith("take its own", StringComparison.Ordinal));
        }
    }

    private static List<string[]> ReadRows()
    {
        using var reader = new StreamReader(typeof(ExerciseBeatsTests).Assembly.GetManifestResourceStream("exercises.tsv")!);
        return [.. reader.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1).Select(l => l.TrimEnd('\r').Split('\t'))];
    }

    /// <summary>The lines as a published table has them, and of the other groups as the library writes them.</summary>
    private static List<string> Lines(Exercise exercise)
    {
        var row = Rows.FirstOrDefault(r => $"{r[0]}-{r[1]}" == exercise.Name);
        return row is null ? [.. exercise.Pattern.Expand(Fifteenth).Lines.ConvertAll(l => l.ToNotation())] : [.. row[4].Split(" / ")];
    }

    /// <summary>The aksharas of a tala by its signs, its number or its time signature: <c>misra-jati jhampa I7 U O = 10</c>.</summary>
    private static int Aksharas(string tala)
    {
        var words = tala.Split([' ', ',', '(', ')', '='], StringSplitOptions.RemoveEmptyEntries);
        if (tala.Contains('/', StringComparison.Ordinal))
        {
            return words[0][0] - '0';
        }

        var signs = words.Where(w => w is "O" or "U" || (w[0] == 'I' && w.Length == 2)).Sum(w => w[0] switch { 'O' => 2, 'U' => 1, _ => w[1] - '0' });
        var stated = int.Parse(words[^1], System.Globalization.CultureInfo.InvariantCulture);
        Assert.True(signs == 0 || signs == stated, tala);
        return stated;
    }

    /// <summary>The units of a line: a letter, a hold and a silence are one each.</summary>
    private static int Units(string line)
    {
        var units = 0;
        foreach (var token in line.Split(' '))
        {
            var isNote = token.Length > 0 && "SRGMPDN".Contains(token[0], StringComparison.Ordinal) && (token[1..].All(c => c == '\'') || token[1..].All(c => c == '_'));
            units += isNote || (units > 0 && token is "," or "-") ? 1 : throw new FormatException($"'{token}' in '{line}'");
        }

        return units;
    }
}
