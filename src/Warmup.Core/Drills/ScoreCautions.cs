namespace Warmup;

public sealed partial record Score
{
    /// <summary>The usual cautions (<see cref="Warmup.Cautions.All"/>), and after them those of what the score asks a voice to do.</summary>
    public ValueList<Caution> Cautions
    {
        get
        {
            bool slides = false, swells = false, isShort = false, isHalfClosed = false;
            foreach (var section in Sections)
            {
                isHalfClosed |= section.SungSyllables.AsSpan().ContainsAny(HalfClosedSyllables.LipTrill.Text, HalfClosedSyllables.Straw.Text);
                foreach (ref readonly var note in section.Notes.AsSpan())
                {
                    slides |= note.Joining == Joining.Glide;
                    isShort |= note.Joining == Joining.Staccato;
                    swells |= note.Loudness == Loudness.SwellAndFade;
                }
            }

            return
            [
                .. Warmup.Cautions.All,
                .. slides ? (ReadOnlySpan<Caution>)[Warmup.Cautions.Glide] : [],
                .. swells ? (ReadOnlySpan<Caution>)[Warmup.Cautions.Swell] : [],
                .. isShort ? (ReadOnlySpan<Caution>)[Warmup.Cautions.Staccato] : [],
                .. isHalfClosed ? (ReadOnlySpan<Caution>)[Warmup.Cautions.HalfClosed] : [],
            ];
        }
    }
}
