namespace Warmup;

/// <summary>The known voice types, with how sure each is. Starting points only: the ear and a measurement overrule them.</summary>
public static class VoiceTypes
{
    /// <summary>The types in the order of the table: classical, choral, children, adults' drill ranges.</summary>
    public static ValueList<VoiceType> All { get; } = Read().ToValueList();

    /// <summary>The names, separated by commas.</summary>
    internal static string Names { get; } = string.Join(", ", All.ConvertAll(t => t.Name));

    /// <summary>The type of a name.</summary>
    /// <param name="name">The name, in any case.</param>
    /// <returns>The type, or <see langword="null"/> where there is none.</returns>
    public static VoiceType? Find(string name)
    {
        foreach (var type in All)
        {
            if (type.Name.Equals(name, StringComparison.OrdinalIgnoreCase))
            {
                return type;
            }
        }

        return null;
    }

    private static IEnumerable<VoiceType> Read()
    {
        using var stream = typeof(VoiceTypes).Assembly.GetManifestResourceStream("Warmup.Data.voices.tsv")
            ?? throw new InvalidOperationException("the file voices.tsv is missing from the assembly");
        using var reader = new StreamReader(stream);
        var header = true;
        while (reader.ReadLine() is { } line)
        {
            if (line.Length == 0 || line[0] == '#')
            {
                continue;
            }

            if (header)
            {
                header = false;
                continue;
            }

            var cells = line.Split('\t');
            yield return new VoiceType(cells[0], Note(cells[1]), Note(cells[2]), Kind(cells[3]), cells[4], cells[5], cells[6]);
        }
    }

    private static NoteName Note(string text) => NoteName.TryParse(text, out var name)
        ? name
        : throw new InvalidOperationException($"the voice types hold '{text}', which is no note");

    private static VoiceRangeKind Kind(string text) => text switch
    {
        "classical" => VoiceRangeKind.Classical,
        "choral" => VoiceRangeKind.Choral,
        "measured" => VoiceRangeKind.Measured,
        "comfortable" => VoiceRangeKind.Comfortable,
        "own setting" => VoiceRangeKind.OwnSetting,
        _ => throw new InvalidOperationException($"the voice types hold the kind '{text}', which is unknown"),
    };
}
