namespace Warmup.Reading;

/// <summary>The names of note values in MusicXML.</summary>
internal static class NoteValues
{
    /// <summary>How many quarter notes a value has; 0 for a name that is none.</summary>
    public static Rational Quarters(string name) => name switch
    {
        "maxima" => new Rational(32),
        "long" => new Rational(16),
        "breve" => new Rational(8),
        "whole" => new Rational(4),
        "half" => new Rational(2),
        "quarter" => Rational.One,
        "eighth" => new Rational(1, 2),
        "16th" => new Rational(1, 4),
        "32nd" => new Rational(1, 8),
        "64th" => new Rational(1, 16),
        "128th" => new Rational(1, 32),
        "256th" => new Rational(1, 64),
        _ => default,
    };
}
