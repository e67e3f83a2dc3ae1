using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup.Web;

/// <summary>A drill that was asked for.</summary>
/// <param name="Drill">The drill with all its lines.</param>
/// <param name="Lines">The lines that are sung; all where there are none here.</param>
/// <param name="Breaths">What planned breaths must be enough for, or <see langword="null"/>.</param>
/// <param name="Climb">How the drill climbs, or <see langword="null"/>.</param>
internal sealed record DrillRequest(Drill Drill, ValueList<int> Lines, BreathNeed? Breaths, ClimbWish? Climb)
{
    /// <summary>The drill with its lines and its score, or why there is none. The work ends when it is stopped.</summary>
    public bool TryMake(Limits limits, CancellationToken stop, [NotNullWhen(true)] out Drill? drill, [NotNullWhen(true)] out Score? score, [NotNullWhen(false)] out Finding? refusal)
    {
        (drill, score) = (null, null);
        if (!Drill.Pattern.TryExpand(Drill.Scale, out var expansion, out refusal, stop))
        {
            return false;
        }

        if (!Lines.IsEmpty && Lines[^1] > expansion!.Lines.Count)
        {
            refusal = Refusal("limit.lines", string.Create(CultureInfo.InvariantCulture, $"there is no line {Lines[^1]}: the drill has {expansion.Lines.Count}"), "name other lines");
            return false;
        }

        drill = Lines.IsEmpty ? Drill : Drill with { Expansion = new Expansion(Lines.ConvertAll(l => expansion!.Lines[l - 1]), expansion!.Findings) };
        expansion = drill.Expansion ?? expansion!;
        var rounds = Climb is null ? 1 : (2 * Climb.Semitones) + 1;
        var notes = (long)expansion.NoteCount * Drill.Speeds.Count * Math.Max(Drill.Tempo.Rounds, Drill.Repetitions) * rounds;
        if (notes > limits.MostNotes)
        {
            refusal = Refusal("limit.notes", string.Create(CultureInfo.InvariantCulture, $"a drill must have at most {limits.MostNotes} notes here, not {notes}"), "repeat less, or take fewer lines");
            return false;
        }

        if (Climb is not null && Drill.Tonic.Midi + Climb.Semitones > Tonic.HighestMidi)
        {
            refusal = Refusal("limit.climb", string.Create(CultureInfo.InvariantCulture, $"a climb of {Climb.Semitones} semitones from {Drill.Tonic} goes beyond C7, the highest tonic"), "climb less, or begin lower");
            return false;
        }

        try
        {
            score = ToScore(drill with { Expansion = expansion }, Climb, stop);
            return true;
        }
        catch (PatternException refused)
        {
            refusal = refused.Finding;
            return false;
        }
    }

    /// <summary>The farthest climb, of those that are shorter, that all singers can sing; nothing where there is none.</summary>
    public int? ShorterClimb(Drill drill, ValueList<Singer> singers, CancellationToken stop) => Climb is null ? null : Enumerable.Range(1, Climb.Semitones - 1)
        .Reverse()
        .Where(n => ToScore(drill, Climb with { Semitones = n }, stop) is var score && singers.All(s => score.Fits(s)))
        .Select(n => (int?)n)
        .FirstOrDefault();

    private Score ToScore(Drill drill, ClimbWish? climb, CancellationToken stop)
    {
        var score = climb is null ? drill.ToScore(stop) : climb.Of(drill).ToScore(stop);
        return Breaths is not null && BreathPlan.TryMake(score, Breaths, out var plan, out _, stop) ? score.WithBreaths(plan) : score;
    }

    private static Finding Refusal(string code, string message, string fix) => new(code, Severity.Error, message, fix);
}
