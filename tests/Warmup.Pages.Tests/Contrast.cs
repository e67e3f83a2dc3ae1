using System.Globalization;
using System.Text.RegularExpressions;

namespace Warmup.Pages.Tests;

/// <summary>Contrast as WCAG 2.2 defines it: relative luminance, 4.5 to 1 for text.</summary>
internal static class Contrast
{
    public static void IsEnough(double a, double b) => Assert.InRange((Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05), 4.5, 21);

    /// <summary>The relative luminance of an element's colour.</summary>
    public static async Task<double> LuminanceAsync(Browser browser, string selector, string property)
    {
        var colour = (string)(await browser.EvaluateAsync($"getComputedStyle(document.querySelector('{selector}')).{property}"))!;
        var rgb = Regex.Matches(colour, "[0-9.]+").Select(m => double.Parse(m.Value, CultureInfo.InvariantCulture) / 255).ToList();
        Assert.Equal(3, rgb.Count);
        var linear = rgb.ConvertAll(c => c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4));
        return (0.2126 * linear[0]) + (0.7152 * linear[1]) + (0.0722 * linear[2]);
    }
}
