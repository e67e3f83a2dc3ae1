namespace Warmup;

/// <summary>The words for what the hand does, as sheets and scores print them.</summary>
internal static class KriyaWords
{
    /// <summary>The word for a gesture.</summary>
    /// <param name="kriya">The gesture.</param>
    /// <param name="silent">What stands for no gesture.</param>
    public static string Of(Kriya kriya, string silent) => kriya switch
    {
        Kriya.Clap => "clap",
        Kriya.Wave => "wave",
        Kriya.Silent => silent,
        Kriya.LittleFinger => "little",
        Kriya.RingFinger => "ring",
        Kriya.MiddleFinger => "middle",
        Kriya.IndexFinger => "index",
        _ => "thumb",
    };
}
