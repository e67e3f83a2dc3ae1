namespace Warmup.Reading;

/// <summary>Codes of findings about what was read.</summary>
public static class ReadingFindingCode
{
    /// <summary>What belonged to single notes was left out, because there are other notes now.</summary>
    public const string LeftOut = "reading.left-out";
}
