using System.Globalization;

namespace Warmup;

/// <summary>A part of a score with one scale, tonic, tuning and meter: one drill, as often and in as many speeds and tempi as it is sung.</summary>
/// <remarks>
/// Onsets and lengths are in aksharas from the section's beginning. They are held as whole numbers of
/// 1/<see cref="Resolution"/> akshara, the coarsest grid on which everything falls. Immutable, value equality.
/// </remarks>
public sealed partial record Section
{
    internal Section(
        string title,
        Scale scale,
        Tonic tonic,
        NoteName tonicName,
        Tuning tuning,
        Meter meter,
        Speed speed,
        Delivery delivery,
        Rational tempo,
        ValueList<TempoChange> tempoChanges,
        Rational countIn,
        int? roundsToFirstBeat,
        int resolution,
        int lengthSteps,
        ValueList<ScorePitch> pitches,
        ValueList<string> sungSyllables,
        ValueList<ScoreNote> notes,
        ValueList<ScoreLine> lines,
        ValueList<Breath> breaths,
        ValueList<Measure> measures)
    {
        Title = title;
        Scale = scale;
        Tonic = tonic;
        TonicName = tonicName;
        Tuning = tuning;
        Meter = meter;
        Speed = speed;
        Delivery = delivery;
        Tempo = tempo;
        TempoChanges = tempoChanges;
        CountIn = countIn;
        RoundsToFirstBeat = roundsToFirstBeat;
        Resolution = resolution;
        LengthSteps = lengthSteps;
        Pitches = pitches;
        SungSyllables = sungSyllables;
        Notes = notes;
        Lines = lines;
        Breaths = breaths;
        Measures = measures;
    }

    /// <summary>The section's title.</summary>
    public string Title { get; }

    /// <summary>The scale.</summary>
    public Scale Scale { get; }

    /// <summary>The tonic.</summary>
    public Tonic Tonic { get; internal init; }

    /// <summary>The written name of the tonic.</summary>
    public NoteName TonicName { get; internal init; }

    /// <summary>The tuning.</summary>
    public Tuning Tuning { get; }

    /// <summary>The meter.</summary>
    public Meter Meter { get; }

    /// <summary>The speed of its first line; each line has its own in <see cref="ScoreLine.Speed"/>.</summary>
    public Speed Speed { get; }

    /// <summary>The delivery.</summary>
    public Delivery Delivery { get; }

    /// <summary>Aksharas a minute, from the section's beginning to the first of <see cref="TempoChanges"/>: 10 to 400.</summary>
    public Rational Tempo { get; }

    /// <summary>Where another tempo begins, in order; none by default.</summary>
    public ValueList<TempoChange> TempoChanges { get; internal init; }

    /// <summary>The aksharas at the beginning in which only the beat is given: whole avartanas; 0 by default.</summary>
    public Rational CountIn { get; }

    /// <summary>The place after the beat at which its first line begins to be sung (eduppu), in aksharas; 0 on the beat.</summary>
    public Rational Eduppu => Notes[0].Onset - Lines[0].Onset;

    /// <summary>Grid steps an akshara, 1 or more.</summary>
    public int Resolution { get; internal init; }

    /// <summary>The different pitches of the section, in the order in which they first sound, at least one; notes name them by index.</summary>
    public ValueList<ScorePitch> Pitches { get; internal init; }

    /// <summary>
    /// What is sung; notes name it by index. First the syllable of each pitch, at the pitch's own index, empty where no note takes it; then the
    /// texts that the pattern gives its notes, in the order in which they are first sung, the empty text that goes on with the word before it
    /// among them.
    /// </summary>
    public ValueList<string> SungSyllables { get; }

    /// <summary>The sung notes in order, at least one; they do not overlap. What lies between them is silent.</summary>
    public ValueList<ScoreNote> Notes { get; internal init; }

    /// <summary>The lines in order, at least one; each begins where the one before ends.</summary>
    public ValueList<ScoreLine> Lines { get; internal init; }

    /// <summary>The breaths in order. Each begins where the note before it ends, and lies in the silence after it.</summary>
    public ValueList<Breath> Breaths { get; internal init; }

    /// <summary>The measures in order, without gaps; the last one reaches the section's end.</summary>
    public ValueList<Measure> Measures { get; internal init; }

    /// <summary>The section's length in grid steps.</summary>
    public int LengthSteps { get; internal init; }

    /// <summary>The section's length in aksharas; a whole number of measures.</summary>
    public Rational Length => new(LengthSteps, Resolution);

    /// <summary>The section's length in seconds, exactly.</summary>
    public Rational Seconds => SecondsAt(Length);

    /// <summary>Where the last line ends, its hold and breath included, in aksharas; silence fills the rest of the last measure.</summary>
    public Rational End => Lines[^1].Onset + Lines[^1].Length;

    /// <summary>How far the last avartana, or the last bar of free rhythm, is filled, in aksharas: from its beginning to <see cref="End"/>.</summary>
    public Rational LastFilled => End - (Meter.IsFree ? Measures[^1].Onset : Length - Meter.Beats);

    /// <summary>Whether the last avartana is full, so that what follows begins on the first beat; always true in free rhythm.</summary>
    public bool IsLastAvartanaFull => Meter.IsFree || End == Length;

    /// <summary>
    /// How often the drill has to be sung to end on the first beat, the times in this section included: the smallest such number;
    /// <see langword="null"/> where no number does, and in free rhythm. With answers to lines that are filled up, the number of the lines
    /// alone, which need not be the smallest.
    /// </summary>
    public int? RoundsToFirstBeat { get; internal init; }

    /// <summary>The times the drill is sung.</summary>
    public int Rounds => Lines[^1].Round + 1;

    /// <summary>The pitch of a note.</summary>
    /// <param name="note">A note of this section; one of another section may get a wrong pitch.</param>
    /// <exception cref="IndexOutOfRangeException">The note is of another section, which has more pitches.</exception>
    public ScorePitch PitchOf(ScoreNote note) => Pitches[note.PitchIndex];

    /// <summary>What is sung on a note; the empty text goes on with the word before it.</summary>
    /// <param name="note">A note of this section; one of another section may get a wrong text.</param>
    /// <exception cref="IndexOutOfRangeException">The note is of another section, which has more syllables.</exception>
    public string SyllableOf(ScoreNote note) => SungSyllables[note.SyllableIndex];

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

    /// <summary>The title, and how much is sung.</summary>
    public override string ToString() => OneLine.Of(string.Create(
        CultureInfo.InvariantCulture, $"{Count(Lines.Count, "line")} of {Count(Notes.Count, "note")} in {Length} aksharas: {Title}"));

    private static string Count(int count, string what) => string.Create(CultureInfo.InvariantCulture, $"{count} {what}{(count == 1 ? string.Empty : "s")}");

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
