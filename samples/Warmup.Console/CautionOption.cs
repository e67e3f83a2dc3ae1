using System.CommandLine;

namespace Warmup.Cli;

/// <summary>How the cautions are printed: in two lines, or whole with <c>--cautions</c>.</summary>
internal static class CautionOption
{
    public const string Name = "--cautions";

    // To stop, not to sing when hoarse, and to see a doctor: the list begins with the most urgent and ends with the teacher.
    private const int MostUrgent = 3;

    public static Option<bool> Create() => new(Name) { Description = "Print the cautions whole, with their sources, instead of in two lines." };

    /// <summary>Whether the cautions are asked for whole.</summary>
    public static bool IsWhole(ParseResult parsed) => parsed.CommandResult.Command.Options.Any(o => o.Name == Name) && parsed.GetValue<bool>(Name);

    /// <summary>Prints cautions; in short, what the drill itself asks a voice to do follows in a line of its own.</summary>
    public static void Print(TextWriter output, ValueList<Caution> cautions, bool whole)
    {
        if (whole)
        {
            foreach (var caution in cautions)
            {
                output.WriteLine($"- {caution.Text} ({caution.Source})");
            }

            return;
        }

        var (urgent, own) = (Cautions.All.Take(MostUrgent).Select(c => c.Brief).ToList(), cautions.Where(c => !Cautions.All.Contains(c)).Select(c => c.Brief).ToList());
        output.WriteLine(string.Join(' ', urgent.SkipLast(1)));
        output.WriteLine($"{urgent[^1]} When to see one at once, and the rest: {Name}. {Cautions.All[^1].Brief}");
        if (own.Count > 0)
        {
            output.WriteLine(string.Join(' ', own));
        }
    }
}
