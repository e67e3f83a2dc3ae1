namespace Warmup.MusicXml;

/// <summary>Writes the syllables under the notes of a section, in one to three verses.</summary>
internal sealed class Verses
{
    private readonly Section _section;
    private readonly Verse[] _verses;

    // For each pitch the plain syllable that was met first.
    private readonly (string Text, KeptMarkup Markup)[] _kept;

    public Verses(Section section, MusicXmlOptions options)
    {
        _section = section;
        _kept = new (string, KeptMarkup)[section.Pitches.Count];
        _verses = new Verse[1 + options.FurtherVerses.Count];
        _verses[0] = options.HasOneSyllableALine ? Verse.OneALine(section) : Verse.Sung(section);
        for (var v = 1; v < _verses.Length; v++)
        {
            _verses[v] = Verse.Further(section, options.FurtherVerses[v - 1]);
        }
    }

    /// <summary>Whether a slur may begin with some note.</summary>
    public bool HasSlurs => !_verses[0].IsPlain;

    /// <summary>Whether a slur begins with a note: it has a syllable, and the next note continues it.</summary>
    public bool BeginsSlur(int note) => _verses[0].Has(note) && _verses[0].Continues(note + 1);

    /// <summary>Whether a slur ends with a note.</summary>
    public bool EndsSlur(int note) => _verses[0].Continues(note) && !_verses[0].Continues(note + 1);

    /// <summary>Writes the lyrics of a note.</summary>
    public void Write(XmlByteWriter xml, int note)
    {
        for (var v = 0; v < _verses.Length; v++)
        {
            var verse = _verses[v];
            if (v == 0 && verse.Plain(note) is { } plain)
            {
                WritePlain(xml, note, plain);
                continue;
            }

            if (!verse.Has(note))
            {
                continue;
            }

            if (v == 0 && !verse.JoinsBefore(note) && !verse.JoinsAfter(note) && !verse.Continues(note + 1))
            {
                Single(xml, verse.Text(note));
                continue;
            }

            xml.Raw("        <lyric number=\""u8).Number(v + 1).Raw("\">\n          <syllabic>"u8)
                .Raw(verse.JoinsBefore(note) ? verse.JoinsAfter(note) ? "middle"u8 : "end"u8 : verse.JoinsAfter(note) ? "begin"u8 : "single"u8)
                .Raw("</syllabic>\n          <text>"u8).Text(verse.Text(note)).Raw("</text>\n"u8)
                .Raw(verse.Continues(note + 1) ? "          <extend/>\n"u8 : ""u8).Raw("        </lyric>\n"u8);
        }
    }

    /// <summary>Writes what nearly every note has.</summary>
    private void WritePlain(XmlByteWriter xml, int note, string text)
    {
        ref var kept = ref _kept[_section.Notes.AsSpan()[note].PitchIndex];
        if (ReferenceEquals(text, kept.Text) && xml.Again(kept.Markup))
        {
            return;
        }

        var begin = xml.Begin();
        Single(xml, text);
        if (kept.Text is null)
        {
            kept = (text, xml.Keep(begin));
        }
    }

    private static void Single(XmlByteWriter xml, ReadOnlySpan<char> text) =>
        xml.Raw("        <lyric number=\"1\">\n          <syllabic>single</syllabic>\n          <text>"u8).Text(text)
            .Raw("</text>\n        </lyric>\n"u8);
}
