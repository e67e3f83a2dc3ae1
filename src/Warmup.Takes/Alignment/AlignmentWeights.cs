namespace Warmup.Takes;

/// <summary>
/// What each departure from the drill costs in an alignment. They are few, chosen by reason and by takes made with one seed, and tested with
/// others (docs/listening.md). The project's own settings.
/// </summary>
internal sealed record AlignmentWeights
{
    public static readonly AlignmentWeights Default = new();

    /// <summary>The weight of a frame's cost: neighbouring frames hold much of the same sound, so each counts little.</summary>
    public double Frame { get; init; } = 0.12;

    /// <summary>The cents at which a frame's pitch costs one half.</summary>
    public double Cents { get; init; } = 35;

    /// <summary>
    /// The cents by which a note's mean may be off at the cost of one half, however long it is, before this singer's own are known: half of all notes lie within
    /// 19 cents in ordinary singing (Mauch, Frieler and Dixon 2014, read in abstract), which is two thirds of this.
    /// </summary>
    public double Deviation { get; init; } = 28;

    /// <summary>The most that a frame's pitch can cost, however far it is off.</summary>
    public double Unexplained { get; init; } = 4;

    /// <summary>What a candidate costs that has no strength at all beside the strongest of its frame.</summary>
    public double Weakness { get; init; } = 2.5;

    /// <summary>What a frame without voice costs in a note.</summary>
    public double Silence { get; init; } = 1.2;

    /// <summary>What a frame with voice costs outside all notes.</summary>
    public double Unassigned { get; init; } = 2.5;

    /// <summary>The share of it that is let off where the frame is softer than the voice and has a drone's pitch.</summary>
    public double Drone { get; init; } = 0.7;

    /// <summary>What a note costs that is left out, and one of which nothing is heard; one of which less than a quarter is heard costs a part of it.</summary>
    public double LeftOut { get; init; } = 6;

    /// <summary>What it costs to sing another note.</summary>
    public double Other { get; init; } = 3.5;

    /// <summary>What each semitone costs besides by which it is farther away than the next: a slip is nearer to its note than the note after it.</summary>
    public double Farther { get; init; } = 1.5;

    /// <summary>What it costs to leave the order of the lines: to sing one again, to go on with another than the next, to end before the drill does.</summary>
    public double Jump { get; init; } = 5.5;

    /// <summary>What each line costs besides that is left out together with another, up to three of them.</summary>
    public double SkippedMore { get; init; } = 2;

    /// <summary>
    /// What it costs besides to break a line off, at the end of the take too, and to leave out a line's last note: lines are sung to their end.
    /// </summary>
    public double BreakOff { get; init; } = 2.5;

    /// <summary>What a breath's pause costs inside a line, where the drill has none.</summary>
    public double Paused { get; init; } = 2;

    /// <summary>What a breath's pause costs inside a note: it parts two.</summary>
    public double Breathed { get; init; } = 6;

    /// <summary>What it costs to leave a line for another than the next without a pause; half of it for the next, where the drill has a pause.</summary>
    public double Unpaused { get; init; } = 3;

    /// <summary>What it costs to divide a tone in two notes where neither its pitch changes nor its level dips.</summary>
    public double NoDip { get; init; } = 3;

    /// <summary>The logarithm of the length ratio at which a note's length costs one half, before the pace is known.</summary>
    public double LengthAtFirst { get; init; } = 0.45;

    /// <summary>The same once the pace is known, before this singer's own is.</summary>
    public double Length { get; init; } = 0.22;

    /// <summary>The least cents by which a note's mean may be off at the cost of one half, however steadily it is sung: a pitch is measured no better in a glide.</summary>
    public double LeastDeviation { get; init; } = 12;

    /// <summary>The least logarithm of the length ratio at which a note's length costs one half: consonants and breaths shorten notes of those who keep time too.</summary>
    public double LeastLength { get; init; } = 0.12;

    /// <summary>How many notes of any singer count beside the take's own in how steadily it is sung (<see cref="Steadiness"/>).</summary>
    public double Usual { get; init; } = 6;

    /// <summary>How much dearer the best alignment without a note must be for the note to be sure.</summary>
    public double Sure { get; init; } = 1.5;

    /// <summary>What a note of any melody costs that is not the drill: the drill has to explain a take at less.</summary>
    public double FreeNote { get; init; } = 3;

    /// <summary>How much dearer than the cheapest an alignment may become before it is given up.</summary>
    public double Beam { get; init; } = 45;

    /// <summary>The semitones beyond which another note costs no more: any will do then.</summary>
    public double Farthest { get; init; } = 4;

    /// <summary>What it costs to sing another note in its place, by how far it lies from it in cents.</summary>
    public double OtherNote(double cents) => Other + (Farther * Math.Clamp((Math.Abs(cents) / 100) - 1, 0, Farthest - 1));
}
