using System.Globalization;

namespace Warmup.Voices;

/// <summary>The drill on another tonic. Immutable, value equality.</summary>
public sealed record OtherTonic : Remedy
{
    // Half way between two keys a rounded frequency could belong to the other one.
    private const double FarthestRounded = 49.9;

    /// <summary>Names the tonic.</summary>
    /// <param name="tonic">The tonic.</param>
    public OtherTonic(Tonic tonic) => Tonic = Require.NotNull(tonic);

    /// <summary>The tonic.</summary>
    public Tonic Tonic { get; }

    /// <summary>The tonic as it can be typed, with as many digits as are needed to mean the same pitch: <c>F3</c>, <c>207.652Hz</c>.</summary>
    public string Text
    {
        get
        {
            var reference = Tonic.A4.Equals(Tonic.StandardA4) ? string.Empty : string.Create(CultureInfo.InvariantCulture, $", A4={Tonic.A4:R}Hz");
            var rounded = string.Create(CultureInfo.InvariantCulture, $"{Tonic.Hz:0.###}Hz{reference}");
            return Tonic.OffsetCents != 0 && Tonic.TryParse(rounded, out var read, out _) && read == Tonic ? rounded : Tonic.ToText();
        }
    }

    internal override RemedyKind Kind => RemedyKind.Tonic;

    /// <inheritdoc/>
    public override Drill Apply(Drill drill) => Require.NotNull(drill) with { Tonic = Tonic };

    /// <inheritdoc/>
    public override string Describe(Drill drill)
    {
        var by = Tonic.Midi - Require.NotNull(drill).Tonic.Midi;
        var way = by < 0 ? "lower" : "higher";
        var count = Math.Abs(by);
        return by == 0 ? $"the tonic {Text}"
            : count == 12 ? $"the tonic an octave {way}: {Text}"
            : string.Create(CultureInfo.InvariantCulture, $"a tonic {count} {(count == 1 ? "semitone" : "semitones")} {way}: {Text}");
    }

    /// <summary>The tonic.</summary>
    public override string ToString() => OneLine.Of($"the tonic {Text}");

    /// <summary>A tonic some semitones away, as it is typed: a note's name, or a frequency on a thousandth of a hertz where it lies off its key.</summary>
    internal static OtherTonic Moved(Drill drill, int semitones)
    {
        var moved = drill.Tonic.Transposed(semitones);
        return new OtherTonic(
            moved.OffsetCents == 0 ? Tonic.FromNote(Spelling.ChooseTonic(moved, drill.Scale, out _), moved.A4)
            : Math.Abs(moved.OffsetCents) > FarthestRounded ? moved
            : Tonic.FromHz(Math.Round(moved.Hz, 3, MidpointRounding.ToEven), moved.A4));
    }

    // An octave keeps the names of all notes: half of what its semitones would count.
    internal override int Size(Drill drill) => Math.Abs(Tonic.Midi - drill.Tonic.Midi) is var by && by % 12 == 0 ? by / 2 : by;
}
