using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup;

/// <summary>Reads a tempo or a ramp as people write it.</summary>
internal static class TempoRampText
{
    private const string To = " to ";
    private const string By = " by ";

    // Longer texts are refused before they are looked at: three numbers of 64 characters and two words.
    private const int Longest = 200;

    public static bool TryParse(string text, [NotNullWhen(true)] out TempoRamp? ramp, [NotNullWhen(false)] out TextError? error)
    {
        (ramp, error) = (null, null);
        if (text.Length > Longest)
        {
            error = TextError.At(1, string.Create(CultureInfo.InvariantCulture, $"a tempo must be at most {Longest} characters long, not {text.Length}"));
            return false;
        }

        var to = text.IndexOf(To, StringComparison.OrdinalIgnoreCase);
        if (to < 0)
        {
            if (!TryRead(text, 0, text.Length, Tempo.Slowest, Tempo.Fastest, "the tempo", out var tempo, out error))
            {
                return false;
            }

            ramp = TempoRamp.Constant(tempo);
            return true;
        }

        var by = text.IndexOf(By, to + To.Length - 1, StringComparison.OrdinalIgnoreCase);
        if (by < 0)
        {
            error = TextError.At(text.Length + 1, "a ramp needs its step; write it as 60 to 90 by 5");
            return false;
        }

        if (!TryRead(text, 0, to, Tempo.Slowest, Tempo.Fastest, "the start of a ramp", out var start, out error)
            || !TryRead(text, to + To.Length, by, start, Tempo.Fastest, "the ceiling of a ramp", out var ceiling, out error)
            || !TryRead(text, by + By.Length, text.Length, TempoRamp.SmallestStep, Tempo.Fastest - Tempo.Slowest, "the step of a ramp", out var step, out error))
        {
            return false;
        }

        ramp = new TempoRamp(start, step, ceiling);
        return true;
    }

    private static bool TryRead(
        string text, int from, int end, Rational least, Rational most, string what, out Rational value, [NotNullWhen(false)] out TextError? error)
    {
        var piece = from < end ? text[from..end] : string.Empty;
        error = Rational.TryParse(piece, out value) && value >= least && value <= most
            ? null
            : TextError.At(
                from + 1 + (piece.Length - piece.TrimStart().Length),
                $"{what} must be a number between {least} and {most} aksharas a minute, not {TextError.Quote(piece.Trim())}");
        return error is null;
    }
}
