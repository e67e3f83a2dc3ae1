namespace Warmup;

/// <summary>What a scale turns into when one of its notes becomes the tonic (graha bheda).</summary>
/// <remarks>Immutable.</remarks>
public sealed class ModalShift
{
    internal ModalShift(Degree home, Scale shifted, ValueList<CatalogueEntry> matches)
    {
        Home = home;
        Shifted = shifted;
        Matches = matches;
    }

    /// <summary>The note of the scale that becomes the tonic.</summary>
    public Degree Home { get; }

    /// <summary>The scale heard from there.</summary>
    public Scale Shifted { get; }

    /// <summary>The rows of the catalogue whose ascent and descent have the same pitches in the same order.</summary>
    public ValueList<CatalogueEntry> Matches { get; }

    /// <summary>The new tonic and what the catalogue calls the scale: <c>from G3: Hindolam</c>.</summary>
    public override string ToString() =>
        OneLine.Of($"from {Home}: {(Matches.IsEmpty ? Shifted.ToNotesText() : string.Join(", ", Matches.Select(m => m.Scale.Name)))}");
}

public sealed partial class Catalogue
{
    /// <summary>Which scales of the catalogue a scale turns into when another of its notes becomes the tonic.</summary>
    /// <param name="scale">The scale.</param>
    /// <returns>
    /// A row for each note that both lists have, from the tonic up; the first one, the tonic itself, names the scales that sound alike.
    /// Empty for a scale that ends below the upper tonic.
    /// </returns>
    public ValueList<ModalShift> ShiftsOf(Scale scale)
    {
        ArgumentNullException.ThrowIfNull(scale);
        if (!scale.HasUpperTonic)
        {
            return [];
        }

        var shifts = new List<ModalShift>();
        foreach (var home in scale.Degrees)
        {
            if (!Has(scale.Ascent, home) || !Has(scale.Descent, home))
            {
                continue;
            }

            var shifted = scale.Rotated(NameFor(scale, home), home);
            shifts.Add(new ModalShift(home, shifted, Entries.Where(e => SoundsAs(e.Scale, shifted)).ToValueList()));
        }

        return shifts.ToValueList();
    }

    private static string NameFor(Scale scale, Degree home)
    {
        var name = home == default ? scale.Name : $"{scale.Name} from {home}";
        return name.Length <= Scale.LongestName ? name : $"mode from {home}";
    }

    private static bool Has(ValueList<ScaleTone> tones, Degree degree) => tones.Any(t => t.Degree == degree);

    private static bool SoundsAs(Scale a, Scale b) => a.HasUpperTonic && SameOctave(a.List(ScaleDirection.Ascent), b.List(ScaleDirection.Ascent))
        && SameOctave(a.List(ScaleDirection.Descent), b.List(ScaleDirection.Descent));

    /// <summary>Whether two lists have the same pitches from the tonic to the upper tonic; notes beyond are left aside.</summary>
    private static bool SameOctave(ScaleList a, ScaleList b)
    {
        if (a.Top != b.Top)
        {
            return false;
        }

        for (var step = 0; step <= a.Top; step++)
        {
            if (a[step]!.Value.Semitones != b[step]!.Value.Semitones)
            {
                return false;
            }
        }

        return true;
    }
}
