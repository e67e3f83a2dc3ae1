using System.Globalization;

namespace Warmup;

/// <summary>A pattern in a scale on a tonic, in time: everything that is needed for a score. Immutable, value equality.</summary>
public sealed record Drill
{
    /// <summary>The longest title, in characters.</summary>
    public const int LongestTitle = 10_000;

    private readonly string? _title;
    private readonly Rational _tempo = Warmup.Tempo.Default;

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

    /// <summary>The speed; the first by default.</summary>
    public Speed Speed { get; init; }

    /// <summary>Aksharas a minute, 10 to 400; 60 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public Rational Tempo
    {
        get => _tempo;
        init => _tempo = Require.InRange(value, Warmup.Tempo.Slowest, Warmup.Tempo.Fastest, nameof(Tempo));
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

    /// <summary>The score.</summary>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="PatternException">The scale has no such lines, there are none or too many, or a note leaves MIDI's range.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public Score ToScore(CancellationToken cancellationToken = default) =>
        ToScore(Pattern.Expand(Scale, cancellationToken), cancellationToken);

    /// <summary>The score of lines that were expanded before, for the same scale on many tonics or at many tempi.</summary>
    /// <param name="expansion">The lines of this drill's pattern in its scale.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="PatternException">There are no lines, or a note leaves MIDI's range.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public Score ToScore(Expansion expansion, CancellationToken cancellationToken = default) =>
        ScoreBuilder.Build(this, expansion, cancellationToken);

    /// <summary>The score, or why there is none.</summary>
    /// <param name="score">The score, or <see langword="null"/>.</param>
    /// <param name="refusal">What was refused and what would clear it, or <see langword="null"/>.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <returns>Whether the drill can be made.</returns>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public bool TryToScore(out Score? score, out Finding? refusal, CancellationToken cancellationToken = default)
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
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Title} on {Tonic} at {Tempo}, {Speed}, {Delivery}");
}
