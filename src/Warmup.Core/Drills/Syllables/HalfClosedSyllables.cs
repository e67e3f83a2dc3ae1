namespace Warmup;

/// <summary>A sound made with the mouth half closed, the same on every note: a lip trill, or a hum through a straw.</summary>
internal sealed record HalfClosedSyllables : SyllableKind
{
    private HalfClosedSyllables(string name, string text) => (Name, Text) = (name, text);

    /// <summary>A lip trill; written as choirs write it.</summary>
    public static HalfClosedSyllables LipTrill { get; } = new("lip-trill", "brr");

    /// <summary>Through a straw.</summary>
    public static HalfClosedSyllables Straw { get; } = new("straw", "straw");

    public override string Name { get; }

    public string Text { get; }

    public override string SyllableOf(ScaleTone tone) => Text;
}
