namespace Warmup.Voices;

/// <summary>A singer: an alias, the experience, and what was measured of the voice, of which the newest counts. Nothing personal beyond the alias.</summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record Singer
{
    /// <summary>Makes a singer who is a beginner.</summary>
    /// <param name="alias">1 to 60 characters without control characters.</param>
    /// <param name="low">The lowest comfortable note, C1 to C8.</param>
    /// <param name="high">The highest comfortable note, C1 to C8, not below the lowest.</param>
    /// <param name="sustainedSeconds">The longest sustained tone in seconds, 1 to 120.</param>
    /// <exception cref="ArgumentException">A value lies outside its range, or the range is upside down.</exception>
    public Singer(string alias, NoteName low, NoteName high, Rational sustainedSeconds)
        : this(alias, low, high, sustainedSeconds, Experience.Beginner)
    {
    }

    /// <summary>Makes a singer.</summary>
    /// <param name="alias">1 to 60 characters without control characters.</param>
    /// <param name="low">The lowest comfortable note, C1 to C8.</param>
    /// <param name="high">The highest comfortable note, C1 to C8, not below the lowest.</param>
    /// <param name="sustainedSeconds">The longest sustained tone in seconds, 1 to 120.</param>
    /// <param name="experience">The experience.</param>
    /// <exception cref="ArgumentException">A value lies outside its range, or the range is upside down.</exception>
    public Singer(string alias, NoteName low, NoteName high, Rational sustainedSeconds, Experience experience)
        : this(alias, new Measurement(null, low, high, sustainedSeconds), experience)
    {
    }

    /// <summary>Makes a singer from several sustained tones.</summary>
    /// <param name="alias">1 to 60 characters without control characters.</param>
    /// <param name="low">The lowest comfortable note, C1 to C8.</param>
    /// <param name="high">The highest comfortable note, C1 to C8, not below the lowest.</param>
    /// <param name="trials">1 to 14 sustained tones of 1 to 120 seconds; three are usual.</param>
    /// <param name="rule">Which of them counts.</param>
    /// <param name="experience">The experience.</param>
    /// <exception cref="ArgumentException">A value lies outside its range, or the range is upside down.</exception>
    public Singer(string alias, NoteName low, NoteName high, ValueList<Rational> trials, TrialRule rule, Experience experience = Experience.Beginner)
        : this(alias, new Measurement(null, low, high, trials, rule), experience)
    {
    }

    /// <summary>Makes a singer from a measurement.</summary>
    /// <param name="alias">1 to 60 characters without control characters.</param>
    /// <param name="measurement">The measurement; <see cref="With"/> adds others.</param>
    /// <param name="experience">The experience.</param>
    /// <exception cref="ArgumentException">The alias lies outside its range, or the experience is none of the three.</exception>
    public Singer(string alias, Measurement measurement, Experience experience)
    {
        ArgumentNullException.ThrowIfNull(alias);
        ArgumentNullException.ThrowIfNull(measurement);
        SingerFaults.Refuse(SingerFaults.OfAlias(alias), nameof(alias));
        (Alias, Measurement, Experience) = (alias, measurement, Require.Defined(experience));
    }

    /// <summary>Makes a singer whose comfortable range has not been measured yet: the voice type's range is assumed, and every report says so.</summary>
    /// <param name="alias">1 to 60 characters without control characters.</param>
    /// <param name="voice">A voice type with a comfortable range.</param>
    /// <param name="sustainedSeconds">The longest sustained tone in seconds, 1 to 120.</param>
    /// <param name="experience">The experience.</param>
    /// <exception cref="ArgumentException">A value lies outside its range, or the type's range is not a comfortable one.</exception>
    public static Singer FromVoice(string alias, VoiceType voice, Rational sustainedSeconds, Experience experience = Experience.Beginner)
    {
        ArgumentNullException.ThrowIfNull(alias);
        ArgumentNullException.ThrowIfNull(voice);
        return voice.IsComfortable
            ? new Singer(alias, new Measurement(null, voice.Low, voice.High, sustainedSeconds) { IsRangeAssumed = true }, experience) { Voice = voice.Name }
            : throw new ArgumentException($"the range of '{voice.Name}' is not a comfortable one, so low and high must be measured", nameof(voice));
    }

    /// <summary>The longest alias, in characters: 60 (the project's own bound).</summary>
    public static int LongestAlias => 60;

    /// <summary>The alias.</summary>
    public string Alias { get; }

    /// <summary>The experience.</summary>
    public Experience Experience { get; }

    /// <summary>The newest measurement: the one that counts.</summary>
    public Measurement Measurement { get; private init; }

    /// <summary>The measurements before the newest, the oldest first.</summary>
    public ValueList<Measurement> Older { get; internal init; }

    /// <summary>The lowest comfortable note.</summary>
    public NoteName Low => Measurement.Low;

    /// <summary>The highest comfortable note.</summary>
    public NoteName High => Measurement.High;

    /// <summary>The longest sustained tone that counts, in seconds.</summary>
    public Rational SustainedSeconds => Measurement.SustainedSeconds;

    /// <summary>The sustained tones it was taken from; empty where only one value is known.</summary>
    public ValueList<Rational> Trials => Measurement.Trials;

    /// <summary>Which of the trials counts; best where there are none.</summary>
    public TrialRule TrialRule => Measurement.TrialRule;

    /// <summary>The lowest note of the full range, not above the lowest comfortable one; <see langword="null"/> where it is not known.</summary>
    /// <exception cref="ArgumentException">The note lies above the lowest comfortable one or below C1.</exception>
    public NoteName? FullLow
    {
        get => Measurement.FullLow;
        init => Measurement = Measurement with { FullLow = value };
    }

    /// <summary>The highest note of the full range, not below the highest comfortable one; <see langword="null"/> where it is not known.</summary>
    /// <exception cref="ArgumentException">The note lies below the highest comfortable one or above C8.</exception>
    public NoteName? FullHigh
    {
        get => Measurement.FullHigh;
        init => Measurement = Measurement with { FullHigh = value };
    }

    /// <summary>The name of the voice type (see <see cref="VoiceTypes"/>), as a remark; <see langword="null"/> for none.</summary>
    /// <exception cref="ArgumentException">There is no such voice type.</exception>
    public string? Voice
    {
        get;
        init => field = value is null ? null : VoiceTypes.Find(value)?.Name
            ?? throw new ArgumentException($"there is no voice type {TextError.Quote(value)}; the types are {VoiceTypes.Names}", nameof(Voice));
    }

    /// <summary>Whether the comfortable range was not measured but taken from the voice type as a starting point.</summary>
    public bool IsRangeAssumed => Measurement.IsRangeAssumed;

    /// <summary>The comfortable range with the alias: what drawings show.</summary>
    public PitchBand Band => new(Alias, Low, High) { IsAssumed = IsRangeAssumed };

    /// <summary>
    /// The longest phrase that drills give the singer, in seconds: 0.4, 0.5 or 0.6 of the sustained tone by experience (the project's own
    /// setting; there is no published norm).
    /// </summary>
    public Rational BreathSeconds => SustainedSeconds * Experience switch
    {
        Experience.Beginner => new Rational(2, 5),
        Experience.Intermediate => new Rational(1, 2),
        _ => new Rational(3, 5),
    };

    /// <summary>
    /// The shortest silence in which the singer can breathe, in seconds: 0.8 for a beginner, 0.4 for others (the project's own setting).
    /// </summary>
    public Rational ShortestBreathSeconds => Experience == Experience.Beginner ? new Rational(4, 5) : new Rational(2, 5);

    /// <summary>After how many days a child's or a changing voice is measured anew: 90 (the project's own setting).</summary>
    public static int MeasureAnewDays => 90;

    /// <summary>
    /// Whether a voice that still changes (<see cref="VoiceType.IsStillChanging"/>) is to be measured anew: its newest measurement is
    /// <see cref="MeasureAnewDays"/> days old or older, or has no date. Other voices have no such limit.
    /// </summary>
    /// <param name="on">The day to count to; nothing reads the clock.</param>
    public bool IsMeasuringDue(DateOnly on) => Voice is { } voice && VoiceTypes.Find(voice)!.IsStillChanging
        && (Measurement.Date is not { } date || on.DayNumber - date.DayNumber >= MeasureAnewDays);

    /// <summary>The singer with one more measurement, in its place by date; the newest counts. One without a date stands before all others.</summary>
    /// <param name="measurement">The measurement, of a day that has none yet.</param>
    /// <exception cref="ArgumentException">There is a measurement of that day already, or both have no date.</exception>
    public Singer With(Measurement measurement)
    {
        ArgumentNullException.ThrowIfNull(measurement);
        List<Measurement> all = [.. Older, Measurement];
        if (all.Exists(m => m.Date == measurement.Date))
        {
            throw new ArgumentException($"{Alias} has a measurement {SingerFaults.OfDay(measurement.Date)} already; keep one of the two", nameof(measurement));
        }

        all.Add(measurement);
        all.Sort((a, b) => Nullable.Compare(a.Date, b.Date));
        return this with { Measurement = all[^1], Older = all[..^1].ToValueList() };
    }

    /// <summary>The alias and the range.</summary>
    public override string ToString() => $"{Alias} ({Low} to {High})";
}
