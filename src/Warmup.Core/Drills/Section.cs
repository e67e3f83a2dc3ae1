namespace Warmup;

/// <summary>A part of a score with one scale, tonic, tuning and meter: one drill, as often and in as many speeds and tempi as it is sung.</summary>
/// <remarks>
/// Onsets and lengths are in aksharas from the section's beginning. They are held as whole numbers of
/// 1/<see cref="Resolution"/> akshara, the coarsest grid on which everything falls. Immutable, value equality.
/// </remarks>
public sealed partial record Section
{
    /// <summary>The section's title.</summary>
    public required string Title { get; init; }

    /// <summary>The scale.</summary>
    public required Scale Scale { get; init; }

    /// <summary>The tonic.</summary>
    public required Tonic Tonic { get; init; }

    /// <summary>The written name of the tonic.</summary>
    public required NoteName TonicName { get; init; }

    /// <summary>The tuning.</summary>
    public required Tuning Tuning { get; init; }

    /// <summary>The meter.</summary>
    public required Meter Meter { get; init; }

    /// <summary>The speed of its first line; each line has its own in <see cref="ScoreLine.Speed"/>.</summary>
    public required Speed Speed { get; init; }

    /// <summary>The delivery.</summary>
    public required Delivery Delivery { get; init; }

    /// <summary>Aksharas a minute, from the section's beginning to the first of <see cref="TempoChanges"/>.</summary>
    public required Rational Tempo { get; init; }

    /// <summary>Where another tempo begins, in order; none by default.</summary>
    public ValueList<TempoChange> TempoChanges { get; init; }

    /// <summary>The aksharas at the beginning in which only the beat is given: whole avartanas; 0 by default.</summary>
    public Rational CountIn { get; init; }

    /// <summary>Grid steps an akshara.</summary>
    public required int Resolution { get; init; }

    /// <summary>The different pitches of the section, in the order in which they first sound; notes name them by index.</summary>
    public required ValueList<ScorePitch> Pitches { get; init; }

    /// <summary>The sung notes in order; they do not overlap. What lies between them is silent.</summary>
    public required ValueList<ScoreNote> Notes { get; init; }

    /// <summary>The lines in order.</summary>
    public required ValueList<ScoreLine> Lines { get; init; }

    /// <summary>The breaths in order. Each lies in a silence right behind a note.</summary>
    public required ValueList<Breath> Breaths { get; init; }

    /// <summary>The measures in order, without gaps; the last one reaches the section's end.</summary>
    public required ValueList<Measure> Measures { get; init; }

    /// <summary>The section's length in grid steps.</summary>
    public required int LengthSteps { get; init; }

    /// <summary>The section's length in aksharas; a whole number of measures.</summary>
    public Rational Length => new(LengthSteps, Resolution);

    /// <summary>The section's length in seconds, exactly.</summary>
    public Rational Seconds => SecondsAt(Length);

    /// <summary>Where the last line ends, its hold and breath included, in aksharas; silence fills the rest of the last measure.</summary>
    public Rational End => Lines.IsEmpty ? Rational.Zero : Lines[^1].Onset + Lines[^1].Length;

    /// <summary>How far the last avartana is filled, in aksharas: from its beginning to <see cref="End"/>.</summary>
    public Rational LastFilled => Measures.IsEmpty ? Rational.Zero : End - Measures[^1].Onset;

    /// <summary>Whether the last avartana is full, so that whatever follows falls on the first beat. In free rhythm it always is.</summary>
    public bool EndsOnFirstBeat => Meter.IsFree || End == Length;

    /// <summary>
    /// How often the drill has to be sung to end on the first beat, the times in this section included: the smallest such number;
    /// <see langword="null"/> where no number does, and in free rhythm. With answers to lines that are filled up, the number of the lines
    /// alone, which need not be the smallest.
    /// </summary>
    public int? RoundsToFirstBeat { get; init; }

    /// <summary>The times the drill is sung.</summary>
    public int Rounds => Lines.IsEmpty ? 0 : Lines[^1].Round + 1;

    /// <summary>The pitch of a note.</summary>
    /// <param name="note">A note of this section.</param>
    public ScorePitch PitchOf(ScoreNote note) => Pitches[note.PitchIndex];

    /// <summary>The tempo at a point, in aksharas a minute; where it changes, the new one.</summary>
    /// <param name="aksharas">The point in aksharas.</param>
    public Rational TempoAt(Rational aksharas) => Reached(aksharas) is var change && change < 0 ? Tempo : TempoChanges[change].Tempo;

    /// <summary>
    /// The time of a point in the section, in seconds from its beginning: exact as long as the tempo is constant, and from then on counted
    /// from <see cref="TempoChange.Seconds"/>.
    /// </summary>
    /// <param name="aksharas">The point in aksharas.</param>
    public Rational SecondsAt(Rational aksharas)
    {
        var change = Reached(aksharas);
        return change < 0
            ? aksharas * 60 / Tempo
            : TempoChanges[change].Seconds + ((aksharas - TempoChanges[change].Onset) * 60 / TempoChanges[change].Tempo);
    }

    /// <summary>The point of a time: the inverse of <see cref="SecondsAt"/>.</summary>
    /// <param name="seconds">The time in seconds from the section's beginning.</param>
    public Rational AksharasAt(Rational seconds)
    {
        var (low, high) = (0, TempoChanges.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = TempoChanges[middle].Seconds <= seconds ? (middle + 1, high) : (low, middle);
        }

        return low == 0
            ? seconds * Tempo / 60
            : TempoChanges[low - 1].Onset + ((seconds - TempoChanges[low - 1].Seconds) * TempoChanges[low - 1].Tempo / 60);
    }

    /// <summary>
    /// The section with breaths taken in: the note before each ends where the breath begins. A breath that the section has already after the
    /// same note is replaced.
    /// </summary>
    /// <param name="breaths">The breaths, in any order, each within the note before it or at its end.</param>
    /// <exception cref="ArgumentException">
    /// A breath does not begin within a note of the section, falls on no 24th of an akshara, or the section is too long for a finer grid.
    /// </exception>
    public Section WithBreaths(ValueList<Breath> breaths) => BreathInsertion.Into(this, breaths);

    /// <summary>The index of the last change at or before a point; -1 before the first.</summary>
    private int Reached(Rational aksharas)
    {
        var (low, high) = (0, TempoChanges.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = TempoChanges[middle].Onset <= aksharas ? (middle + 1, high) : (low, middle);
        }

        return low - 1;
    }
}
