using System.Reflection;

namespace Warmup.Tests;

/// <summary>The drawings of docs/scales.md against the catalogue: each is read off column by column.</summary>
public class ScalesDrawingsTests
{
    [Fact]
    public void At_least_five_scales_are_drawn_as_the_catalogue_has_them()
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("scales.md");
        Assert.SkipWhen(stream is null, "the tests were built without the docs beside them");
        using var reader = new StreamReader(stream!);
        var drawn = 0;
        var name = string.Empty;
        List<string>? drawing = null;
        while (reader.ReadLine() is { } line)
        {
            if (line.StartsWith("### ", StringComparison.Ordinal))
            {
                name = line[4..];
            }
            else if (line.StartsWith("```", StringComparison.Ordinal))
            {
                if (drawing is not null)
                {
                    var scale = Catalogue.Default.Find(name)!.Scale;
                    Assert.Equal($"{string.Join(' ', scale.Ascent)} | {string.Join(' ', scale.Descent)}", Read(drawing));
                    drawn++;
                }

                drawing = drawing is null ? [] : null;
            }
            else
            {
                drawing?.Add(line);
            }
        }

        Assert.InRange(drawn, 5, int.MaxValue);
    }

    /// <summary>A column of three characters for each note; the row's label names it.</summary>
    private static string Read(List<string> drawing)
    {
        var notes = new List<string>();
        for (var column = 4; column < drawing[0].Length; column += 3)
        {
            var marks = drawing.Select(row => row[column..(column + 3)].Trim()).ToList();
            notes.Add(marks.TrueForAll(m => m == "|") ? "|" : drawing[marks.IndexOf("o")][..4].Trim());
        }

        return string.Join(' ', notes);
    }
}
