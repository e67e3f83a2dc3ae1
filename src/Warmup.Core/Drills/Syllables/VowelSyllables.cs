namespace Warmup;

/// <summary>One text on every note: an open vowel, a hum, "lip trill".</summary>
internal sealed record VowelSyllables : Syllables
{
    public VowelSyllables(string vowel) => Text = Singable(vowel, "a vowel");

    public override string Name => "vowel";

    public string Text { get; }

    public override string SyllableOf(ScaleTone tone) => Text;
}
