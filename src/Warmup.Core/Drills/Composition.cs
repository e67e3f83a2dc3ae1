using System.Globalization;
using System.Runtime.CompilerServices;

namespace Warmup;

/// <summary>
/// Notes of your own in time, where no pattern gives them: lines of tones with onsets and lengths, in a scale on a tonic. Immutable, value
/// equality.
/// </summary>
/// <remarks>
/// A composition becomes a score of one section; <see cref="Score.Join"/> puts several one after the other. The library computes the
/// pitches, the measures and the grid, so that every score is whole.
/// </remarks>
public sealed record Composition
{
    /// <summary>The scale: it chooses how notes are spelled and how the drone is strung.</summary>
    public required Scale Scale { get; init => field = Require.NotNull(value, nameof(Scale)); }

    /// <summary>The tonic.</summary>
    public required Tonic Tonic { get; init => field = Require.NotNull(value, nameof(Tonic)); }

    /// <summary>The lines in order, at least one, with at most 100,000 notes; each begins where the one before ends.</summary>
    /// <exception cref="ArgumentException">There are no lines, or they have too many notes.</exception>
    public required ValueList<TimedLine> Lines { get; init => field = Checked(value); }

    /// <summary>The tuning; equal by default.</summary>
    public Tuning Tuning { get; init => field = Require.NotNull(value, nameof(Tuning)); } = Tuning.Equal;

    /// <summary>The meter; Adi by default. Silence fills the last avartana.</summary>
    public Meter Meter { get; init => field = Require.NotNull(value, nameof(Meter)); } = Meter.Adi;

    /// <summary>The tempo in aksharas a minute, 10 to 400; 60 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public Rational Tempo { get; init => field = Require.InRange(value, Warmup.Tempo.Slowest, Warmup.Tempo.Fastest, nameof(Tempo)); } = Warmup.Tempo.Default;

    /// <summary>The speed whose unit sheets count in; the first by default. It does not move the notes.</summary>
    public Speed Speed { get; init; }

    /// <summary>How the lines follow each other, for sheets and advice; continuous by default. It does not move the notes.</summary>
    public Delivery Delivery { get; init => field = Require.NotNull(value, nameof(Delivery)); } = Delivery.Continuous;

    /// <summary>What is sung on notes without a text of their own; svara letters by default.</summary>
    public Syllables Syllables { get; init => field = Require.NotNull(value, nameof(Syllables)); } = Syllables.SvaraLetters;

    /// <summary>Whether a drone sounds; true by default.</summary>
    public bool HasDrone { get; init; } = true;

    /// <summary>How the drone is strung and played, where there is one; a tanpura by default.</summary>
    public DroneStyle DroneStyle { get; init => field = Require.NotNull(value, nameof(DroneStyle)); } = DroneStyle.Tanpura;

    /// <summary>The title; the scale's name by default. At most 10,000 characters without control characters.</summary>
    /// <exception cref="ArgumentException">The title is too long or holds control characters.</exception>
    public string Title
    {
        get => field ?? Scale.Name;
        init => field = Require.PlainText(Require.NotNull(value, nameof(Title)), Drill.LongestTitle, nameof(Title));
    }

    /// <summary>The score.</summary>
    /// <exception cref="PatternException">A note leaves MIDI's range, or the lengths need a finer grid or a longer score than there can be.</exception>
    public Score ToScore() => ScoreBuilder.Build(this);

    /// <summary>The number of lines, the tonic, the tempo and the title.</summary>
    public override string ToString() => OneLine.Of(string.Create(
        CultureInfo.InvariantCulture, $"{Lines.Count} {(Lines.Count == 1 ? "line" : "lines")} on {Tonic} at {Tempo}: {Title}"));

    private static ValueList<TimedLine> Checked(ValueList<TimedLine> lines, [CallerMemberName] string? name = null)
    {
        var notes = 0L;
        foreach (var line in lines)
        {
            notes += (line ?? throw new ArgumentNullException(name, "a line of the composition is missing")).Notes.Count;
        }

        return notes > 0 && notes <= Pattern.MostNotes
            ? lines
            : throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"a composition must have between 1 and {Pattern.MostNotes} notes, not {notes}"), name);
    }
}
