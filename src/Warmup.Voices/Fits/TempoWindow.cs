using System.Globalization;

namespace Warmup.Voices;

/// <summary>Tempi that fit, in whole aksharas a minute. Immutable, value equality.</summary>
public sealed record TempoInterval
{
    /// <summary>Names an interval, for a page whose slider covers it.</summary>
    /// <param name="slowest">The slowest tempo, 10 to 400.</param>
    /// <param name="fastest">The fastest tempo, from <paramref name="slowest"/> to 400.</param>
    /// <param name="below">What closes the tempo one slower.</param>
    /// <param name="above">What closes the tempo one faster.</param>
    /// <exception cref="ArgumentOutOfRangeException">A tempo lies outside its range.</exception>
    public TempoInterval(int slowest, int fastest, string below, string above)
    {
        Slowest = Require.InRange(slowest, Tempo.Slowest, Tempo.Fastest);
        Fastest = Require.InRange(fastest, slowest, Tempo.Fastest);
        Below = Require.NotNull(below);
        Above = Require.NotNull(above);
    }

    /// <summary>The slowest.</summary>
    public int Slowest { get; }

    /// <summary>The fastest.</summary>
    public int Fastest { get; }

    /// <summary>What closes the tempo one slower.</summary>
    public string Below { get; }

    /// <summary>What closes the tempo one faster.</summary>
    public string Above { get; }
    /// <summary>The tempi alone: what a practice page takes for its slider.</summary>
    public TempoRange Range => new(Slowest, Fastest);

    /// <summary><c>54 to 90</c>, or one number.</summary>
    public override string ToString() => Slowest == Fastest
        ? Slowest.ToString(CultureInfo.InvariantCulture)
        : string.Create(CultureInfo.InvariantCulture, $"{Slowest} to {Fastest}");
}

/// <summary>The tempi at which a drill can be sung at one speed: slow enough for the throat, quick enough for the breath.</summary>
/// <remarks>
/// Every whole tempo from <see cref="Tempo.Slowest"/> to <see cref="Tempo.Fastest"/> is tried; tempi between whole ones are not. Immutable,
/// value equality.
/// </remarks>
public sealed record TempoWindow
{
    private TempoWindow(Speed speed, ValueList<TempoInterval> intervals, ValueList<string> closedBy, ValueList<string> openedBy) =>
        (Speed, Intervals, ClosedBy, OpenedBy) = (speed, intervals, closedBy, openedBy);

    /// <summary>The most notes of a drill whose windows are searched, 5,000: every tempo makes a score of its own (the project's own bound).</summary>
    public static int MostNotes => 5_000;

    /// <summary>The speed.</summary>
    public Speed Speed { get; }

    /// <summary>The tempi that fit, from the slowest; several where a slower tempo makes a rest long enough to breathe in. Empty where none fits.</summary>
    public ValueList<TempoInterval> Intervals { get; }

    /// <summary>Where it is empty: what closes it from either side.</summary>
    public ValueList<string> ClosedBy { get; }

    /// <summary>Where it is empty: what opens it, the smallest change first; empty where nothing does.</summary>
    public ValueList<string> OpenedBy { get; }

    /// <summary>Whether no tempo fits.</summary>
    public bool IsEmpty => Intervals.IsEmpty;

    /// <summary>The windows of the first three speeds (and of the drill's own, where that is the fourth), for singers who sing together.</summary>
    /// <param name="drill">The drill; its own tempo does not matter.</param>
    /// <param name="singers">The singers, at least one; their ranges do not matter.</param>
    /// <param name="checks">
    /// The checks; <see cref="ScoreChecks.Standard"/> by default. Range does not count here; a check of your own is made at every tempo with
    /// every singer.
    /// </param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ArgumentException">There are no singers, or the drill has more than 5,000 notes.</exception>
    /// <exception cref="PatternException">The drill cannot be made.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ValueList<TempoWindow> OfSpeeds(Drill drill, ValueList<Singer> singers, ScoreChecks? checks = null, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(drill);
        if (singers.IsEmpty)
        {
            throw new ArgumentException("a class must have at least 1 singer, not 0", nameof(singers));
        }

        var lines = drill.Expand(cancellationToken);
        var notes = drill.ToScore(lines, cancellationToken).NoteCount;
        if (notes > MostNotes)
        {
            throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"a drill must have at most {MostNotes} notes for its tempo windows to be searched, not {notes}"),
                nameof(drill));
        }

        var speeds = Enumerable.Range(1, Math.Max(3, drill.Speeds[0].Kalam)).Select(k => new Speed(k, drill.Speeds[0].Gati));
        var scans = speeds.Select(s => new TempoScan(drill with { Speeds = [s] }, lines, singers, checks ?? ScoreChecks.Standard, false, cancellationToken)).ToList();
        return scans.ConvertAll(scan => new TempoWindow(
            scan.Drill.Speeds[0],
            scan.Intervals,
            scan.Intervals.IsEmpty ? scan.WhatCloses() : [],
            scan.Intervals.IsEmpty ? TempoOpeners.Of(scan, scans, cancellationToken).ToValueList() : [])).ToValueList();
    }

    /// <summary>The intervals, or what closes the window and what opens it.</summary>
    public override string ToString() => OneLine.Of(IsEmpty
        ? $"{Speed}: none; closed by: {string.Join("; ", ClosedBy)}{(OpenedBy.IsEmpty ? string.Empty : $"; opened by: {string.Join("; or ", OpenedBy)}")}"
        : $"{Speed}: {string.Join(", ", Intervals)}");
}
