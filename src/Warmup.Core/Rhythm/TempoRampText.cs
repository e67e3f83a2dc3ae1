using System.Diagnostics.CodeAnalysis;

namespace Warmup;

/// <summary>Reads a tempo or a ramp as people write it.</summary>
internal static class TempoRampText
{
    private const string To = " to ";
    private const string By = " by ";

    public static bool TryRead(TextCursor cursor, [NotNullWhen(true)] out TempoRamp? ramp, [NotNullWhen(false)] out TextError? error)
    {
        ramp = null;
        var to = cursor.Rest.IndexOf(To, StringComparison.OrdinalIgnoreCase);
        if (to < 0)
        {
            ramp = TryRead(cursor, Tempo.Slowest, Tempo.Fastest, "the tempo", out var tempo, out error) ? TempoRamp.Constant(tempo) : null;
            return error is null && ramp is not null;
        }

        var rest = cursor;
        rest.Position += to + To.Length - 1;
        var by = rest.Rest.IndexOf(By, StringComparison.OrdinalIgnoreCase);
        if (by < 0)
        {
            error = cursor.ErrorAt(cursor.End, "a ramp needs its step; write it as 60 to 90 by 5");
            return false;
        }

        var step = rest;
        step.Position += by + By.Length;
        if (!TryRead(cursor.Before(cursor.Position + to), Tempo.Slowest, Tempo.Fastest, "the start of a ramp", out var start, out error)
            || !TryRead(rest.Before(rest.Position + by + 1), start, Tempo.Fastest, "the ceiling of a ramp", out var ceiling, out error)
            || !TryRead(step, TempoRamp.SmallestStep, Tempo.Fastest - Tempo.Slowest, "the step of a ramp", out var size, out error))
        {
            return false;
        }

        ramp = new TempoRamp(start, size, ceiling);
        return true;
    }

    private static bool TryRead(TextCursor cursor, Rational least, Rational most, string what, out Rational value, [NotNullWhen(false)] out TextError? error)
    {
        var piece = cursor.Trimmed();
        error = Rational.TryRead(piece.Rest, out value) && value >= least && value <= most
            ? null
            : piece.Error($"{what} must be a number between {least} and {most} aksharas a minute, not {TextError.Quote(piece.Rest)}");
        return error is null;
    }
}
