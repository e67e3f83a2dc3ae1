using System.Globalization;

namespace Warmup;

/// <summary>
/// A semitone climb, as choirs practise it (common practice): the drill, then the drill with its tonic a step higher, up to a limit and
/// back, with a cue on each new tonic. It moves the tonic and leaves the lines as they are, so it is no pattern; it is not for lessons whose
/// tonic is fixed, and it has no drone, which would sound against it.
/// </summary>
/// <remarks>Immutable.</remarks>
public sealed class Climb
{
    /// <summary>The farthest climb, in semitones: 24 (the project's own bound).</summary>
    public static int MostSemitones => 24;

    /// <summary>A cue of the tonic, held for two notes, and two notes of silence, in which to breathe in.</summary>
    public static Pattern TonicNote { get; } = Pattern.Written("S , - -");

    /// <summary>The drill on its lowest tonic.</summary>
    public required Drill Drill { get; init => field = Require.NotNull(value, nameof(Drill)); }

    /// <summary>How far the tonic climbs, in semitones: 1 to 24; 4 by default (the project's own settings).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int Semitones { get; init => field = Require.InRange(value, 1, MostSemitones, nameof(Semitones)); } = 4;

    /// <summary>Semitones from one tonic to the next: 1 to 12; 1 by default. A last step that would go too far is left out.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int Step { get; init => field = Require.InRange(value, 1, 12, nameof(Step)); } = 1;

    /// <summary>Whether the tonic comes down again the same way; true by default.</summary>
    public bool IsUpAndDown { get; init; } = true;

    /// <summary>What is heard on each new tonic before the drill; <see langword="null"/> for nothing. A long tonic by default.</summary>
    /// <remarks>It is sung once, at the drill's first tempo and in the first speed.</remarks>
    public Pattern? Cue { get; init; } = TonicNote;

    /// <summary>A cue of the tonic's triad, one note after the other, and a silence, for scales that have its notes.</summary>
    public static Pattern BrokenChord { get; } = Pattern.Written("S G P G S , - -");

    /// <summary>The tonics in the order in which they are sung.</summary>
    /// <exception cref="ArgumentException">A tonic leaves its range.</exception>
    public ValueList<Tonic> Tonics
    {
        get
        {
            var up = new List<int>();
            for (var at = 0; at <= Semitones; at += Step)
            {
                up.Add(at);
            }

            return (IsUpAndDown ? up.Concat(Enumerable.Reverse(up).Skip(1)) : up).Select(Raised).ToValueList();
        }
    }

    /// <summary>The score: a section for the drill on each tonic, whose title names it, and one for each cue between them.</summary>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="PatternException">The scale has no such lines, or a note leaves MIDI's range.</exception>
    /// <exception cref="ArgumentException">A tonic leaves its range.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public Score ToScore(CancellationToken cancellationToken = default)
    {
        var plain = Drill with { HasDrone = false, CountIn = 0 };
        var carried = new CarriedDrill(plain, cancellationToken);
        CarriedDrill? cue = null;
        var scores = new List<Score>();
        foreach (var tonic in Tonics)
        {
            // The beat is counted in once; each tonic has the name that it is written with.
            var name = Spelling.ChooseTonic(tonic, Drill.Scale, out _);
            if (scores.Count > 0 && Cue is not null)
            {
                cue ??= Heard(plain, Cue, cancellationToken);
                scores.Add(cue.ToScore(cue.Drill with { Tonic = tonic, Title = $"cue on {name}" }, cancellationToken));
            }

            var on = $" on {name}";
            var round = plain with { Tonic = tonic, CountIn = scores.Count == 0 ? Drill.CountIn : 0, Title = OneLine.Cut(Drill.Title, Drill.LongestTitle - on.Length) + on };
            scores.Add(carried.ToScore(round, cancellationToken));
        }

        return Score.Joined(Drill.Title, scores);
    }

    /// <summary>The drill and how far it climbs.</summary>
    public override string ToString()
    {
        var climb = string.Create(CultureInfo.InvariantCulture, $", climbing {Semitones} semitones in steps of {Step}{(IsUpAndDown ? " and back" : string.Empty)}");
        return OneLine.Cut(Drill.ToString(), OneLine.Longest - climb.Length) + climb;
    }

    /// <summary>A cue in the scale and the meter of the drill, without anything before or after it.</summary>
    private static CarriedDrill Heard(Drill plain, Pattern cue, CancellationToken cancellation) => new(
        plain with
        {
            Pattern = cue, Expansion = null, Speeds = [Speed.First], Tempo = plain.Tempo.Start, Repetitions = 1, IsRepeatedToFirstBeat = false, Delivery = Delivery.Continuous,
            Eduppu = Rational.Zero,
        },
        cancellation);

    private Tonic Raised(int semitones) => semitones == 0 ? Drill.Tonic : Drill.Tonic.Transposed(semitones);
}
