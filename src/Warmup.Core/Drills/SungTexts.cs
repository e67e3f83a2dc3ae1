namespace Warmup;

/// <summary>What the notes of a section are sung on, where some have texts of their own: gathered note by note.</summary>
/// <param name="tones">The syllable of each tone.</param>
internal sealed class SungTexts(ValueList<string> tones)
{
    private readonly bool[] _isSung = new bool[tones.Count];
    private readonly List<string> _texts = [];
    private readonly Dictionary<string, int> _indexes = new(StringComparer.Ordinal);

    /// <summary>The syllables of the tones, empty where no note takes them, and after them the notes' own texts.</summary>
    public ValueList<string> All => [.. tones.Select((s, tone) => _isSung[tone] ? s : string.Empty), .. _texts];

    /// <summary>The index of what is sung on a note.</summary>
    /// <param name="tone">The index of its tone.</param>
    /// <param name="text">Its own text; <see langword="null"/> where it takes the tone's syllable.</param>
    public int IndexOf(int tone, string? text)
    {
        if (text is null)
        {
            _isSung[tone] = true;
            return tone;
        }

        if (!_indexes.TryGetValue(text, out var index))
        {
            _indexes[text] = index = tones.Count + _texts.Count;
            _texts.Add(text);
        }

        return index;
    }
}
