using System.Globalization;
using System.Text;

namespace Warmup.Reading;

/// <summary>A stretch of music that was read: lines over a scale and a tonic, with their time. Immutable, compared by value.</summary>
/// <remarks>
/// Lengths of notes are in units of <see cref="Speed"/>: in aksharas, unless a text says another speed. Onsets count in aksharas from the section's
/// beginning, its count-in included.
/// </remarks>
public sealed record ReadSection
{
    internal ReadSection(Scale scale, Tonic tonic) => (Scale, Tonic) = (scale, tonic);

    /// <summary>Its number, from 1.</summary>
    public int Number { get; internal init; }

    /// <summary>Its title; empty where it has none.</summary>
    public string Title { get; internal init; } = string.Empty;

    /// <summary>The scale: given, written in the file, or the first of <see cref="Proposals"/>.</summary>
    public Scale Scale { get; private init; }

    /// <summary>The tonic: given, written in the file, or that of the first of <see cref="Proposals"/>.</summary>
    public Tonic Tonic { get; }

    /// <summary>The tonics and scales that were weighed, the likeliest first; none where both were given or written.</summary>
    public ValueList<TonicProposal> Proposals { get; internal init; }

    /// <summary>The tala or the time signature; free rhythm where it changes or is none that a drill has.</summary>
    public Meter Meter { get; internal init; } = Meter.Free;

    /// <summary>The tempo in aksharas a minute, 10 to 400; 60 where the file has none.</summary>
    public Rational Tempo { get; internal init; } = Warmup.Tempo.Default;

    /// <summary>Where the file has another tempo; <see cref="ToDrill"/> keeps the first only.</summary>
    public ValueList<ReadTempo> TempoChanges { get; internal init; }

    /// <summary>The avartanas of silence or beats before the first line, 0 to 8.</summary>
    public int CountIn { get; internal init; }

    /// <summary>The place after the beat at which the first line begins, in aksharas: 0, 1/4, 1/2, 3/4 or 1.</summary>
    public Rational Eduppu { get; internal init; }

    /// <summary>The lines, at least one.</summary>
    public ValueList<Line> Lines { get; internal init; }

    /// <summary>Remarks about lines that were carried to another scale; none otherwise.</summary>
    public ValueList<Finding> Findings { get; internal init; }

    /// <summary>The speed that a text says: how many of its units an akshara has. The first speed, one, for notation and MIDI.</summary>
    public Speed Speed { get; internal init; } = Speed.First;

    /// <summary>How often the whole is sung, by repeat signs around it: 1 to 1,000. Other repeats are written out in <see cref="Lines"/>.</summary>
    public int Repetitions { get; internal init; } = 1;

    /// <summary>How long a letter without signs is in <see cref="ToNotation"/>, in aksharas: the commonest length of a note, of equally common ones the shortest.</summary>
    public Rational LetterLength => CommonLength * Speed.Unit;

    /// <summary>The commonest length of a note, in units.</summary>
    internal Rational CommonLength => CommonLengthOf(Lines);

    /// <summary>What told where lines begin.</summary>
    public LinesFoundBy LinesFoundBy { get; internal init; }

    /// <summary>What is sung where one kind of syllables gives all that is written; <see langword="null"/> where the notes have their own, or none.</summary>
    public Syllables? Syllables { get; internal init; }

    /// <summary>The breaths that are written and have a silence; each is as long as the silence.</summary>
    public ValueList<Breath> Breaths { get; internal init; }

    /// <summary>The number of notes.</summary>
    public int NoteCount => Lines.Sum(l => l.Notes.Count);

    /// <summary>A line in letters as written exercises have it: <c>S R G ,</c>, where a letter is <see cref="LetterLength"/> long. Parts of it are not shown.</summary>
    /// <param name="line">The line's index, from 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such line.</exception>
    public string ToNotation(int line)
    {
        Require.InRange(line, 0, Lines.Count - 1);
        return RuleFinder.InUnits(Lines[line], CommonLength).ToNotation();
    }

    /// <summary>The section with other syllables on all notes; words that notes have of their own are left out.</summary>
    /// <param name="syllables">What is sung.</param>
    public ReadSection SungIn(Syllables syllables) => this with
    {
        Syllables = Require.NotNull(syllables),
        Lines = Lines.ConvertAll(l => new Line(l.Notes.ConvertAll(n => n with { Sung = null }))),
    };

    internal static Rational CommonLengthOf(ValueList<Line> lines) =>
        lines.SelectMany(l => l.Notes).GroupBy(n => n.Length).OrderByDescending(g => g.Count()).ThenBy(g => g.Key).FirstOrDefault()?.Key ?? Rational.One;

    /// <summary>The drill that sings exactly these lines. Give it another tempo, meter, tonic or singers as any drill.</summary>
    public Drill ToDrill() => new()
    {
        Scale = Scale,
        Pattern = ToPattern() ?? Pattern.Run,
        Expansion = new Expansion(Lines, Findings),
        Tonic = Tonic,
        Meter = Meter,
        Speeds = [Speed],
        Repetitions = Repetitions,
        Tempo = TempoRamp.Constant(Tempo),
        CountIn = CountIn,
        Eduppu = Eduppu,
        Syllables = Syllables ?? Syllables.SvaraLetters,
        Title = Title.Length > 0 ? Title : Scale.Name,
    };

    /// <summary>The score of <see cref="ToDrill"/> with the breaths.</summary>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="PatternException">The lines cannot be put in time, or a note leaves MIDI's range.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public Score ToScore(CancellationToken cancellationToken = default) => ToScore(ToDrill(), cancellationToken);

    /// <summary>The score of a drill that was made of the section and changed: with the breaths, as long as its lines and their time are the section's.</summary>
    /// <param name="drill">The drill; another tonic, tempo, tuning or meter leaves the breaths where they are.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="PatternException">The lines cannot be put in time, or a note leaves MIDI's range.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public Score ToScore(Drill drill, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(drill);
        var score = drill.ToScore(cancellationToken);
        var plain = ToDrill();
        return !Breaths.IsEmpty && (drill.Expansion, drill.Speeds, drill.Repetitions, drill.Delivery, drill.CountIn, drill.Eduppu, drill.Tempo.Step.Sign)
            == (plain.Expansion, plain.Speeds, plain.Repetitions, plain.Delivery, plain.CountIn, plain.Eduppu, 0)
            && (drill.CountIn == 0 || drill.Meter.Beats == Meter.Beats)
            ? score.WithBreaths(0, BreathsOfAllRounds())
            : score;
    }

    /// <summary>The section in another scale: each letter takes its form there, and where a rule gives all lines, the rule is followed.</summary>
    /// <param name="scale">The scale.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <remarks>
    /// Lengths, silences, slides, swells, breaths and words stay with their notes; names of tones, such as <c>ri</c>, become those of the new ones.
    /// Where the rule gives lines of other numbers of notes, as the ladder does in a scale of five, only what all notes have in common stays, and
    /// <see cref="Findings"/> says so.
    /// </remarks>
    /// <exception cref="PatternException">The scale lacks a letter of the lines, and no rule gives them.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public ReadSection InScale(Scale scale, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(scale);
        var carried = CarriedLines.To(this, scale, cancellationToken);
        var name = $"{Scale.Name}: ";
        return this with
        {
            Scale = scale,
            Title = $"{scale.Name}{(Title.Length == 0 ? string.Empty : $": {(Title.StartsWith(name, StringComparison.Ordinal) ? Title[name.Length..] : Title)}")}",
            Proposals = default,
            Lines = carried.Lines,
            Findings = carried.Findings,
            Breaths = CarriedLines.AreAlike(carried.Lines, Lines) ? Breaths : default,
        };
    }

    private ValueList<Breath> BreathsOfAllRounds()
    {
        var round = Lines.Aggregate(Rational.Zero, (sum, line) => sum + line.Units);
        return Enumerable.Range(0, Repetitions).SelectMany(r => Breaths.Select(b => new Breath(b.Onset + (r * round), b.Length, b.AfterNote + (r * NoteCount)))).ToValueList();
    }

    /// <summary>
    /// The lines written out in letters, to sing in other scales; <see langword="null"/> where lengths have no common unit of which each note has at
    /// most 64, or the text is longer than 10,000 characters. Texts that are sung, slides and swells are not written out.
    /// </summary>
    public Pattern? ToPattern()
    {
        if (CommonUnit() is not { } unit)
        {
            return null;
        }

        var text = new StringBuilder();
        foreach (var line in Lines)
        {
            text.Append(text.Length == 0 ? string.Empty : " / ");
            for (var n = 0; n < line.Notes.Count; n++)
            {
                var note = line.Notes[n];
                var (units, rest) = (note.Length / unit, n == line.Notes.Count - 1 ? Rational.Zero : note.Rest / unit);
                if (units > Longest || rest > Longest || text.Length > LongestWritten)
                {
                    return null;
                }

                text.Append(n == 0 ? string.Empty : " ").Append("SRGMPDN"[note.Tone.Degree.Letter - 1]).Append(note.Tone.Octave < 0 ? '_' : '\'', Math.Abs(note.Tone.Octave));
                text.Insert(text.Length, " ,", (int)units.Numerator - 1).Insert(text.Length, " -", (int)rest.Numerator);
            }
        }

        try
        {
            return text.Length > LongestWritten ? null : Pattern.Written(text.ToString());
        }
        catch (WarmupFormatException)
        {
            return null;
        }
    }

    // As the core bounds written lines.
    private const int Longest = 64;
    internal const int LongestWritten = 10_000;

    /// <summary>The longest time of which all lengths and all silences inside lines are whole multiples.</summary>
    private Rational? CommonUnit()
    {
        var (numerator, denominator) = (0L, 1L);
        foreach (var line in Lines)
        {
            for (var n = 0; n < line.Notes.Count; n++)
            {
                Join(line.Notes[n].Length, ref numerator, ref denominator);
                if (n < line.Notes.Count - 1 && line.Notes[n].Rest.Sign > 0)
                {
                    Join(line.Notes[n].Rest, ref numerator, ref denominator);
                }

                if (denominator > 1_000_000)
                {
                    return null;
                }
            }
        }

        return numerator == 0 ? null : new Rational(numerator, denominator);
    }

    private static void Join(Rational length, ref long numerator, ref long denominator)
    {
        var common = Rational.Lcm(denominator, length.Denominator);
        numerator = Rational.Gcd(numerator * (common / denominator), length.Numerator * (common / length.Denominator));
        denominator = common;
    }

    /// <summary>The title, the number of lines and notes, the scale and the tonic.</summary>
    public override string ToString() => OneLine.Of(string.Create(
        CultureInfo.InvariantCulture, $"{Lines.Count} {(Lines.Count == 1 ? "line" : "lines")}, {NoteCount} notes in {Scale.Name} on {Tonic}{(Title.Length == 0 ? string.Empty : $": {Title}")}"));
}
