using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup.Web;

/// <summary>A drill that was asked for.</summary>
/// <param name="Drill">The drill with all its lines.</param>
/// <param name="Lines">The lines that are sung; all where there are none here.</param>
/// <param name="Breaths">What planned breaths must be enough for, or <see langword="null"/>.</param>
internal sealed record DrillRequest(Drill Drill, ValueList<int> Lines, BreathNeed? Breaths)
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
        var notes = (long)expansion.NoteCount * Drill.Speeds.Count * Drill.Tempo.Rounds;
        if (notes > limits.MostNotes)
        {
            refusal = Refusal("limit.notes", string.Create(CultureInfo.InvariantCulture, $"a drill must have at most {limits.MostNotes} notes here, not {notes}"), "repeat less, or take fewer lines");
            return false;
        }

        try
        {
            score = drill.ToScore(expansion, stop);
        }
        catch (PatternException refused)
        {
            refusal = refused.Finding;
            return false;
        }

        if (Breaths is not null && BreathPlan.TryMake(score, Breaths, out var plan, out _, stop))
        {
            score = score.WithBreaths(plan);
        }

        return true;
    }

    private static Finding Refusal(string code, string message, string fix) => new(code, Severity.Error, message, fix);
}
