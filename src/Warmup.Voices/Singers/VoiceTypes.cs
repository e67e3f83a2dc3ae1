namespace Warmup.Voices;

/// <summary>The known voice types, with how sure each is. They are starting points: the ear and a measurement overrule them.</summary>
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
        ArgumentNullException.ThrowIfNull(name);
        foreach (var type in All)
        {
            if (type.Name.Equals(name, StringComparison.OrdinalIgnoreCase))
            {
                return type;
            }
        }

        return null;
    }

    private static IEnumerable<VoiceType> Read() => EmbeddedTable.Rows(typeof(VoiceTypes), "Warmup.Voices.Data.voices.tsv").Select(
        row => new VoiceType(row[0], Note(row[1]), Note(row[2]), Kind(row[3]), YesOrNo(row[4]), row[5], row[6], row[7]));

    private static NoteName Note(string text) => NoteName.TryParse(text, out var name, out _)
        ? name
        : throw new InvalidOperationException($"the voice types hold '{text}', which is not a note");

    private static bool YesOrNo(string text) => text switch
    {
        "no" => false,
        "yes" => true,
        _ => throw new InvalidOperationException($"the voice types hold '{text}', which is neither yes nor no"),
    };

    private static VoiceRangeKind Kind(string text) => text switch
    {
        "classical" => VoiceRangeKind.Classical,
        "choral" => VoiceRangeKind.Choral,
        "measured" => VoiceRangeKind.Measured,
        "comfortable" => VoiceRangeKind.Comfortable,
        "own setting" => VoiceRangeKind.ProjectSetting,
        _ => throw new InvalidOperationException($"the voice types hold the kind '{text}', which is unknown"),
    };
}
