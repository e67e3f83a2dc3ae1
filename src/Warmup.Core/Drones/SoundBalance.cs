namespace Warmup;

/// <summary>
/// How loud what accompanies a voice is against it: one setting for everything that sounds. MIDI files, sound files and practice pages are set by
/// it with their usual instruments.
/// </summary>
/// <remarks>Differences of loudness as Recommendation ITU-R BS.1770-5 (2023) measures it, each part alone and while it sounds.</remarks>
public static class SoundBalance
{
    /// <summary>How many decibels the drone lies below the voice: 8, to be sung over and still be heard (the project's own setting).</summary>
    public static double DroneBelowVoice => 8;
}
