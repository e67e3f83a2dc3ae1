namespace Warmup.TestSupport;

/// <summary>What a section is sung on, note by note.</summary>
public static class SungWords
{
    public static ValueList<string> Sung(this Section section) => section.Notes.ConvertAll(section.SyllableOf);
}
