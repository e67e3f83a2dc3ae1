using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup;

/// <summary>Reads and writes speeds: <c>speed 2</c>, and in other gatis <c>tisra nadai, three to the akshara</c>.</summary>
internal static class SpeedText
{
    private const string Gatis = "3, 4, 5, 7 or 9, or tisra, chatusra, khanda, misra or sankirna";

    // Notes to the akshara, or to two or four aksharas, that are not in chatusra gati.
    private static readonly (int Count, string Word)[] Words =
        [(3, "three"), (5, "five"), (6, "six"), (7, "seven"), (9, "nine"), (10, "ten"), (14, "fourteen"), (18, "eighteen")];

    // What the notes go to, from the first speed to the fourth.
    private static readonly string[] Spans = ["four aksharas", "two aksharas", "the akshara", "the akshara"];

    public static string Write(Speed speed) => speed.Gati == 4
        ? string.Create(CultureInfo.InvariantCulture, $"speed {speed.Kalam}")
        : $"{Name(speed.Gati)} nadai, {Notes(speed)}";

    public static bool TryRead(TextCursor cursor, out Speed value, [NotNullWhen(false)] out TextError? error)
    {
        value = default;
        var text = cursor.Trimmed();
        var start = text;
        if (!char.IsAsciiDigit(text.Peek()) && text.TryTakeWord(out var word) && TryReadGati(word.Rest, out var named))
        {
            value = Speed.OfGati(named);
            error = ReadNotes(text, ref value);
            return error is null;
        }

        text = start;
        text.TryTake("speed");
        text.SkipWhiteSpace();
        var kalamAt = text;
        if (!text.TryTakeInteger(out var kalam) || kalam is < 1 or > Speed.HighestKalam)
        {
            error = kalamAt.Error(string.Create(
                CultureInfo.InvariantCulture, $"a speed must be a number between 1 and {Speed.HighestKalam}, or a gati such as tisra nadai, not {TextError.Quote(kalamAt.Rest)}"));
            return false;
        }

        var gati = 4;
        if (text.TryTakeWord(out var after))
        {
            if (!IsGati(after.Rest) || !text.TryTakeWord(out var name) || !TryReadGati(name.Rest, out gati) || text.TryTakeWord(out _))
            {
                error = after.Error($"after the speed may stand gati {Gatis}, not {TextError.Quote(start.Rest)}");
                return false;
            }
        }

        (value, error) = (new Speed(kalam, gati), null);
        return true;
    }

    /// <summary>What may follow the name of a gati: the word for it, and the notes to the akshara.</summary>
    private static TextError? ReadNotes(TextCursor text, ref Speed speed)
    {
        var rest = text;
        if (rest.TryTakeWord(out var word) && IsGati(word.Rest))
        {
            text = rest;
        }

        if (!text.TryTakeWord(out var first))
        {
            return null;
        }

        var said = first.Rest.ToString();
        while (text.TryTakeWord(out var next))
        {
            said += " " + next.Rest.ToString();
        }

        for (var kalam = 1; kalam <= Speed.HighestKalam; kalam++)
        {
            var other = new Speed(kalam, speed.Gati);
            if (speed.Gati != 4 && said.Equals(Notes(other), StringComparison.OrdinalIgnoreCase))
            {
                speed = other;
                return null;
            }
        }

        return first.Error(speed.Gati == 4
            ? $"after chatusra nadai nothing may stand, not {TextError.Quote(said)}; write speed 1 to speed 4 instead"
            : $"after {Name(speed.Gati)} nadai may stand {Notes(new(3, speed.Gati))}, {Notes(new(4, speed.Gati))}, {Notes(new(2, speed.Gati))} or {Notes(new(1, speed.Gati))}, not {TextError.Quote(said)}");
    }

    private static bool TryReadGati(ReadOnlySpan<char> text, out int gati)
    {
        foreach (var jati in Jatis.All)
        {
            gati = jati.Aksharas();
            if (text.Equals(jati.ToString(), StringComparison.OrdinalIgnoreCase) || (text.Length == 1 && text[0] - '0' == gati))
            {
                return true;
            }
        }

        gati = 4;
        return false;
    }

    private static bool IsGati(ReadOnlySpan<char> word) =>
        word.Equals("gati", StringComparison.OrdinalIgnoreCase) || word.Equals("nadai", StringComparison.OrdinalIgnoreCase);

    // The gatis are named and counted as the jatis are.
    private static string Name(int gati)
    {
        foreach (var jati in Jatis.All)
        {
            if (jati.Aksharas() == gati)
            {
                return jati.ToString().ToLowerInvariant();
            }
        }

        throw new InvalidOperationException($"no gati has {gati} parts");
    }

    private static string Notes(Speed speed)
    {
        var count = speed.Kalam == Speed.HighestKalam ? 2 * speed.Gati : speed.Gati;
        foreach (var (number, word) in Words)
        {
            if (number == count)
            {
                return $"{word} to {Spans[speed.Kalam - 1]}";
            }
        }

        throw new InvalidOperationException($"no speed has {count} notes");
    }
}
