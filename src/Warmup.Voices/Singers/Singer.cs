namespace Warmup.Voices;

/// <summary>A singer: an alias, the comfortable range, the sustained tone and the experience. Nothing personal beyond the alias.</summary>
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
    {
        ArgumentNullException.ThrowIfNull(alias);
        Refuse(SingerFaults.OfAlias(alias), nameof(alias));
        Refuse(SingerFaults.OfRange(low, high), nameof(low));
        Alias = alias;
        Low = low;
        High = high;
        SustainedSeconds = SustainedTone.RequireTone(sustainedSeconds, nameof(sustainedSeconds));
        Experience = Require.Defined(experience);
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
        : this(alias, low, high, SustainedTone.Of(trials, rule), experience)
    {
        Trials = trials;
        TrialRule = rule;
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
            ? new Singer(alias, voice.Low, voice.High, sustainedSeconds, experience) { Voice = voice.Name, IsRangeAssumed = true }
            : throw new ArgumentException($"the range of '{voice.Name}' is not a comfortable one, so low and high must be measured", nameof(voice));
    }

    /// <summary>The longest alias, in characters: 60 (the project's own bound).</summary>
    public static int LongestAlias => 60;

    /// <summary>The alias.</summary>
    public string Alias { get; }

    /// <summary>The lowest comfortable note.</summary>
    public NoteName Low { get; }

    /// <summary>The highest comfortable note.</summary>
    public NoteName High { get; }

    /// <summary>The longest sustained tone that counts, in seconds.</summary>
    public Rational SustainedSeconds { get; }

    /// <summary>The experience.</summary>
    public Experience Experience { get; }

    /// <summary>The sustained tones it was taken from; empty where only one value is known.</summary>
    public ValueList<Rational> Trials { get; }

    /// <summary>Which of the trials counts; best where there are none.</summary>
    public TrialRule TrialRule { get; }

    /// <summary>The lowest note of the full range, not above the lowest comfortable one; <see langword="null"/> where it is not known.</summary>
    /// <exception cref="ArgumentException">The note lies above the lowest comfortable one or below C1.</exception>
    public NoteName? FullLow
    {
        get;
        init
        {
            Refuse(SingerFaults.OfFullLow(value, Low), nameof(FullLow));
            field = value;
        }
    }

    /// <summary>The highest note of the full range, not below the highest comfortable one; <see langword="null"/> where it is not known.</summary>
    /// <exception cref="ArgumentException">The note lies below the highest comfortable one or above C8.</exception>
    public NoteName? FullHigh
    {
        get;
        init
        {
            Refuse(SingerFaults.OfFullHigh(value, High), nameof(FullHigh));
            field = value;
        }
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
    public bool IsRangeAssumed { get; internal init; }

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

    /// <summary>The alias and the range.</summary>
    public override string ToString() => $"{Alias} ({Low} to {High})";

    private static void Refuse(string? fault, string parameter)
    {
        if (fault is not null)
        {
            throw new ArgumentException(fault, parameter);
        }
    }
}
