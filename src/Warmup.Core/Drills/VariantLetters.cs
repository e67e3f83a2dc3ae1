namespace Warmup;

/// <summary>The svara letters that stand for more than one pitch, so that a letter alone would not say which is meant.</summary>
/// <remarks>
/// A drill sings D1 and D2 where its scale goes up with one and down with the other, as in Bhairavi. This is the one place that decides which
/// letters take their variant, for what is sung and for every file.
/// </remarks>
internal readonly struct VariantLetters
{
    private const int LettersInAll = 8;

    private readonly byte _several;

    private VariantLetters(byte several) => _several = several;

    /// <summary>The letters of tones.</summary>
    public static VariantLetters Of(ReadOnlySpan<LineTone> tones)
    {
        var seen = default(Seen);
        foreach (var tone in tones)
        {
            seen.Add(tone.Tone.Degree);
        }

        return new VariantLetters(seen.Several);
    }

    /// <summary>The letters of pitches.</summary>
    public static VariantLetters Of(ValueList<ScorePitch> pitches)
    {
        var seen = default(Seen);
        foreach (var pitch in pitches)
        {
            seen.Add(pitch.Tone.Degree);
        }

        return new VariantLetters(seen.Several);
    }

    /// <summary>Whether the letter of a degree stands for more than one pitch.</summary>
    public bool Contains(Degree degree) => degree.IsSvara && (_several & (1 << degree.Letter)) != 0;

    /// <summary>The variants that were met, four bits for each letter.</summary>
    private ref struct Seen
    {
        private uint _variants;

        public byte Several { get; private set; }

        public void Add(Degree degree)
        {
            if (!degree.IsSvara)
            {
                return;
            }

            // S and P have one pitch, and bit 0 of their four.
            var shift = (degree.Letter % LettersInAll) * 4;
            var variant = 1u << degree.Variant;
            var before = (_variants >> shift) & 0xF;
            if (before != 0 && before != variant)
            {
                Several |= (byte)(1 << degree.Letter);
            }

            _variants |= variant << shift;
        }
    }
}
