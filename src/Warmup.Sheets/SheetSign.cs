namespace Warmup.Sheets;

/// <summary>What a sign in a line of a sheet stands for.</summary>
public enum SheetSignKind
{
    /// <summary>A note begins.</summary>
    Note,

    /// <summary>The note is held for one more unit.</summary>
    Hold,

    /// <summary>A breath begins.</summary>
    Breath,

    /// <summary>One more unit of silence.</summary>
    Silence,
}

/// <summary>A sign in a line of a sheet.</summary>
/// <remarks>Immutable, value equality.</remarks>
public readonly record struct SheetSign
{
    internal SheetSign(Rational at, SheetSignKind kind, int note, SheetTone? tone)
    {
        At = at;
        Kind = kind;
        Note = note;
        Tone = tone;
    }

    /// <summary>The sign for each further unit that a note is held (common practice).</summary>
    public static string Hold => ",";

    /// <summary>The sign for a breath (the project's own).</summary>
    public static string Breath => "v";

    /// <summary>The sign for each unit of silence (common practice).</summary>
    public static string Silence => "-";

    /// <summary>Where the sign stands, in aksharas from the section's beginning.</summary>
    public Rational At { get; }

    /// <summary>What it stands for.</summary>
    public SheetSignKind Kind { get; }

    /// <summary>The index in <see cref="Section.Notes"/> of the note that begins here, or of the last one before.</summary>
    public int Note { get; }

    /// <summary>The tone of a note; <see langword="null"/> for other signs.</summary>
    public SheetTone? Tone { get; }

    /// <summary>What is written: the letter of a note, with its variant where it has one, or the sign.</summary>
    public string Text => Kind switch
    {
        SheetSignKind.Note => Tone?.Name ?? string.Empty,
        SheetSignKind.Hold => Hold,
        SheetSignKind.Breath => Breath,
        _ => Silence,
    };

    /// <summary>What is written, and where.</summary>
    public override string ToString() => $"{Text} at {At}";
}
