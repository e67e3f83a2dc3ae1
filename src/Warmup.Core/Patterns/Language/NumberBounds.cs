using System.Globalization;

namespace Warmup;

/// <summary>How many numbers a word takes in its parentheses, and their range. <c>default</c>: none.</summary>
internal readonly record struct NumberBounds(int Lowest, int Highest, int Fewest = 1, int Most = 1)
{
    /// <summary>What is wrong with the numbers of a word; <see langword="null"/> where nothing is.</summary>
    public string? Fault(string word, ReadOnlySpan<int> numbers)
    {
        if (numbers.Length < Fewest || numbers.Length > Most)
        {
            return Most == 0 ? $"'{word}' takes no numbers"
                : numbers.IsEmpty ? $"'{word}' needs {this}"
                : $"'{word}' takes {this}, not {English.Count(numbers.Length, "number")}";
        }

        foreach (var number in numbers)
        {
            if (number < Lowest || number > Highest)
            {
                return string.Create(CultureInfo.InvariantCulture, $"'{word}' takes {this}, not {number}");
            }
        }

        return null;
    }

    /// <summary>What is wanted: <c>2 numbers from -24 to 24</c>.</summary>
    public override string ToString() => Most switch
    {
        1 => string.Create(CultureInfo.InvariantCulture, $"a number from {Lowest} to {Highest}"),
        _ when Most == Fewest => string.Create(CultureInfo.InvariantCulture, $"{Most} numbers from {Lowest} to {Highest}"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{Fewest} to {Most} numbers from {Lowest} to {Highest}"),
    };
}
