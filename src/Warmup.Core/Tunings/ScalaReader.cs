using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup;

/// <summary>Reads Scala scale files line by line.</summary>
internal static class ScalaReader
{
    public static bool TryRead(TextCursor text, [NotNullWhen(true)] out ScalaFile? file, [NotNullWhen(false)] out TextError? error)
    {
        file = null;
        var line = text;
        if (!TryTakeLine(ref text, ref line))
        {
            error = line.Error("the file has no description; its first line that is not a comment describes the tuning");
            return false;
        }

        if (!TryReadDescription(line, out var description, out error))
        {
            return false;
        }

        if (!TryTakeLine(ref text, ref line))
        {
            error = line.Error("the file ends before the number of pitches");
            return false;
        }

        var pitches = new List<Interval>();
        if (!TryReadCount(line, out var count, out error))
        {
            return false;
        }

        while (TryTakeLine(ref text, ref line))
        {
            var fault = TryReadPitch(line, out var pitch);
            line.SkipWhiteSpace();
            if (pitches.Count == count)
            {
                // Text after the last pitch is harmless, one pitch more means that the count is wrong.
                if (fault is null)
                {
                    error = line.Error(string.Create(CultureInfo.InvariantCulture, $"the file says that it has {count} pitches and has more; mend the count"));
                    return false;
                }
            }
            else if (fault is not null)
            {
                error = line.Error(fault);
                return false;
            }
            else
            {
                pitches.Add(pitch);
            }
        }

        error = pitches.Count == count ? null : line.Error(string.Create(
            CultureInfo.InvariantCulture, $"the file says that it has {count} pitches and ends after {pitches.Count}; mend the count or add the pitches"));
        file = error is null ? new ScalaFile(description, pitches.ToValueList()) : null;
        return file is not null;
    }

    /// <summary>Takes the next line that is not a comment; at the end of the text the last line stays what it was, for errors.</summary>
    private static bool TryTakeLine(ref TextCursor text, ref TextCursor line)
    {
        while (text.TryTakeLine(out var next))
        {
            line = next;
            if (next.Peek() != '!')
            {
                return true;
            }
        }

        return false;
    }

    private static bool TryReadDescription(TextCursor line, out string description, [NotNullWhen(false)] out TextError? error)
    {
        description = line.Rest.TrimEnd().ToString();
        error = Require.IndexOfControl(description) is var control and >= 0
            ? line.ErrorAt(line.Position + control, "the description must not hold control or bidirectional characters")
            : description.Length > ScalaFile.LongestDescription
            ? line.Error(string.Create(CultureInfo.InvariantCulture, $"the description must be at most {ScalaFile.LongestDescription} characters long, not {description.Length}"))
            : null;
        return error is null;
    }

    private static bool TryReadCount(TextCursor line, out int count, [NotNullWhen(false)] out TextError? error)
    {
        line.SkipWhiteSpace();
        var start = line;
        var word = Word(ref line);
        error = int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out count) && count <= ScalaFile.MostPitches
            ? null
            : start.Error(string.Create(
                CultureInfo.InvariantCulture, $"the number of pitches must be between 0 and {ScalaFile.MostPitches}, not {TextError.Quote(word)}"));
        return error is null;
    }

    /// <summary>Reads the pitch at a line's beginning; says what is wrong, or nothing.</summary>
    private static string? TryReadPitch(TextCursor line, out Interval pitch)
    {
        pitch = default;
        line.SkipWhiteSpace();
        var word = Word(ref line);
        var quoted = TextError.Quote(word);
        if (word.IsEmpty)
        {
            return "the line is empty; write a pitch, such as 386.314 or 5/4";
        }

        if (word.Contains('.'))
        {
            if (!Interval.TryReadCents(word, out var cents))
            {
                return $"{quoted} is not a number of cents between -120000 and 120000";
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
            return $"{quoted} is not a pitch; write cents with a period (386.314), a ratio (5/4) or a whole number (2)";
        }

        if (!long.TryParse(numerator, NumberStyles.None, CultureInfo.InvariantCulture, out var n)
            || !long.TryParse(denominator, NumberStyles.None, CultureInfo.InvariantCulture, out var d))
        {
            return $"{quoted} is too large; both numbers of a ratio must be at most {long.MaxValue.ToString(CultureInfo.InvariantCulture)}";
        }

        if (n == 0 || d == 0)
        {
            return $"{quoted} is not a ratio above 0";
        }

        pitch = Interval.FromRatio(new Rational(n, d));
        return null;
    }

    private static bool IsWhole(ReadOnlySpan<char> digits) => !digits.IsEmpty && !digits.ContainsAnyExceptInRange('0', '9');

    private static ReadOnlySpan<char> Word(ref TextCursor line) => line.TakeWhile(static c => !char.IsWhiteSpace(c));
}
