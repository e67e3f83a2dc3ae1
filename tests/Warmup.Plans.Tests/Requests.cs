using FsCheck;
using FsCheck.Fluent;

namespace Warmup.Plans.Tests;

/// <summary>Invented classes and requests.</summary>
public static class Requests
{
    public static readonly DateOnly Start = new(2026, 12, 1);

    public static readonly ValueList<Singer> Class =
    [
        Singer("Wren", 55, 76, 18, Experience.Beginner),
        Singer("Otter", 48, 67, 24, Experience.Intermediate),
        Singer("Badger", 43, 62, 22, Experience.Beginner),
    ];

    public static Singer Singer(string alias, int low, int high, int seconds, Experience experience = Experience.Beginner) =>
        new(alias, NoteName.FromMidi(low), NoteName.FromMidi(high), seconds, experience);

    public static ValueList<Scale> Scales(params string[] names) => names.Select(Catalogue.Default.Read).ToValueList();

    public static PlanRequest Usual => new()
    {
        Scales = Scales("mohanam", "mayamalavagowla", "bilahari"),
        Singers = Class,
        Start = Start,
        Seed = 7,
    };

    /// <summary>Random classes of one to four singers, levels, scales and rules.</summary>
    public static Gen<PlanRequest> Random { get; } =
        from count in Gen.Choose(1, 4)
        from singers in Gen.ArrayOf(
            from low in Gen.Choose(41, 58)
            from width in Gen.Choose(14, 26)
            from seconds in Gen.Choose(10, 30)
            from experience in Gen.Elements(Experience.Beginner, Experience.Intermediate, Experience.Advanced)
            select (low, width, seconds, experience),
            count)
        from scales in Gen.SubListOf("mohanam", "mayamalavagowla", "bilahari", "hamsadhvani", "kalyani", "major")
        from days in Gen.Choose(1, 24)
        from minutes in Gen.Choose(5, 20)
        from noRepeat in Gen.Choose(0, 6)
        from seed in Gen.Choose(0, 1_000_000)
        from level in Gen.Elements(Level.Beginner, Level.Intermediate, Level.Advanced)
        from rest in Gen.SubListOf(DayOfWeek.Sunday, DayOfWeek.Wednesday, DayOfWeek.Saturday)
        where scales.Count > 0
        select new PlanRequest
        {
            Scales = Scales([.. scales]),
            Singers = singers.Select((s, i) => Singer($"singer {i + 1}", s.low, s.low + s.width, s.seconds, s.experience)).ToValueList(),
            Start = Start,
            Days = days,
            Minutes = minutes,
            NoRepeatDays = noRepeat,
            Seed = (ulong)seed,
            Level = level,
            RestDays = rest.ToValueList(),
        };

    /// <summary>
    /// Reasonable classes: each singer has an octave and a fifth at least, in one of two registers an octave apart, and holds a tone as long
    /// as most adults do (docs/voices.md); two scales or more, a wait of three days at most, the class's own level.
    /// </summary>
    public static Gen<PlanRequest> Reasonable { get; } =
        from low in Gen.Choose(41, 46)
        from singers in Gen.NonEmptyListOf(
            from octave in Gen.Elements(0, 12)
            from apart in Gen.Choose(0, 2)
            from width in Gen.Choose(19, 26)
            from seconds in Gen.Choose(18, 30)
            from experience in Gen.Elements(Experience.Beginner, Experience.Intermediate, Experience.Advanced)
            select (low: low + octave + apart, width, seconds, experience))
        from scales in Gen.SubListOf("mohanam", "mayamalavagowla", "bilahari", "hamsadhvani", "kalyani", "kharaharapriya")
        from minutes in Gen.Choose(5, 10)
        from noRepeat in Gen.Choose(0, 3)
        from seed in Gen.Choose(0, 1_000_000)
        where scales.Count >= 2
        select new PlanRequest
        {
            Scales = Scales([.. scales]),
            Singers = singers.Take(5).Select((s, i) => Singer($"singer {i + 1}", s.low, s.low + s.width, s.seconds, s.experience)).ToValueList(),
            Start = Start,
            Days = 16,
            Minutes = minutes,
            NoRepeatDays = noRepeat,
            Seed = (ulong)seed,
        };
}
