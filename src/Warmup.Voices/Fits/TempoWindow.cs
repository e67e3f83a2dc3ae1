using System.Globalization;

namespace Warmup.Voices;

/// <summary>Tempi that fit, in whole aksharas a minute.</summary>
/// <param name="Slowest">The slowest.</param>
/// <param name="Fastest">The fastest.</param>
/// <param name="Below">What closes the tempo one slower.</param>
/// <param name="Above">What closes the tempo one faster.</param>
public sealed record TempoInterval(int Slowest, int Fastest, string Below, string Above)
{
    /// <summary>The tempi alone: what a practice page takes for its slider.</summary>
    public TempoRange Range => new(Slowest, Fastest);

    /// <summary><c>54 to 90</c>, or one number.</summary>
    public override string ToString() => Slowest == Fastest
        ? Slowest.ToString(CultureInfo.InvariantCulture)
        : string.Create(CultureInfo.InvariantCulture, $"{Slowest} to {Fastest}");
}

/// <summary>The tempi at which a drill can be sung at one speed: slow enough for the throat, quick enough for the breath.</summary>
/// <param name="Speed">The speed.</param>
/// <param name="Intervals">The tempi that fit, from the slowest; several where a slower tempo makes a rest long enough to breathe in. Empty where none fits.</param>
/// <param name="ClosedBy">Where it is empty: what closes it from either side.</param>
/// <param name="OpenedBy">Where it is empty: what opens it, the smallest change first; it may be that nothing does.</param>
/// <remarks>Every whole tempo from <see cref="Tempo.Slowest"/> to <see cref="Tempo.Fastest"/> is tried; tempi between whole ones are not.</remarks>
public sealed record TempoWindow(Speed Speed, ValueList<TempoInterval> Intervals, ValueList<string> ClosedBy, ValueList<string> OpenedBy)
{
    /// <summary>The most notes of a drill whose windows are looked for: every tempo makes a score of its own.</summary>
    public const int MostNotes = 5_000;

    /// <summary>Whether no tempo fits.</summary>
    public bool IsEmpty => Intervals.IsEmpty;

    /// <summary>The windows of the first three speeds (and of the drill's own, where that is the fourth), for singers who sing together.</summary>
    /// <param name="drill">The drill; its own tempo does not matter.</param>
    /// <param name="singers">The singers, at least one; their ranges do not matter.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ArgumentException">There are no singers, or the drill has more than 5,000 notes.</exception>
    /// <exception cref="PatternException">The drill cannot be made.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ValueList<TempoWindow> OfSpeeds(Drill drill, ValueList<Singer> singers, CancellationToken cancellationToken = default)
    {
        if (singers.IsEmpty)
        {
            throw new ArgumentException("a class must have at least 1 singer, not 0", nameof(singers));
        }

        var lines = drill.Pattern.Expand(drill.Scale, cancellationToken);
        var notes = drill.ToScore(lines, cancellationToken).NoteCount;
        if (notes > MostNotes)
        {
            throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"a drill must have at most {MostNotes} notes for its tempo windows to be looked for, not {notes}"),
                nameof(drill));
        }

        var speeds = Enumerable.Range(1, Math.Max(3, drill.Speeds[0].Kalam)).Select(k => new Speed(k, drill.Speeds[0].Gati));
        var scans = speeds.Select(s => new TempoScan(drill with { Speeds = [s] }, lines, singers, false, cancellationToken)).ToList();
        return scans.ConvertAll(scan => new TempoWindow(
            scan.Drill.Speeds[0],
            scan.Intervals,
            scan.Intervals.IsEmpty ? scan.WhatCloses() : [],
            scan.Intervals.IsEmpty ? TempoOpeners.Of(scan, scans, cancellationToken).ToValueList() : [])).ToValueList();
    }

    /// <summary>The intervals, or what closes the window and what opens it.</summary>
    public override string ToString() => IsEmpty
        ? $"{Speed}: none; closed by: {string.Join("; ", ClosedBy)}{(OpenedBy.IsEmpty ? string.Empty : $"; opened by: {string.Join("; or ", OpenedBy)}")}"
        : $"{Speed}: {string.Join(", ", Intervals)}";
}
