namespace Warmup.Cli;

/// <summary>The demo's invented scenario: the Tuesday class of a community singing studio. No such studio and no such people exist.</summary>
internal static class Studio
{
    public const string Name = "Lantern Lane community singing studio, Tuesday class";

    public static readonly ValueList<Singer> Singers =
    [
        Make("Wren", "G3", "E5", 18, Experience.Beginner),
        Make("Finch", "F3", "D5", 20, Experience.Intermediate),
        Make("Heron", "F3", "C5", 22, Experience.Advanced),
        Make("Otter", "C3", "G4", 24, Experience.Intermediate),
        Make("Badger", "G2", "D4", 22, Experience.Beginner),
        Make("Robin", "B3", "D5", 12, Experience.Beginner),
    ];

    /// <summary>The drills: three levels in two scales.</summary>
    public static readonly ValueList<StudioDrill> Drills =
    [
        // Filled with silence: if its last note were held to the end of the avartana, the longest line would be one breath of 15 seconds.
        new("mayamalavagowla", 1, "ladder", Delivery.LineByLine with { FillBy = FillBy.Rest, LeastHold = 2 }, Speed.First),
        new("mayamalavagowla", 2, "ladder.reversed", Delivery.LineByLine, Speed.Second),

        // In the first speed its lines would be one breath of 14 seconds, which nobody in the class has.
        new("mayamalavagowla", 3, "ladder.ends", Delivery.Continuous, Speed.Second),
        new("mohanam", 1, "ladder", Delivery.LineByLine, Speed.First),
        new("mohanam", 2, "ladder.reversed", Delivery.LineByLine, Speed.Second),
        new("mohanam", 3, "ladder.ends", Delivery.Continuous, Speed.First),
    ];

    private static Singer Make(string alias, string low, string high, int seconds, Experience experience) =>
        new(alias, Note(low), Note(high), seconds, experience);

    private static NoteName Note(string text) => NoteName.TryParse(text, out var name, out _) ? name : throw new InvalidOperationException($"'{text}' is not a note");
}

/// <summary>A drill of the demo.</summary>
internal sealed record StudioDrill(string ScaleName, int Level, string PatternText, Delivery Delivery, Speed Speed)
{
    /// <summary>The name of its files, without the ending.</summary>
    public string FileName => $"{ScaleName}-level-{Level}";

    /// <summary>What the drill trains, in a sentence.</summary>
    public string Trains => Level switch
    {
        1 => "Climbs with one more note each line: every step from S, and a little more breath each time.",
        2 => "The same lines from the top down: placing the first note without a run up to it, and coming home to S.",
        _ => "Only the first and last note of each line: hearing the leap before it is sung.",
    };

    public Drill ToDrill()
    {
        var scale = Catalogue.Default.Read(ScaleName);
        return new Drill
        {
            Scale = scale,
            Pattern = Pattern.Parse(PatternText),
            Tonic = Tonic.Parse("G3"),
            Tempo = 60,
            Speeds = [Speed],
            Tuning = Tuning.Just,
            Delivery = Delivery,
            Title = $"{scale.Name}, level {Level}",
        };
    }
}
