using System.CommandLine;
using System.CommandLine.Parsing;
using Warmup.Reading;

namespace Warmup.Cli;

/// <summary><c>--add</c>: the teacher's own drills, each typed as after <c>--pattern</c>, with a <c>--tala</c> of its own after it.</summary>
internal sealed class AddedDrills
{
    private const string Group = "own";

    public Option<string[]> Add { get; } = new("--add")
    {
        Description = "A drill of your own that the plan draws on as well: a pattern or an exercise, as after --pattern of 'warmup drill', or a MusicXML, MIDI or text file. It can be given several times; each may be followed by its --tala.",
    };

    public Option<string[]> Tala { get; } = new("--tala")
    {
        Description = "The tala, time signature or free rhythm of the --add before it; adi by default, or the exercise's own tala.",
    };

    /// <summary>The drills in the order in which they were typed.</summary>
    /// <exception cref="InputException">A pattern or a tala cannot be read, or a tala follows no drill.</exception>
    public ValueList<Exercise> Read(ParseResult parsed)
    {
        var typed = new List<(string Pattern, string? Tala)>();
        var option = string.Empty;
        foreach (var token in parsed.Tokens)
        {
            if (token.Type == TokenType.Option)
            {
                option = token.Value;
            }
            else if (option == Add.Name)
            {
                typed.Add((token.Value, null));
            }
            else if (option == Tala.Name)
            {
                typed[^1] = typed.Count > 0 && typed[^1].Tala is null
                    ? (typed[^1].Pattern, token.Value)
                    : throw new InputException($"--tala {TextError.Quote(token.Value)} follows no --add; write it after the drill that it belongs to, one for each");
            }
        }

        return typed.Select((drill, i) => Read(drill.Pattern, drill.Tala, i + 1)).ToValueList();
    }

    private static Exercise Read(string text, string? typed, int number)
    {
        var tala = typed is null ? null : OptionValue.Parsed<Meter>("--tala", typed, Meter.TryParse).ToText();
        if (DrillFile.IsNamed(text))
        {
            var path = text.Trim();
            var section = DrillFile.Read("--add", path, ReadingOptions.Default, CancellationToken.None).Sections[0];
            var title = OneLine(section.Title.Length > 0 ? section.Title : path);
            return new Exercise(Group, number, title, DrillFile.PatternOf("--add", path, section, CancellationToken.None), "read from a file", tala ?? string.Empty);
        }

        return Repertoire.Find(text.Trim()) is { } exercise
            ? tala is null ? exercise : new Exercise(Group, number, $"{exercise.Name}: {exercise.Title}", exercise.Pattern, exercise.Source, tala)
            : new Exercise(Group, number, OneLine(text), OptionValue.Pattern("--add", text), "typed with --add", tala ?? string.Empty);
    }

    // A title is short; the plan's file has the whole pattern.
    private static string OneLine(string text)
    {
        var words = string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return words.Length <= LongestTitle ? words : words[..LongestTitle];
    }

    private const int LongestTitle = 100;
}
