namespace Warmup;

/// <summary>What a scale turns into when one of its notes becomes the tonic (graha bheda).</summary>
/// <param name="Home">The note of the scale that becomes the tonic.</param>
/// <param name="Shifted">The scale heard from there.</param>
/// <param name="Matches">The rows of the catalogue whose ascent and descent have the same pitches in the same order.</param>
public sealed record ModalShift(Degree Home, Scale Shifted, ValueList<CatalogueEntry> Matches);

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
        if (!scale.ReachesUpperTonic)
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
            shifts.Add(new ModalShift(home, shifted, ((IEnumerable<CatalogueEntry>)Entries).Where(e => SoundsAs(e.Scale, shifted)).ToValueList()));
        }

        return shifts.ToValueList();
    }

    private static string NameFor(Scale scale, Degree home)
    {
        var name = home == default ? scale.Name : $"{scale.Name} from {home}";
        return name.Length <= Scale.LongestName ? name : $"mode from {home}";
    }

    private static bool Has(ValueList<ScaleTone> tones, Degree degree) => ((IEnumerable<ScaleTone>)tones).Any(t => t.Degree == degree);

    private static bool SoundsAs(Scale a, Scale b) => a.ReachesUpperTonic && SameOctave(a.List(ScaleDirection.Ascent), b.List(ScaleDirection.Ascent))
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
