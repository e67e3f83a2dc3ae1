namespace Warmup.Web;

/// <summary>How a drill climbs.</summary>
/// <param name="Semitones">How far, in semitones.</param>
/// <param name="Cue">What is heard on each new tonic, or <see langword="null"/>.</param>
internal sealed record ClimbWish(int Semitones, Pattern? Cue)
{
    /// <summary>The climb of a drill.</summary>
    public Climb Of(Drill drill) => new() { Drill = drill, Semitones = Semitones, Cue = Cue };
}

/// <summary>Reads whether a drill climbs, and what is heard on each new tonic.</summary>
internal static class ClimbQuery
{
    /// <summary>The words for what is heard, in the program's own spelling.</summary>
    public static ValueList<(string Word, Pattern? Cue)> Cues { get; } = [("note", Climb.TonicNote), ("chord", Climb.BrokenChord), ("none", null)];

    /// <summary>The climb; nothing where the drill stays on its tonic.</summary>
    public static ClimbWish? Read(QueryValues values)
    {
        var cue = values.OneOf("cue", "note", [.. Cues]);
        if (values.Peek("climb") is null)
        {
            if (values.Peek("cue") is not null)
            {
                values.Wrong("cue", "belongs to a climb: say how far it climbs, or leave it empty");
            }

            return null;
        }

        if (values.Peek("drone") is { } drone && drone != "none")
        {
            values.Wrong("drone", "would sound against a climb, which moves the tonic: leave it empty, or do not climb");
        }

        return new ClimbWish(values.Whole("climb", 1, Climb.MostSemitones, 1), cue);
    }
}
