namespace Warmup.Takes.Tests;

/// <summary>What is sung in a made take: one tone after the other, with everything that is exactly known about it.</summary>
internal sealed record SungTone
{
    /// <summary>The index of the drill's note.</summary>
    public required int Index { get; init; }

    /// <summary>Cents above MIDI note 0 that are sung on average, without vibrato.</summary>
    public required double Cents { get; init; }

    /// <summary>Whether another note is sung.</summary>
    public bool IsOther { get; init; }

    public required double Onset { get; init; }

    public required double End { get; init; }

    /// <summary>Whether it goes over into the next one without a gap.</summary>
    public bool Touches { get; init; }

    public char Consonant { get; init; } = ' ';

    public int Vowel { get; init; }
}

/// <summary>What a take is to be like.</summary>
internal sealed record TakePlan
{
    public required string Condition { get; init; }

    public required Score Score { get; init; }

    public required int Voice { get; init; }

    public required int Seed { get; init; }

    public double VibratoCents { get; init; }

    public double? NoiseDb { get; init; }

    public double? DroneDb { get; init; }

    public double ReverbSeconds { get; init; }

    public bool HasErrors { get; init; }

    public double OffsetCents { get; init; }

    public int Octave { get; init; }

    public double DriftCents { get; init; }

    public bool HasConsonants { get; init; } = true;

    public double Pace { get; init; } = 1;

    /// <summary>Seconds of the drone alone before the voice.</summary>
    public double AloneBefore { get; init; }

    /// <summary>Seconds of silence before everything, the drone too.</summary>
    public double SilentBefore { get; init; }

    /// <summary>Seconds of the drone alone after the voice.</summary>
    public double AloneAfter { get; init; }
}

/// <summary>What happened to the order of lines in a made take.</summary>
internal readonly record struct MadeEvent(TakeEventKind Kind, int Line);

/// <summary>A made take.</summary>
internal sealed record MadeTake(TakePlan Plan, float[] Samples, int Rate, List<SungTone> Tones, HashSet<int> LeftOut, List<MadeEvent> Events, double DriftCents);
