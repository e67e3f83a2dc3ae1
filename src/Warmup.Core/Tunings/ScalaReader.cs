using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup;

/// <summary>Reads Scala scale files line by line.</summary>
internal ref struct ScalaReader
{
    private readonly ReadOnlySpan<char> _text;
    private int _at;
    private int _line;

    private ScalaReader(string text) => _text = text;

    public static bool TryRead(string text, [NotNullWhen(true)] out ScalaFile? file, [NotNullWhen(false)] out TextError? error)
    {
        file = null;
        if (text.Length > ScalaFile.LargestFile)
        {
            error = TextError.At(1, string.Create(
                CultureInfo.InvariantCulture, $"a .scl file must be at most {ScalaFile.LargestFile} characters long; shorten its comments"));
            return false;
        }

        var reader = new ScalaReader(text);
        file = reader.Read(out error);
        return file is not null;
    }

    private ScalaFile? Read(out TextError? error)
    {
        if (!NextLine(out var description))
        {
            error = Fail(0, "the file has no description; its first line that is no comment describes the tuning");
            return null;
        }

        if (Require.IndexOfControl(description.TrimEnd()) is var control and >= 0)
        {
            error = Fail(control, "the description must not hold control or bidirectional characters");
            return null;
        }

        var shown = description.TrimEnd().ToString();
        if (!NextLine(out var countLine))
        {
            error = Fail(0, "the file ends before the number of pitches");
            return null;
        }

        var start = Indent(countLine);
        var word = Word(countLine[start..]);
        if (!int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var count) || count > ScalaFile.MostPitches)
        {
            error = Fail(start, string.Create(
                CultureInfo.InvariantCulture, $"the number of pitches must be between 0 and {ScalaFile.MostPitches}, not {TextError.Quote(word)}"));
            return null;
        }

        var pitches = new List<Interval>();
        while (NextLine(out var line))
        {
            if (pitches.Count == count)
            {
                // Text behind the last pitch is harmless, one pitch more means that the count is wrong.
                if (TryReadPitch(line, out _) is null)
                {
                    error = Fail(Indent(line), string.Create(CultureInfo.InvariantCulture, $"the file says that it has {count} pitches and has more; mend the count"));
                    return null;
                }

                continue;
            }

            if (TryReadPitch(line, out var pitch) is { } why)
            {
                error = Fail(Indent(line), why);
                return null;
            }

            pitches.Add(pitch);
        }

        if (pitches.Count < count)
        {
            error = Fail(0, string.Create(CultureInfo.InvariantCulture, $"the file says that it has {count} pitches and ends after {pitches.Count}; mend the count or add the pitches"));
            return null;
        }

        error = null;
        return new ScalaFile(shown, pitches.ToValueList());
    }

    /// <summary>Reads the pitch at a line's beginning; says what is wrong, or nothing.</summary>
    private static string? TryReadPitch(ReadOnlySpan<char> line, out Interval pitch)
    {
        pitch = default;
        var word = Word(line[Indent(line)..]);
        var quoted = TextError.Quote(word);
        if (word.IsEmpty)
        {
            return "the line is empty; write a pitch, such as 386.314 or 5/4";
        }

        if (word.Contains('.'))
        {
            const NumberStyles Cents = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint;
            if (!double.TryParse(word, Cents, CultureInfo.InvariantCulture, out var cents) || !(Math.Abs(cents) <= 120_000))
            {
                return $"{quoted} is no number of cents between -120000 and 120000";
            }

            pitch = Interval.FromCents(cents);
            return null;
        }

        var slash = word.IndexOf('/');
        var numerator = slash < 0 ? word : word[..slash];
        var denominator = slash < 0 ? "1" : word[(slash + 1)..];
        if (numerator.StartsWith("-") || denominator.StartsWith("-"))
        {
            return $"{quoted} is negative; a ratio must be above 0";
        }

        if (!IsWhole(numerator) || !IsWhole(denominator))
        {
            return $"{quoted} is no pitch; write cents with a period (386.314), a ratio (5/4) or a whole number (2)";
        }

        if (!long.TryParse(numerator, NumberStyles.None, CultureInfo.InvariantCulture, out var n)
            || !long.TryParse(denominator, NumberStyles.None, CultureInfo.InvariantCulture, out var d))
        {
            return $"{quoted} is too large; both numbers of a ratio must be at most {long.MaxValue.ToString(CultureInfo.InvariantCulture)}";
        }

        if (n == 0 || d == 0)
        {
            return $"{quoted} is no ratio above 0";
        }

        pitch = Interval.FromRatio(new Rational(n, d));
        return null;
    }

    private static bool IsWhole(ReadOnlySpan<char> digits) => !digits.IsEmpty && !digits.ContainsAnyExceptInRange('0', '9');

    private static int Indent(ReadOnlySpan<char> line) => line.Length - line.TrimStart().Length;

    private static ReadOnlySpan<char> Word(ReadOnlySpan<char> text)
    {
        var end = 0;
        while (end < text.Length && !char.IsWhiteSpace(text[end]))
        {
            end++;
        }

        return text[..end];
    }

    private readonly TextError Fail(int column, string message) => new(Math.Max(1, _line), column + 1, message);

    /// <summary>The next line that is no comment, without its end; line ends are \n, \r\n or \r.</summary>
    private bool NextLine(out ReadOnlySpan<char> line)
    {
        while (_at < _text.Length)
        {
            var rest = _text[_at..];
            var length = rest.IndexOfAny('\n', '\r');
            line = length < 0 ? rest : rest[..length];
            _at += line.Length;
            if (length >= 0)
            {
                _at += rest[length] == '\r' && length + 1 < rest.Length && rest[length + 1] == '\n' ? 2 : 1;
            }

            _line++;
            if (!line.StartsWith("!"))
            {
                return true;
            }
        }

        line = default;
        return false;
    }
}
