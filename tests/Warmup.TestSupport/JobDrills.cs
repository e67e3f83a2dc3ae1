namespace Warmup.TestSupport;

/// <summary>
/// The drills of the benchmark's job: 72 seven-note scales on twelve tonics at three tempi, 2,592 drills of 84 notes. Each line is a bar
/// of 4/4 in eighths, filled up with silence: the ladder, the same turned round, and the ends alone. There is no drone.
/// </summary>
public static class JobDrills
{
    public static readonly Pattern Pattern = Pattern.Ladder + Pattern.Ladder.Reversed() + Pattern.Ladder.Ends();

    private static readonly Meter FourFour = Meter.TimeSignature(4, 4);
    private static readonly Delivery LineABar = Delivery.Continuous with { Fill = Fill.Avartana, FillBy = FillBy.Rest };

    public static Drill[] All =>
    [
        .. from number in Enumerable.Range(1, 72)
           let scale = new Scale($"Scale {number}", Catalogue.Default.Parent(number).Scale.Ascent)
           from midi in Enumerable.Range(60, 12)
           from tempo in (int[])[60, 90, 120]
           select Drill(number, Tonic.FromMidi(midi), tempo) with { Scale = scale },
    ];

    public static Drill Drill(int number, Tonic tonic, Rational tempo) => new()
    {
        Scale = new Scale($"Scale {number}", Catalogue.Default.Parent(number).Scale.Ascent),
        Pattern = Pattern,
        Tonic = tonic,
        Tempo = tempo,
        Speeds = [Speed.Second],
        Meter = FourFour,
        Delivery = LineABar,
        HasDrone = false,
        Title = "Ladder, reversed, ends",
    };
}
