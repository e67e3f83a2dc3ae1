using System.Globalization;

namespace Warmup;

/// <summary>
/// A semitone climb, as choirs practise it (common practice): the drill, then the drill with its tonic a step higher, up to a limit and
/// back, with a cue on each new tonic. It changes the tonic and not the steps, and so is no pattern; it is not for plans whose tonic is
/// fixed, and has no drone, which would sound against it.
/// </summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record Climb
{
    /// <summary>The most semitones of a climb.</summary>
    public const int MostSemitones = 24;

    private readonly int _semitones = 4;
    private readonly int _step = 1;

    /// <summary>The drill on its lowest tonic.</summary>
    public required Drill Drill { get; init; }

    /// <summary>How far the tonic climbs, in semitones: 1 to 24; 4 by default (the project's own setting).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int Semitones
    {
        get => _semitones;
        init => _semitones = Require.InRange(value, 1, MostSemitones, nameof(Semitones));
    }

    /// <summary>Semitones from one tonic to the next: 1 to 12; 1 by default. A last step that would go too far is left out.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int Step
    {
        get => _step;
        init => _step = Require.InRange(value, 1, 12, nameof(Step));
    }

    /// <summary>Whether the tonic comes down again the same way; it does by default.</summary>
    public bool ComesBack { get; init; } = true;

    /// <summary>What is heard on each new tonic before the drill; <see langword="null"/> for nothing. A long tonic by default.</summary>
    public Pattern? Cue { get; init; } = Pattern.Written("0 , , ,");

    /// <summary>The tonics in the order in which they are sung.</summary>
    public ValueList<Tonic> Tonics
    {
        get
        {
            var up = new List<int>();
            for (var at = 0; at <= Semitones; at += Step)
            {
                up.Add(at);
            }

            return (ComesBack ? up.Concat(Enumerable.Reverse(up).Skip(1)) : up).Select(Raised).ToValueList();
        }
    }

    /// <summary>The score: a section for the drill on each tonic, and one for each cue between them.</summary>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="PatternException">The scale has no such lines, or a note leaves MIDI's range.</exception>
    /// <exception cref="ArgumentException">A tonic leaves its range.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public Score ToScore(CancellationToken cancellationToken = default)
    {
        var lines = Drill.Pattern.Expand(Drill.Scale, cancellationToken);
        var cue = Cue?.Expand(Drill.Scale, cancellationToken);
        var sections = new List<Section>();
        var findings = new List<Finding>();
        foreach (var tonic in Tonics)
        {
            if (sections.Count > 0 && cue is not null)
            {
                var title = string.Create(CultureInfo.InvariantCulture, $"cue on {tonic}");
                Add((Drill with { Pattern = Cue!, Tonic = tonic, Title = title, HasDrone = false }).ToScore(cue, cancellationToken));
            }

            Add((Drill with { Tonic = tonic, HasDrone = false }).ToScore(lines, cancellationToken));
        }

        return new Score(Drill.Title, sections.ToValueList(), null, findings.Distinct().ToValueList());

        void Add(Score score)
        {
            sections.AddRange(score.Sections);
            findings.AddRange(score.Findings);
        }
    }

    /// <summary>The drill and how far it climbs.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Drill}, climbing {Semitones} semitones in steps of {Step}{(ComesBack ? " and back" : string.Empty)}");

    private Tonic Raised(int semitones) => semitones == 0 ? Drill.Tonic : Drill.Tonic.Transposed(semitones);
}
