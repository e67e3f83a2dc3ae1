namespace Warmup.Cli;

/// <summary>The report of <c>warmup singers</c> as JSON: a class with its limits, or the voice types, or both.</summary>
internal sealed record SingersJson(
    string Schema, string? On, List<SingersJson.ClassSinger> Singers, List<SingersJson.VoiceRow>? VoiceTypes, List<ClassJson.CautionRow> Cautions, List<string> Files)
{
    public const string Name = "urn:warmup:class:1";

    /// <summary>The report.</summary>
    /// <param name="singers">The class; it may be empty.</param>
    /// <param name="on">The day on which to say whose voice is to be measured anew, if one was named.</param>
    /// <param name="withVoices">Whether the voice types are wanted.</param>
    /// <param name="files">The files that were written.</param>
    public static SingersJson Of(ValueList<Singer> singers, DateOnly? on, bool withVoices, List<string> files) => new(
        Name,
        on is { } day ? SingersHistory.Day(day) : null,
        [.. singers.Select(s => ToPerson(s, on))],
        withVoices ? [.. Warmup.Voices.VoiceTypes.All.Select(ToRow)] : null,
        [.. Warmup.Cautions.All.Select(c => new ClassJson.CautionRow(c.Text, c.Source))],
        files);

    private static ClassSinger ToPerson(Singer singer, DateOnly? on) => new(
        singer.Alias,
        singer.Low.ToString(),
        singer.High.ToString(),
        singer.IsRangeAssumed,
        singer.FullLow?.ToString(),
        singer.FullHigh?.ToString(),
        singer.Voice,
        singer.Experience.ToWord(),
        singer.SustainedSeconds.ToDouble(),
        singer.BreathSeconds.ToDouble(),
        singer.ShortestBreathSeconds.ToDouble(),
        on is { } day ? singer.IsMeasuringDue(day) : null);

    private static VoiceRow ToRow(VoiceType type) => new(type.Name, type.Low.ToString(), type.High.ToString(), SingersCommand.Kind(type.Kind), type.HowSure, type.Source, type.Caution);

    /// <summary>A singer: comfortable and full range, and seconds of sustained tone, of the longest phrase and of the shortest breath.</summary>
    internal sealed record ClassSinger(
        string Alias,
        string Low,
        string High,
        bool RangeAssumed,
        string? FullLow,
        string? FullHigh,
        string? Voice,
        string Experience,
        double SustainedSeconds,
        double LongestPhraseSeconds,
        double ShortestBreathSeconds,
        bool? MeasureAnew);

    internal sealed record VoiceRow(string Name, string Low, string High, string Kind, string HowSure, string Source, string Caution);
}
