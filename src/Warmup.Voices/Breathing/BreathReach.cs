namespace Warmup.Voices;

/// <summary>Whether there is a breath plan at all, without looking for the cheapest one.</summary>
/// <remarks>
/// The longest span that can be sung on each breath is taken. Whoever begins a span later can end it wherever somebody could who began earlier,
/// so this comes to the end wherever any plan does.
/// </remarks>
internal static class BreathReach
{
    /// <summary>Whether <see cref="BreathPlan.TryMake"/> would find a plan for a section by itself.</summary>
    /// <param name="section">The section; its own tempo does not matter.</param>
    /// <param name="clock">Its tempi.</param>
    /// <param name="need">What a plan must be enough for.</param>
    public static bool IsPossible(Section section, StepClock clock, BreathNeed need)
    {
        var places = BreathPlaces.Of(section, clock, need);
        for (var from = 0; from < places.Count;)
        {
            var farthest = -1;
            var spans = places.SpansFrom(from);
            while (spans.MoveNext())
            {
                farthest = spans.To;
            }

            if (farthest < from)
            {
                return false;
            }

            from = farthest + 1;
        }

        return true;
    }
}
