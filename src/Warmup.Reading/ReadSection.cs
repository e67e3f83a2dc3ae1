using System.Globalization;
using System.Text;

namespace Warmup.Reading;

/// <summary>A stretch of music that was read: lines over a scale and a tonic, with their time. Immutable, compared by value.</summary>
/// <remarks>Lengths of notes are in aksharas (one unit each); onsets count from the section's beginning, its count-in included.</remarks>
public sealed record ReadSection
{
    internal ReadSection(Scale scale, Tonic tonic) => (Scale, Tonic) = (scale, tonic);

    /// <summary>Its number, from 1.</summary>
    public int Number { get; internal init; }

    /// <summary>Its title; empty where it has none.</summary>
    public string Title { get; internal init; } = string.Empty;

    /// <summary>The scale: given, written in the file, or the first of <see cref="Proposals"/>.</summary>
    public Scale Scale { get; }

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

    /// <summary>What told where lines begin.</summary>
    public LinesFoundBy LinesFoundBy { get; internal init; }

    /// <summary>What is sung where one kind of syllables gives all that is written; <see langword="null"/> where the notes have their own, or none.</summary>
    public Syllables? Syllables { get; internal init; }

    /// <summary>The breaths that are written and have a silence; each is as long as the silence.</summary>
    public ValueList<Breath> Breaths { get; internal init; }

    /// <summary>The number of notes.</summary>
    public int NoteCount => Lines.Sum(l => l.Notes.Count);

    /// <summary>The drill that sings exactly these lines. Give it another tempo, meter, tonic or singers as any drill.</summary>
    public Drill ToDrill() => new()
    {
        Scale = Scale,
        Pattern = ToPattern() ?? Pattern.Run,
        Expansion = new Expansion(Lines),
        Tonic = Tonic,
        Meter = Meter,
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
    public Score ToScore(CancellationToken cancellationToken = default)
    {
        var score = ToDrill().ToScore(cancellationToken);
        return Breaths.IsEmpty ? score : score.WithBreaths(0, Breaths);
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
    private const int LongestWritten = 10_000;

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
