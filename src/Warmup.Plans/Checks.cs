using System.Globalization;
using System.Runtime.CompilerServices;

namespace Warmup.Plans;

/// <summary>Checks of what a plan is made from.</summary>
internal static class Checks
{
    /// <summary>Refuses a name that is empty or too long, or holds control or bidirectional characters.</summary>
    public static string Name(string value, int longest, string what, [CallerMemberName] string? parameter = null)
    {
        ArgumentNullException.ThrowIfNull(value, parameter);
        return value.Length > 0 ? Require.PlainText(value, longest, what) : throw new ArgumentException($"{what} must have 1 to {longest} characters, not 0", parameter);
    }

    /// <summary>Whether a piece of text would be taken for a name.</summary>
    public static bool IsName(ReadOnlySpan<char> text, int longest) => text.Length > 0 && text.Length <= longest && Require.IndexOfControl(text) < 0;

    /// <summary>Refuses a list that holds <see langword="null"/>.</summary>
    public static ValueList<T> NoNulls<T>(ValueList<T> items, string name)
        where T : class
    {
        foreach (var item in items)
        {
            ArgumentNullException.ThrowIfNull(item, name);
        }

        return items;
    }

    /// <summary>Reads a whole number of digits alone. .NET's own reader passes over NULs after a number, so that "64" and a NUL would be 64.</summary>
    public static bool TryWhole(ReadOnlySpan<char> text, int least, int most, out int number)
    {
        number = 0;
        return !text.Contains('\0') && int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out number) && number >= least && number <= most;
    }
}
