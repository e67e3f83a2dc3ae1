using System.Globalization;

namespace Warmup.Web;

/// <summary>Searches the catalogue for what was typed: the number of a parent, a name, or letters.</summary>
internal static class ScaleSearch
{
    /// <summary>The scales found; none where nothing was asked.</summary>
    public static ValueList<CatalogueEntry> Of(PageState state)
    {
        var (text, isWithoutP) = (state["find"].Trim(), state["without-p"].Length > 0);
        if (text.Length == 0 && !isWithoutP)
        {
            return [];
        }

        ValueList<Degree> without = isWithoutP ? [new Degree(5)] : [];
        if (text.Length == 0)
        {
            return Catalogue.Default.Search(new ScaleQuery { Without = without });
        }

        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number is >= 1 and <= 72)
        {
            return Catalogue.Default.Search(new ScaleQuery { Without = without, Parent = number });
        }

        var named = Catalogue.Default.Search(new ScaleQuery { Without = without, Text = text });
        if (!named.IsEmpty || !Catalogue.Default.TryFindHolding(text, out var holding, out _))
        {
            return named;
        }

        var all = Catalogue.Default.Search(new ScaleQuery { Without = without });
        return holding.Where(all.Contains).ToValueList();
    }

    /// <summary>Scales that differ by one note.</summary>
    public static ValueList<CatalogueEntry> Neighbours(Scale scale) =>
        Catalogue.Default.Search(new ScaleQuery { OneNoteFrom = scale.Degrees });
}
