using System.Text;

namespace Warmup.Reading;

/// <summary>
/// A line of a mail in the signs that the core reads: dots over and under letters become marks of the octave, the numbers of variants are taken off
/// and remembered, dashes of all lengths are silences. Places in the result lead back to the line.
/// </summary>
internal sealed class MailText
{
    // Letters with a dot above or below as one character.
    private const string Above = "\u1E60S\u1E58R\u0120G\u1E40M\u1E56P\u1E0AD\u1E44N\u1E61s\u1E59r\u0121g\u1E41m\u1E57p\u1E0Bd\u1E45n";
    private const string Below = "\u1E62S\u1E5AR\u1E42M\u1E0CD\u1E46N\u1E63s\u1E5Br\u1E43m\u1E0Dd\u1E47n";

    private readonly StringBuilder _text = new();
    private readonly List<int> _columns = [];

    private MailText()
    {
    }

    public string Text => _text.ToString();

    /// <summary>The variants that were typed, such as R2.</summary>
    public List<Degree> Variants { get; } = [];

    /// <summary>The column, from 1, of a position in <see cref="Text"/>, from 0.</summary>
    public int ColumnOf(int position) => _columns.Count == 0 ? 1 : _columns[Math.Clamp(position, 0, _columns.Count - 1)] + 1;

    public static MailText Of(string line, int from)
    {
        var mail = new MailText();
        for (var i = from; i < line.Length; i++)
        {
            mail.Add(line, i);
        }

        return mail;
    }

    private void Add(string line, int i)
    {
        var c = line[i];
        switch (c)
        {
            case '\u0307':
                Put("'", i);
                break;
            case '\u0323':
                Put("_", i);
                break;
            case '\u2018' or '\u2019' or '\u2032' or '\u02BC' or '`':
                Put("'", i);
                break;
            case '\u201D' or '\u2033' or '"':
                Put("''", i);
                break;
            case '\u2010' or '\u2011' or '\u2012' or '\u2013' or '\u2014' or '\u2212':
                Put("-", i);
                break;
            case '\u2016' or '\u0964' or '\u0965':
                Put("|", i);
                break;
            case '\u00A0':
                Put(" ", i);
                break;
            case >= '1' and <= '3' when i > 0 && Variant(line[i - 1], c) is { } degree && (i < 2 || !char.IsLetterOrDigit(line[i - 2])):
                Variants.Add(degree);
                break;
            default:
                if (Dotted(Above, c) is { } high)
                {
                    Put(high + "'", i);
                }
                else if (Dotted(Below, c) is { } low)
                {
                    Put(low + "_", i);
                }
                else
                {
                    Put(c.ToString(), i);
                }

                break;
        }
    }

    private void Put(string text, int column)
    {
        _text.Append(text);
        for (var i = 0; i < text.Length; i++)
        {
            _columns.Add(column);
        }
    }

    private static string? Dotted(string letters, char c) =>
        c > '\u00FF' && letters.IndexOf(c, StringComparison.Ordinal) is var at and >= 0 && at % 2 == 0 ? letters[at + 1].ToString() : null;

    private static Degree? Variant(char letter, char number) => Degree.TryParse($"{char.ToUpperInvariant(letter)}{number}", out var degree, out _) ? degree : null;
}
