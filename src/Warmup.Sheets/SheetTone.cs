namespace Warmup.Sheets;

/// <summary>A tone as a sheet writes it: its letter, and what stands beside it.</summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record SheetTone
{
    private readonly string _dotted;

    internal SheetTone(string letter, string variant, int octave, string dotted)
    {
        Letter = letter;
        Variant = variant;
        Octave = octave;
        _dotted = dotted;
    }

    /// <summary>A blank to write a note into.</summary>
    internal static SheetTone Blank { get; } = new("_", string.Empty, 0, "_");

    /// <summary>The letter without its octave: a svara letter in a script, a solfa syllable or a number.</summary>
    public string Letter { get; }

    /// <summary>
    /// The variant, a small number after the letter; empty where the svara has one variant only, or the letter tells it already. In a line it stands
    /// only where the section has the letter at more than one pitch.
    /// </summary>
    public string Variant { get; private init; }

    /// <summary>The octaves above the middle one, a dot above the letter for each; negative below it, with dots below.</summary>
    public int Octave { get; }

    /// <summary>The letter with its dots as combining marks, and the variant as a subscript.</summary>
    internal string Dotted => _dotted + string.Concat(Variant.Select(digit => (char)('\u2080' + digit - '0')));

    /// <summary>The letter with its variant: <c>D2</c>.</summary>
    internal string Name => Letter + Variant;

    private string Signs => Octave == 0 ? string.Empty : new string(Octave > 0 ? '\'' : '_', Math.Abs(Octave));

    /// <summary>The tones of a scale in a row, with variants and with signs for the octaves.</summary>
    internal static string Row(ValueList<SheetTone> tones) => string.Join(' ', tones.ConvertAll(t => t.ToString()));

    /// <summary>The same tone by its letter alone.</summary>
    internal SheetTone WithoutVariant() => this with { Variant = string.Empty };

    /// <summary>The letter with its variant and a sign for each octave: <c>S'</c> above the middle one, <c>N3_</c> below.</summary>
    public override string ToString() => Name + Signs;
}
