using System.Globalization;

namespace Warmup.Tests;

/// <summary>The published tables of talas and exercises, as the tests' expectations. Each row names its source in "status".</summary>
public static class TimeTables
{
    public static IReadOnlyList<TalaRow> Talas { get; } =
    [
        .. Read("tala35.tsv").Select(c => new TalaRow(
            c["tala"], c["angas"], c["jati"], c["anga_aksharas"], int.Parse(c["avartana_aksharas"], CultureInfo.InvariantCulture), c["kriya"], c["common_name"])),
    ];

    public static IReadOnlyList<ExerciseRow> Exercises { get; } =
    [
        .. Read("exercises.tsv").Select(c => new ExerciseRow(
            $"{c["family"]} {c["number"]}", c["tala"], int.Parse(c["total_units"], CultureInfo.InvariantCulture), c["lines"])),
    ];

    public static IEnumerable<ExerciseRow> Alankaras => Exercises.Where(e => e.Name.StartsWith("alankara", StringComparison.Ordinal));

    private static IEnumerable<Dictionary<string, string>> Read(string name)
    {
        using var stream = typeof(TimeTables).Assembly.GetManifestResourceStream(name) ?? throw new InvalidOperationException($"no table {name}");
        using var reader = new StreamReader(stream);
        var rows = reader.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        var heads = rows[0].Split('\t');
        return rows.Skip(1).Select(r => heads.Zip(r.Split('\t')).ToDictionary(p => p.First, p => p.Second)).ToList();
    }
}

public sealed record TalaRow(string Tala, string Angas, string Jati, string Groups, int Aksharas, string Kriya, string CommonName)
{
    public override string ToString() => $"{Jati}-jati {Tala}";
}

public sealed record ExerciseRow(string Name, string Tala, int Units, string Lines)
{
    private const string Letters = "SRGMPDN";
    private static readonly Degree[] Degrees = [new(1), new(2), new(3), new(4), new(5), new(6), new(7)];

    /// <summary>The lines as printed, in a scale with all seven letters: a comma holds the note before it for one more unit.</summary>
    public Expansion Expand()
    {
        var lines = new List<Line>();
        ScaleTone? last = null;
        foreach (var text in Lines.Split('/'))
        {
            var notes = new List<LineNote>();
            foreach (var token in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            {
                if (token == "," && notes.Count > 0)
                {
                    notes[^1] = notes[^1] with { Length = notes[^1].Length + 1 };
                    continue;
                }

                var octave = token.EndsWith('\'') ? 1 : token.EndsWith('_') ? -1 : 0;
                var tone = token == "," ? last!.Value : new ScaleTone(Degrees[Letters.IndexOf(token[0], StringComparison.Ordinal)], octave);
                notes.Add(new LineNote(tone, default, Approach.Leap, 1));
                last = tone;
            }

            lines.Add(new Line(notes.ToValueList()));
        }

        return new Expansion(lines.ToValueList(), []);
    }

    public override string ToString() => Name;
}
