namespace Warmup.Web;

/// <summary>Reads which drone sounds.</summary>
internal static class DroneQuery
{
    /// <summary>The words for drones, in the program's own spelling.</summary>
    public static ValueList<(string Word, DroneStyle? Style)> Styles { get; } =
    [
        ("tanpura", DroneStyle.Tanpura), ("tanpura-5", DroneStyle.Tanpura with { StringCount = 5 }), ("sruti-box", DroneStyle.SrutiBox), ("none", null),
    ];

    /// <summary>Whether there is a drone, and how it is strung and played.</summary>
    public static (bool HasDrone, DroneStyle Style) Read(QueryValues values)
    {
        var style = values.OneOf("drone", "tanpura", [.. Styles]);
        var first = values.Peek("drone-string") is null ? null : values.Text("drone-string", string.Empty);
        if (first is null)
        {
            return (style is not null, style ?? DroneStyle.Tanpura);
        }

        if (style is null || values.Peek("climb") is not null)
        {
            values.Wrong("drone-string", "needs a drone; leave it empty");
        }
        else if (Degree.TryParse(first.Trim(), out var degree, out _))
        {
            return (true, style with { First = degree });
        }
        else
        {
            values.Wrong("drone-string", $"must be a svara such as P, M1 or N3, not {TextError.Quote(first)}");
        }

        return (false, DroneStyle.Tanpura);
    }
}
