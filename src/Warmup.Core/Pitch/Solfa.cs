namespace Warmup;

/// <summary>
/// Movable-do solfa: do is the tonic, raised notes take i and lowered ones e or a (common practice). A degree without a syllable of its
/// own (G1, N1, a raised third) takes the one of its pitch.
/// </summary>
internal static class Solfa
{
    private static readonly string[] Raised = ["do", "di", "re", "ri", "mi", "fa", "fi", "sol", "si", "la", "li", "ti"];
    private static readonly string[] Lowered = ["do", "ra", "re", "me", "mi", "fa", "se", "sol", "le", "la", "te", "ti"];

    private static readonly (string Syllable, int Letter, int Alteration)[] Words =
    [
        ("do", 1, 0), ("di", 1, 1), ("ra", 2, -1), ("re", 2, 0), ("ri", 2, 1), ("me", 3, -1), ("mi", 3, 0), ("fa", 4, 0), ("fi", 4, 1),
        ("se", 5, -1), ("sol", 5, 0), ("so", 5, 0), ("si", 5, 1), ("le", 6, -1), ("la", 6, 0), ("li", 6, 1), ("te", 7, -1), ("ti", 7, 0),
    ];

    public static string SyllableOf(Degree degree) => Syllable(degree.Semitones, degree.Alteration);

    /// <summary>The syllable where the tonic is la, as for minor scales: the natural minor is la ti do re mi fa sol.</summary>
    public static string LaBasedSyllableOf(Degree degree)
    {
        // The tonic is the sixth degree of the major scale it is counted in.
        var semitones = degree.Semitones + 9;
        var letter = ((degree.Letter + 4) % 7) + 1;
        var alteration = semitones - new Degree(letter).Semitones - (degree.Letter + 4 >= 7 ? 12 : 0);
        return Syllable(semitones, alteration);
    }

    public static bool TryParse(ReadOnlySpan<char> word, out Degree degree)
    {
        foreach (var (syllable, letter, alteration) in Words)
        {
            if (word.Equals(syllable, StringComparison.OrdinalIgnoreCase))
            {
                degree = new Degree(letter, alteration);
                return true;
            }
        }

        degree = default;
        return false;
    }

    private static string Syllable(int semitones, int alteration) => (alteration < 0 ? Lowered : Raised)[((semitones % 12) + 12) % 12];
}
