namespace Warmup;

/// <summary>The full names of the sixteen svaras.</summary>
internal sealed record SvaraNameSyllables : SyllableRule
{
    private static readonly string[] Letters = ["Shadja", "Rishabha", "Gandhara", "Madhyama", "Panchama", "Dhaivata", "Nishada"];

    public static Syllables Value { get; } = new(new SvaraNameSyllables());

    public override string Name => "names";

    public override string SyllableOf(ScaleTone tone)
    {
        var degree = tone.Degree;
        if (!degree.IsSvara)
        {
            return degree.ToNumber();
        }

        var variant = (degree.SvaraLetter, degree.Variant) switch
        {
            (_, 0) => string.Empty,
            ('M', 2) => "Prati ",
            (_, 1) => "Shuddha ",
            ('R' or 'D', 2) => "Chatushruti ",
            ('R' or 'D', _) => "Shatshruti ",
            ('G', 2) => "Sadharana ",
            ('G', _) => "Antara ",
            ('N', 2) => "Kaisiki ",
            _ => "Kakali ",
        };
        return variant + Letters[degree.Letter - 1];
    }
}
