using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup;

/// <summary>A pattern in a scale on a tonic, in time: everything that is needed for a score. Immutable, value equality.</summary>
public sealed record Drill
{
    // A title in what the drill prints is cut to make room for the rest, though not below this.
    private const int ShortestShownTitle = 80;

    private readonly string? _title;

    /// <summary>The most speeds of one time through the drill: 64 (the project's own bound).</summary>
    public static int MostSpeeds => 64;

    /// <summary>The most repetitions: 1,000 (the project's own bound).</summary>
    public static int MostRepetitions => 1_000;

    /// <summary>The most avartanas of a count-in: 8 (the project's own bound).</summary>
    public static int LongestCountIn => 8;

    /// <summary>The longest title, in characters: 10,000 (the project's own bound).</summary>
    public static int LongestTitle => 10_000;

    /// <summary>The scale.</summary>
    public required Scale Scale { get; init => field = Require.NotNull(value, nameof(Scale)); }

    /// <summary>The pattern; the empty pattern is refused when the score is made.</summary>
    public required Pattern Pattern { get; init => field = Require.NotNull(value, nameof(Pattern)); }

    /// <summary>
    /// The lines to sing instead of the pattern's own; <see langword="null"/>, the default, takes the pattern's in the scale. Everything that
    /// is made of the drill sings these lines: scores, climbs, tempo windows, class reports, range changes. They stay when another scale or
    /// pattern is set.
    /// </summary>
    public Expansion? Expansion { get; init; }

    /// <summary>The tonic.</summary>
    public required Tonic Tonic { get; init => field = Require.NotNull(value, nameof(Tonic)); }

    /// <summary>The tuning; equal by default.</summary>
    public Tuning Tuning { get; init => field = Require.NotNull(value, nameof(Tuning)); } = Tuning.Equal;

    /// <summary>The meter; Adi by default.</summary>
    public Meter Meter { get; init => field = Require.NotNull(value, nameof(Meter)); } = Meter.Adi;

    /// <summary>
    /// The speeds in which the lines are sung, one after the other without a break: 1 to 64; the first speed alone by default.
    /// <see cref="SpeedSequences"/> has the usual orders.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">There are none, or too many.</exception>
    public ValueList<Speed> Speeds
    {
        get;
        init
        {
            Require.InRange(value.Count, 1, MostSpeeds, "the number of speeds");
            field = value;
        }
    }

    = [Speed.First];

    /// <summary>
    /// The tempo of each time through the drill, in aksharas a minute: a number for the same tempo every time, or a ramp. 60 by default.
    /// </summary>
    public TempoRamp Tempo { get; init => field = Require.NotNull(value, nameof(Tempo)); } = TempoRamp.Constant(Warmup.Tempo.Default);

    /// <summary>
    /// How often the drill is sung, each time in all its speeds, 1 to 1,000; 1 by default. A ramp takes at least the times it needs to
    /// reach its ceiling.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int Repetitions { get; init => field = Require.InRange(value, 1, MostRepetitions, nameof(Repetitions)); } = 1;

    /// <summary>
    /// Whether the drill is repeated until its end fills an avartana, so that what follows falls on the first beat; false by default.
    /// </summary>
    public bool IsRepeatedToFirstBeat { get; init; }

    /// <summary>The avartanas in which only the beat is given before the first line, 0 to 8; none by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int CountIn { get; init => field = Require.InRange(value, 0, LongestCountIn, nameof(CountIn)); }

    /// <summary>
    /// The place after the beat at which a line begins to be sung (eduppu), in aksharas: 0, 1/4, 1/2, 3/4 or 1; 0, on the beat, by default.
    /// Where lines are filled up or sung line by line, each begins with so much silence; where they run on, the first one does.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is none of these.</exception>
    public Rational Eduppu
    {
        get;
        init => field = Require.InRange(value, 0, 1, nameof(Eduppu)) is var eduppu && (eduppu * 4).IsInteger
            ? eduppu
            : throw new ArgumentOutOfRangeException(nameof(Eduppu), value, $"Eduppu must be 0, 1/4, 1/2, 3/4 or 1, not {value}");
    }

    /// <summary>How lines follow each other; continuous by default.</summary>
    public Delivery Delivery { get; init => field = Require.NotNull(value, nameof(Delivery)); } = Delivery.Continuous;

    /// <summary>What is sung; svara letters by default.</summary>
    public Syllables Syllables { get; init => field = Require.NotNull(value, nameof(Syllables)); } = Syllables.SvaraLetters;

    /// <summary>
    /// Whether notes are written by <see cref="Spelling.Simpler"/>: no double accidentals, and natural names on the white keys. By default
    /// each degree keeps its letter.
    /// </summary>
    public bool HasSimplerSpelling { get; init; }

    /// <summary>Whether a drone sounds; true by default.</summary>
    public bool HasDrone { get; init; } = true;

    /// <summary>How the drone is strung and played, where there is one; a tanpura by default.</summary>
    public DroneStyle DroneStyle { get; init => field = Require.NotNull(value, nameof(DroneStyle)); } = DroneStyle.Tanpura;

    /// <summary>The title; by default the scale and what is sung, in plain English (<see cref="Pattern.Describe"/>). At most 10,000 characters without control characters.</summary>
    /// <exception cref="ArgumentException">The title is too long or holds control characters.</exception>
    public string Title
    {
        get => _title ?? $"{Scale.Name}: {Pattern.Describe()}";
        init => _title = Require.PlainText(Require.NotNull(value, nameof(Title)), LongestTitle, nameof(Title));
    }

    /// <summary>The lines that are sung: <see cref="Expansion"/> where it is given, else the pattern's in the scale.</summary>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="PatternException">The scale has no such lines, or there are too many.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public Expansion Expand(CancellationToken cancellationToken = default) => Expansion ?? Pattern.Expand(Scale, cancellationToken);

    /// <inheritdoc cref="ToScore(CancellationToken)"/>
    public Score ToScore() => ToScore(CancellationToken.None);

    /// <summary>The score.</summary>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="PatternException">
    /// The scale has no such lines, there are none or too many, a note leaves MIDI's range, or the lines cannot be put in time in this way.
    /// </exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public Score ToScore(CancellationToken cancellationToken) => ToScore(Expand(cancellationToken), cancellationToken);

    /// <summary>
    /// The score of given lines instead of the drill's own: lines that you wrote, or that were expanded once for many tonics or tempi. Set
    /// <see cref="Expansion"/> as well to have everything that is made of the drill later sing them.
    /// </summary>
    /// <param name="expansion">The lines.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="PatternException">There are no lines, a note leaves MIDI's range, or the lines cannot be put in time in this way.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public Score ToScore(Expansion expansion, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(expansion);
        return ScoreBuilder.Build(this, expansion, cancellationToken);
    }

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

    /// <summary>Whether the title is known to be that of another drill without being written out.</summary>
    internal bool HasTitleOf(Drill other) => _title is null
        ? other._title is null && ReferenceEquals(Scale, other.Scale) && ReferenceEquals(Pattern, other.Pattern)
        : ReferenceEquals(_title, other._title);

    /// <summary>The tonic, the tempo, the speeds, the delivery and the title.</summary>
    public override string ToString()
    {
        var time = string.Create(CultureInfo.InvariantCulture, $" on {Tonic} at {Tempo}, {string.Join(" then ", Speeds)}, {Delivery}");
        return OneLine.Of(OneLine.Cut(Title, Math.Max(OneLine.Longest - time.Length, ShortestShownTitle)) + time);
    }
}
