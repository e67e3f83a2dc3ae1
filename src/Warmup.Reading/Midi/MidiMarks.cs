using System.Globalization;

namespace Warmup.Reading;

/// <summary>What a MIDI file's markers and time signatures say about lines and measures.</summary>
internal static class MidiMarks
{
    /// <summary>Where measures begin by the time signatures; four quarters where there is none.</summary>
    public static List<Rational> Measures(List<RawMeter> meters, Rational end)
    {
        var measures = new List<Rational>();
        var (at, meter) = (Rational.Zero, 0);
        Rational length = 4;
        while (at < end && measures.Count < ReadingLimits.Measures)
        {
            while (meter < meters.Count && meters[meter].Onset <= at)
            {
                length = meters[meter++].Quarters;
            }

            measures.Add(at);
            at += length;
            if (meter < meters.Count && meters[meter].Onset < at)
            {
                at = meters[meter].Onset;
            }
        }

        return measures;
    }

    /// <summary>Adds the markers to a part: this project's own name lines, those of others are taken for rehearsal marks.</summary>
    public static void Add(RawPart part, List<(Rational Onset, string Text)> markers, RawPiece piece)
    {
        var section = 0;
        foreach (var (onset, text) in markers)
        {
            if (!TryReadOwn(text, out var number, out var line, out var isAnswer))
            {
                part.Marks.Add(new RawMark(onset, MarkKind.Rehearsal, text));
                continue;
            }

            piece.IsOurs = true;
            if (number != section && number > 0)
            {
                section = number;
                part.Marks.Add(new RawMark(onset, MarkKind.Section));
            }

            if (!isAnswer)
            {
                part.Marks.Add(new RawMark(onset, MarkKind.LineNumber, line.ToString(CultureInfo.InvariantCulture)));
            }
        }

        part.SortMarks();
    }

    private static bool TryReadOwn(string text, out int section, out int line, out bool isAnswer)
    {
        (section, line, isAnswer) = (0, 0, false);
        var words = text.Split(' ', 6);
        var at = 0;
        if (words is ["Section", var number, ..])
        {
            if (!int.TryParse(number.TrimEnd(','), NumberStyles.None, CultureInfo.InvariantCulture, out section))
            {
                return false;
            }

            at = 2;
        }

        if (words.Length < at + 2 || words[at] is not ("Line" or "line") || !int.TryParse(words[at + 1].TrimEnd(','), NumberStyles.None, CultureInfo.InvariantCulture, out line))
        {
            return false;
        }

        isAnswer = words.Length == at + 3 && words[at + 2] == "answer";
        return isAnswer || words.Length == at + 2;
    }
}
