using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.Plans.Tests;

/// <summary>Source: the shares of the minutes that docs/plans.md states.</summary>
public class FillTests
{
    [Property(MaxTest = 6)]
    public Property Reasonable_classes_fill_three_quarters_of_every_day_and_never_more_than_all() => Prop.ForAll(Requests.Reasonable.ToArbitrary(), request =>
    {
        var made = WarmupPlan.Make(request);
        foreach (var day in made.Plan.Days)
        {
            if (!day.IsRest)
            {
                var seconds = made.Plan.ToScore(day).Seconds;
                Assert.Equal(seconds, day.Seconds);
                Assert.True(seconds <= request.Minutes * 60, $"{day.Date}: {seconds} s");
                Assert.True(seconds * 4 >= request.Minutes * 180, $"{day.Date}: {seconds} s of {request.Minutes} minutes; {day.Shortfall}; {string.Join("; ", made.Limits)}");
                Assert.Null(day.Shortfall);
            }
        }
    });
}
