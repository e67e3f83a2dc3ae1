namespace Warmup.Plans;

/// <summary>A single change of a request, or another tonic and a single change, with which there is a plan: it has been tried.</summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record PlanChange
{
    internal PlanChange(string text, PlanRequest request) => (Text, Request) = (text, request);

    /// <summary>The change in words: <c>keep drills away for 2 days of singing instead of 3</c>.</summary>
    public string Text { get; }

    /// <summary>The request with the change; it can be planned.</summary>
    public PlanRequest Request { get; }

    /// <summary>The change in words.</summary>
    public override string ToString() => Text;
}
