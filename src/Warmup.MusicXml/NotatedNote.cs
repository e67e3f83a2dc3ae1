namespace Warmup.MusicXml;

/// <summary>Something that sounds or is silent within one measure, in ticks from the measure's beginning.</summary>
/// <param name="Start">Where it begins.</param>
/// <param name="End">Where it ends.</param>
/// <param name="Note">The index of the note in the section; -1 for silence.</param>
/// <param name="IsFirst">Whether the note begins here and not in an earlier measure.</param>
/// <param name="IsLast">Whether the note ends here and not in a later measure.</param>
internal readonly record struct MeasureEvent(long Start, long End, int Note, bool IsFirst, bool IsLast);

/// <summary>A span of a measure: plain, or filled by one tuplet.</summary>
/// <param name="Start">Where it begins, in ticks from the measure's beginning.</param>
/// <param name="Length">Its length in ticks.</param>
/// <param name="Slots">The equal parts of the tuplet; 0 for a plain span.</param>
/// <param name="NormalSlots">How many slots of the same written value would fill the span without the tuplet.</param>
internal readonly record struct TupletSpan(long Start, long Length, int Slots, int NormalSlots)
{
    public long End => Start + Length;
}

/// <summary>One written note or rest. A note value and a tuplet's slots fit a byte: a measure has many of these.</summary>
internal record struct NotatedNote
{
    /// <summary>Where it begins, in ticks from the measure's beginning.</summary>
    public required long Start { get; init; }

    /// <summary>Its sounding length in ticks.</summary>
    public required long Length { get; init; }

    /// <summary>The index of the note in the section; -1 for a rest.</summary>
    public required int Note { get; init; }

    /// <summary>The note value: 0 for a whole note, 7 for a 128th.</summary>
    public required byte Type { get; init; }

    public required bool IsDotted { get; init; }

    /// <summary>The first piece of its note.</summary>
    public bool IsFirst { get; set; }

    /// <summary>The last piece of its note.</summary>
    public bool IsLast { get; set; }

    /// <summary>The tuplet's slots, or 0.</summary>
    public byte Actual { get; init; }

    /// <summary>The note value of a slot.</summary>
    public byte SlotType { get; init; }

    public bool BeginsTuplet { get; set; }

    public bool EndsTuplet { get; set; }

    /// <summary>Pieces with the same number may share a beam: where the akshara or the wide tuplet begins.</summary>
    public long BeamGroup { get; init; }

    public readonly bool IsRest => Note < 0;

    /// <summary>How many of the slots would fill the tuplet's time without it, or 0.</summary>
    public byte Normal { get; init; }

    /// <summary>The beams of its note value: 1 for an eighth, 5 for a 128th; none for a rest.</summary>
    public readonly int Beams => IsRest ? 0 : Math.Max(0, Type - 2);
}
