using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup;

/// <summary>A pattern in a scale on a tonic, in time: everything that is needed for a score. Immutable, value equality.</summary>
public sealed record Drill
{
    /// <summary>The most speeds of one time through the drill (the project's own bound).</summary>
    public const int MostSpeeds = 64;

    /// <summary>The most repetitions (the project's own bound).</summary>
    public const int MostRepetitions = 1_000;

    /// <summary>The most avartanas of a count-in (the project's own bound).</summary>
    public const int LongestCountIn = 8;

    /// <summary>The longest title, in characters.</summary>
    public const int LongestTitle = 10_000;

    private readonly string? _title;
    private readonly ValueList<Speed> _speeds = [Speed.First];
    private readonly int _repetitions = 1;
    private readonly int _countIn;

    /// <summary>The scale.</summary>
    public required Scale Scale { get; init; }

    /// <summary>The pattern; the empty pattern is refused when the score is made.</summary>
    public required Pattern Pattern { get; init; }

    /// <summary>The tonic.</summary>
    public required Tonic Tonic { get; init; }

    /// <summary>The tuning; equal by default.</summary>
    public Tuning Tuning { get; init; } = Tuning.Equal;

    /// <summary>The meter; Adi by default.</summary>
    public Meter Meter { get; init; } = Meter.Adi;

    /// <summary>
    /// The speeds in which the lines are sung, one after the other without a break: 1 to 64; the first speed alone by default.
    /// <see cref="SpeedSequences"/> has the usual orders.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">There are none, or too many.</exception>
    public ValueList<Speed> Speeds
    {
        get => _speeds;
        init
        {
            Require.InRange(value.Count, 1, MostSpeeds, "the number of speeds");
            _speeds = value;
        }
    }

    /// <summary>
    /// The tempo of each time through the drill, in aksharas a minute: a number for the same tempo every time, or a ramp. 60 by default.
    /// </summary>
    public TempoRamp Tempo { get; init; } = TempoRamp.Constant(Warmup.Tempo.Default);

    /// <summary>
    /// How often the drill is sung, each time in all its speeds, 1 to 1,000; 1 by default. A ramp takes at least the times it needs to
    /// reach its ceiling.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int Repetitions
    {
        get => _repetitions;
        init => _repetitions = Require.InRange(value, 1, MostRepetitions, nameof(Repetitions));
    }

    /// <summary>
    /// Whether the drill is sung as many times more as it takes for its end to fill an avartana, so that what follows falls on the first
    /// beat; it is not by default.
    /// </summary>
    public bool EndsOnFirstBeat { get; init; }

    /// <summary>The avartanas in which only the beat is given before the first line, 0 to 8; none by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int CountIn
    {
        get => _countIn;
        init => _countIn = Require.InRange(value, 0, LongestCountIn, nameof(CountIn));
    }

    /// <summary>The delivery; continuous by default.</summary>
    public Delivery Delivery { get; init; } = Delivery.Continuous;

    /// <summary>What is sung; svara letters by default.</summary>
    public Syllables Syllables { get; init; } = Syllables.SvaraLetters;

    /// <summary>
    /// Whether notes are written by <see cref="Spelling.Simpler"/>: no double accidentals, and natural names on the white keys. By default
    /// each degree keeps its letter.
    /// </summary>
    public bool HasSimplerSpelling { get; init; }

    /// <summary>Whether a drone sounds; it does by default.</summary>
    public bool HasDrone { get; init; } = true;

    /// <summary>How the drone is strung and played, where there is one; a tanpura by default.</summary>
    public DroneStyle DroneStyle { get; init; } = DroneStyle.Tanpura;

    /// <summary>The title; the scale and the pattern by default. At most 10,000 characters without control characters.</summary>
    /// <exception cref="ArgumentException">The title is too long or holds control characters.</exception>
    public string Title
    {
        get => _title ?? $"{Scale.Name}: {Pattern}";
        init => _title = Require.PlainText(value, LongestTitle, nameof(Title));
    }

    /// <inheritdoc cref="ToScore(CancellationToken)"/>
    public Score ToScore() => ToScore(CancellationToken.None);

    /// <summary>The score.</summary>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="PatternException">
    /// The scale has no such lines, there are none or too many, a note leaves MIDI's range, or the lines cannot be put in time as asked.
    /// </exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public Score ToScore(CancellationToken cancellationToken) =>
        ToScore(Pattern.Expand(Scale, cancellationToken), cancellationToken);

    /// <summary>The score of lines that were expanded before, for the same scale on many tonics or at many tempi.</summary>
    /// <param name="expansion">The lines of this drill's pattern in its scale.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="PatternException">There are no lines, a note leaves MIDI's range, or the lines cannot be put in time as asked.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public Score ToScore(Expansion expansion, CancellationToken cancellationToken = default) =>
        ScoreBuilder.Build(this, expansion, cancellationToken);

    /// <summary>The score, or why there is none.</summary>
    /// <param name="score">The score, or <see langword="null"/>.</param>
    /// <param name="refusal">What was refused and what would clear it, or <see langword="null"/>.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <returns>Whether the drill can be made.</returns>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public bool TryToScore([NotNullWhen(true)] out Score? score, [NotNullWhen(false)] out Finding? refusal, CancellationToken cancellationToken = default)
    {
        try
        {
            score = ToScore(cancellationToken);
            refusal = null;
            return true;
        }
        catch (PatternException refused)
        {
            score = null;
            refusal = refused.Finding;
            return false;
        }
    }

    /// <summary>The title, tonic and tempo.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Title} on {Tonic} at {Tempo}, {string.Join(" then ", Speeds)}, {Delivery}");
}
