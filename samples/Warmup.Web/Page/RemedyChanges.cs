using System.Globalization;

namespace Warmup.Web;

/// <summary>What a remedy changes in the page's address.</summary>
internal static class RemedyChanges
{
    /// <summary>The changes.</summary>
    /// <param name="remedy">The remedy.</param>
    /// <param name="request">The drill that it was found for.</param>
    /// <param name="state">The page.</param>
    public static IEnumerable<(string Name, string Value)> Of(Remedy remedy, DrillRequest request, PageState state) => remedy switch
    {
        OtherTonic tonic => [("tonic", tonic.Text)],
        OtherTempo tempo => [("tempo", tempo.Tempo.ToString())],
        OtherScale scale => [("scale", scale.Scale.Name)],

        // Lines are counted in what is sung; the address counts those of the whole pattern.
        FewerLines fewer => [("lines", LinesQuery.ToText(request.Lines.IsEmpty ? fewer.Lines : fewer.Lines.ConvertAll(l => request.Lines[l - 1])))],
        PlannedBreaths breaths => [("breaths", LinesQuery.ToText(breaths.Need))],
        OtherSpeeds speeds => [("speeds", string.Join(',', speeds.Speeds.Select(s => s.Kalam.ToString(CultureInfo.InvariantCulture))))],

        // A fill that was chosen stays unless it is none: line by line the usual one is the avartana.
        OtherDelivery { IsLineByLine: true } when state["fill"] == "none" && !request.Drill.Meter.IsFree => [("delivery", "line-by-line"), ("fill", "avartana")],
        OtherDelivery { IsLineByLine: true } => [("delivery", "line-by-line")],
        OtherDelivery => [("delivery", "continuous"), ("breath", string.Empty)],
        LongerBreath longer => [("breath", LinesQuery.ToText(longer.Seconds))],
        OtherFill fill => [("fill", fill.Fill switch { Fill.None => "none", Fill.Anga => "anga", _ => "avartana" })],
        OtherFillBy by => [("fill-by", by.FillBy switch { FillBy.Room => "room", FillBy.Hold => "hold", _ => "rest" })],
        TwoRemedies two => Of(two.First, request, state).Concat(Of(two.Second, request, state)),
        _ => throw new InvalidOperationException($"no value of the page makes the change '{remedy}'"),
    };
}
