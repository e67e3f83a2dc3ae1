namespace Warmup.Reading;

/// <summary>The tala or time signature of a section.</summary>
internal sealed class MeterReading(RawPiece piece, RawPart part, RawSection section)
{
    public Meter Read()
    {
        if (section.Head?.Meter is { } written)
        {
            return written;
        }

        RawMeter? first = null;
        var changes = false;
        foreach (var meter in piece.Meters)
        {
            if (meter.Onset <= section.Start)
            {
                first = meter;
            }
            else if (meter.Onset < section.End)
            {
                changes |= first is null || meter.Groups != first.Groups || meter.Type != first.Type;
                first ??= meter;
            }
        }

        if (first is null || first.IsHidden)
        {
            return Meter.Free;
        }

        if (changes)
        {
            return Free("the time signature changes: read in free rhythm");
        }

        try
        {
            return first.Groups.Count == 1 ? Meter.TimeSignature(first.Groups[0], first.Type) : Meter.Additive(first.Groups, first.Type);
        }
        catch (ArgumentException)
        {
            return Free($"{string.Join("+", first.Groups)}/{first.Type} is no time signature that a drill has: read in free rhythm");
        }
    }

    private Meter Free(string words)
    {
        if (!piece.IsOurs)
        {
            piece.Remarks.Add(RemarkKind.MeterChange, words, part.Place(section.Start));
        }

        return Meter.Free;
    }
}
