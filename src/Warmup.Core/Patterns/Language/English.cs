using System.Globalization;

namespace Warmup;

/// <summary>Numbers in sentences: <c>one line</c>, <c>12 notes</c>, <c>every third note</c>.</summary>
internal static class English
{
    private static readonly string[] Numbers =
        ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

    private static readonly string[] Ordinals =
        ["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth", "eleventh", "twelfth"];

    /// <summary><c>no lines</c>, <c>one line</c>, <c>two lines</c>, <c>13 lines</c>.</summary>
    public static string Count(long count, string what) => $"{Number(count)} {what}{(count == 1 ? string.Empty : "s")}";

    /// <summary><c>the first line is</c>, <c>the first two lines are</c>.</summary>
    public static string First(int count, string what) => Several("first", count, what);

    /// <summary><c>the last line is</c>, <c>the last two lines are</c>.</summary>
    public static string Last(int count, string what) => Several("last", count, what);

    /// <summary><c>once</c>, <c>twice</c>, <c>three times</c>.</summary>
    public static string Times(int count) => count switch { 1 => "once", 2 => "twice", _ => Count(count, "time") };

    /// <summary><c>second</c>, <c>13th</c>, <c>21st</c>.</summary>
    public static string Ordinal(int number)
    {
        if (number <= Ordinals.Length)
        {
            return Ordinals[number - 1];
        }

        var ending = (number % 100) is >= 11 and <= 13 ? "th" : (number % 10) switch { 1 => "st", 2 => "nd", 3 => "rd", _ => "th" };
        return number.ToString(CultureInfo.InvariantCulture) + ending;
    }

    /// <summary><c>up two steps</c>, <c>down one step</c>.</summary>
    public static string UpOrDown(int steps) => $"{(steps < 0 ? "down" : "up")} {Count(Math.Abs(steps), "step")}";

    /// <summary><c>2, 1 and 3</c>.</summary>
    public static string List(ValueList<int> numbers) => List(numbers.ConvertAll(n => n.ToString(CultureInfo.InvariantCulture)));

    /// <summary><c>ma, me and mi</c>.</summary>
    public static string List(ValueList<string> items) => items.Count < 2
        ? string.Join(string.Empty, items)
        : $"{string.Join(", ", items.Take(items.Count - 1))} and {items[items.Count - 1]}";

    private static string Several(string which, int count, string what) => count == 1 ? $"the {which} {what} is" : $"the {which} {Count(count, what)} are";

    private static string Number(long number) => number < Numbers.Length ? Numbers[number] : number.ToString(CultureInfo.InvariantCulture);
}
