using System.CommandLine;

namespace Warmup.Cli;

/// <summary><c>--plan-breaths</c>: breaths that are enough for all singers together.</summary>
internal sealed class BreathOption
{
    public const string Name = "--plan-breaths";

    private readonly Option<bool> _option = new(Name) { Description = "Plan the breaths that are enough for all singers of --singers together, at the least cost." };

    public void AddTo(Command command) => command.Add(_option);

    /// <summary>What the breaths must be enough for; <see langword="null"/> where none are to be planned.</summary>
    /// <exception cref="InputException">There are no singers to plan for.</exception>
    public BreathNeed? Read(ParseResult parsed, ValueList<Singer> singers) =>
        !parsed.GetValue(_option) ? null
        : singers.IsEmpty ? throw new InputException($"{Name} needs the class; add --singers FILE")
        : BreathNeed.Of(singers);

    /// <summary>The score with the breaths, and what was planned in words; the score itself where there is no plan.</summary>
    public static Score Plan(Score score, BreathNeed need, out string said, CancellationToken cancellation)
    {
        if (!BreathPlan.TryMake(score, need, out var plan, out var refusal, cancellation))
        {
            said = $"no breaths were planned: {refusal.Describe()}";
            return score;
        }

        said = $"breaths: {plan}";
        return score.WithBreaths(plan);
    }
}
