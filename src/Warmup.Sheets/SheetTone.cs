namespace Warmup.Sheets;

/// <summary>A tone as a sheet writes it: its letter, and what stands beside it.</summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record SheetTone
{
    internal SheetTone(string letter, string variant, int octave, string dotted)
    {
        Letter = letter;
        Variant = variant;
        Octave = octave;
        Dotted = dotted;
    }

    /// <summary>A blank to write a note into.</summary>
    internal static SheetTone Blank { get; } = new("_", string.Empty, 0, "_");

    /// <summary>The letter without its octave: a svara letter in a script, a solfa syllable or a number.</summary>
    public string Letter { get; }

    /// <summary>The variant, a small number after the letter; empty where the svara has one variant only, or the letter tells it already.</summary>
    public string Variant { get; }

    /// <summary>The octaves above the middle one, a dot above the letter for each; negative below it, with dots below.</summary>
    public int Octave { get; }

    /// <summary>The letter with its dots as combining marks.</summary>
    internal string Dotted { get; }

    private string Signs => Octave == 0 ? string.Empty : new string(Octave > 0 ? '\'' : '_', Math.Abs(Octave));

    /// <summary>The tones of a scale in a row, with variants and with signs for the octaves.</summary>
    internal static string Row(ValueList<SheetTone> tones) => string.Join(' ', tones.ConvertAll(t => t.Letter + t.Variant + t.Signs));

    /// <summary>The letter with a sign for each octave after it: <c>S'</c> above the middle one, <c>N_</c> below.</summary>
    public override string ToString() => Letter + Signs;
}
