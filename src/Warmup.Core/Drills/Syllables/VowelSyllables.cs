namespace Warmup;

/// <summary>One text on every note: an open vowel, a hum, "lip trill".</summary>
internal sealed record VowelSyllables : SyllableRule
{
    private const int Longest = 20;

    public VowelSyllables(string vowel) => Text = Require.Name(vowel, Longest);

    public override string Name => "vowel";

    public string Text { get; }

    public override string SyllableOf(ScaleTone tone) => Text;

    public override string ToText() => SyllablesText.VowelText(Text);
}
