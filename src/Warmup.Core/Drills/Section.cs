namespace Warmup;

/// <summary>A part of a score with one scale, tonic, tuning, meter, speed and tempo: one drill.</summary>
/// <remarks>
/// Onsets and lengths are in aksharas from the section's beginning. They are held as whole numbers of
/// 1/<see cref="Resolution"/> akshara, the coarsest grid on which everything falls. Immutable, value equality.
/// </remarks>
public sealed record Section
{
    /// <summary>The section's title.</summary>
    public required string Title { get; init; }

    /// <summary>The scale.</summary>
    public required Scale Scale { get; init; }

    /// <summary>The tonic.</summary>
    public required Tonic Tonic { get; init; }

    /// <summary>The written name of the tonic.</summary>
    public required NoteName TonicName { get; init; }

    /// <summary>The tuning.</summary>
    public required Tuning Tuning { get; init; }

    /// <summary>The meter.</summary>
    public required Meter Meter { get; init; }

    /// <summary>The speed.</summary>
    public required Speed Speed { get; init; }

    /// <summary>The delivery.</summary>
    public required Delivery Delivery { get; init; }

    /// <summary>Aksharas a minute.</summary>
    public required Rational Tempo { get; init; }

    /// <summary>Grid steps an akshara.</summary>
    public required int Resolution { get; init; }

    /// <summary>The different pitches of the section, in the order in which they first sound; notes name them by index.</summary>
    public required ValueList<ScorePitch> Pitches { get; init; }

    /// <summary>The sung notes in order; they do not overlap. What lies between them is silent.</summary>
    public required ValueList<ScoreNote> Notes { get; init; }

    /// <summary>The lines in order.</summary>
    public required ValueList<ScoreLine> Lines { get; init; }

    /// <summary>The breaths in order. Each lies in a silence right behind a note.</summary>
    public required ValueList<Breath> Breaths { get; init; }

    /// <summary>The measures in order, without gaps; the last one reaches the section's end.</summary>
    public required ValueList<Measure> Measures { get; init; }

    /// <summary>The section's length in grid steps.</summary>
    public required int LengthSteps { get; init; }

    /// <summary>The section's length in aksharas; a whole number of measures.</summary>
    public Rational Length => new(LengthSteps, Resolution);

    /// <summary>The section's length in seconds, exactly.</summary>
    public Rational Seconds => SecondsAt(Length);

    /// <summary>The pitch of a note.</summary>
    /// <param name="note">A note of this section.</param>
    public ScorePitch PitchOf(ScoreNote note) => Pitches[note.PitchIndex];

    /// <summary>The time of a point in the section, in seconds from its beginning, exactly.</summary>
    /// <param name="aksharas">The point in aksharas.</param>
    public Rational SecondsAt(Rational aksharas) => aksharas * 60 / Tempo;
}
