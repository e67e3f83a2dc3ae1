using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup;

/// <summary>Reads and writes angas, by their signs or by their gestures in words.</summary>
internal static class AngaText
{
    // In the order of the gestures.
    private static readonly string[] Words = ["clap", "little", "ring", "middle", "index", "thumb", "wave", "silent"];

    public static bool TryRead(TextCursor cursor, out Anga anga, [NotNullWhen(false)] out TextError? error)
    {
        anga = default;
        error = null;
        var text = cursor.Trimmed();
        if (TryReadSign(text.Rest, out anga))
        {
            return true;
        }

        var gestures = new List<Kriya>();
        while (text.TryTakeWord(out var word))
        {
            if (gestures.Count == Meter.MostBeats)
            {
                error = word.Error(string.Create(CultureInfo.InvariantCulture, $"an anga must have 1 to {Meter.MostBeats} gestures; this is one more"));
                return false;
            }

            if (!TryReadGesture(word.Rest, out var gesture))
            {
                error = word.Error($"{TextError.Quote(word.Rest)} is not a gesture; write I3, I4, I5, I7 or I9 for a laghu, O for a drutam, U for an anudrutam, or gestures: {string.Join(' ', Words)}");
                return false;
            }

            gestures.Add(gesture);
        }

        if (gestures.Count == 0)
        {
            error = cursor.Error("the anga is missing; write for example I4, O, U or clap silent");
            return false;
        }

        anga = new Anga(gestures.ToValueList());
        return true;
    }

    public static string Write(ValueList<Kriya> gestures) => string.Join(' ', gestures.ConvertAll(g => Words[(int)g]));

    private static bool TryReadSign(ReadOnlySpan<char> text, out Anga anga)
    {
        anga = default;
        switch (text)
        {
            case "O" or "o":
                anga = Anga.Drutam;
                return true;
            case "U" or "u":
                return true;
            case ['I' or 'i', var digit]:
                foreach (var jati in Jatis.All)
                {
                    if (jati.Aksharas() == digit - '0')
                    {
                        anga = Anga.Laghu(jati);
                        return true;
                    }
                }

                return false;
            default:
                return false;
        }
    }

    private static bool TryReadGesture(ReadOnlySpan<char> word, out Kriya gesture)
    {
        for (var i = 0; i < Words.Length; i++)
        {
            if (word.Equals(Words[i], StringComparison.OrdinalIgnoreCase))
            {
                gesture = (Kriya)i;
                return true;
            }
        }

        gesture = default;
        return false;
    }
}
