using System.Globalization;
using System.Xml;
using System.Xml.Linq;

namespace Warmup.MusicXml.Tests;

/// <summary>A small MusicXML reader for the tests, written from the standard and sharing no code with the writer.</summary>
internal sealed record ReadScore(XDocument Document, int Divisions, List<ReadMeasure> Measures)
{
    public static readonly XmlReaderSettings Settings = new() { DtdProcessing = DtdProcessing.Ignore, XmlResolver = null };

    public IEnumerable<ReadNote> Notes => Measures.SelectMany(m => m.Notes);

    public IEnumerable<XElement> All(string name) => Document.Descendants(name);

    /// <summary>The numbers of the lines: words in a box.</summary>
    public IEnumerable<XElement> LineNumbers => All("words").Where(IsLineNumber);

    /// <summary>The other words.</summary>
    public IEnumerable<XElement> Words => All("words").Where(w => !IsLineNumber(w));

    public static bool IsLineNumber(XElement element) => element.Name == "words" && (string?)element.Attribute("enclosure") == "rectangle";

    public static byte[] Bytes(Score score, MusicXmlOptions? options = null)
    {
        using var stream = new MemoryStream();
        new MusicXmlFormat(options ?? MusicXmlOptions.Default).Write(score, stream);
        return stream.ToArray();
    }

    public static ReadScore Of(Score score, MusicXmlOptions? options = null, int part = 1) => Of(Bytes(score, options), part);

    /// <summary>Reads a part of a file.</summary>
    public static ReadScore Of(byte[] bytes, int part = 1)
    {
        using var reader = XmlReader.Create(new MemoryStream(bytes), Settings);
        var document = XDocument.Load(reader);
        var element = document.Root!.Elements("part").ElementAt(part - 1);
        var divisions = int.Parse(Assert.Single(element.Descendants("divisions")).Value, CultureInfo.InvariantCulture);
        var measures = new List<ReadMeasure>();
        var onset = Rational.Zero;
        var length = Rational.Zero;
        foreach (var measure in element.Elements("measure"))
        {
            if (measure.Elements("attributes").Elements("time").LastOrDefault() is { } time)
            {
                var beats = time.Element("beats")!.Value.Split('+').Sum(b => int.Parse(b, CultureInfo.InvariantCulture));
                length = new Rational(4L * beats, int.Parse(time.Element("beat-type")!.Value, CultureInfo.InvariantCulture));
            }

            var notes = new List<ReadNote>();
            var at = onset;
            foreach (var note in measure.Elements("note"))
            {
                // A note of a chord begins with the one before it.
                var inChord = note.Element("chord") is not null;
                var read = ReadNote.Of(note, inChord ? notes[^1].Onset : at, divisions);
                notes.Add(read);
                at += inChord ? 0 : read.Length;
            }

            measures.Add(new ReadMeasure(measure, onset, length, notes));
            onset = at;
        }

        return new ReadScore(document, divisions, measures);
    }

    /// <summary>The sung notes with ties put together.</summary>
    public List<SungNote> Sung()
    {
        var sung = new List<SungNote>();
        var open = false;
        foreach (var note in Notes)
        {
            Assert.Equal(open, note.TieStop);
            if (note.Pitch is not { } pitch)
            {
                Assert.False(note.TieStart || note.TieStop);
                continue;
            }

            if (open)
            {
                var before = sung[^1];
                Assert.Equal(before.Pitch, pitch);
                Assert.Equal(before.Onset + before.Length, note.Onset);
                Assert.Null(note.Lyric);
                sung[^1] = before with { Length = before.Length + note.Length, BreathAfter = note.BreathMark, Fermata = note.Fermata };
            }
            else
            {
                sung.Add(new SungNote(pitch, note.Onset, note.Length, note.Lyric, note.BreathMark, note.Fermata));
            }

            // A breath or a fermata belongs where the sound ends.
            Assert.False(note.TieStart && (note.BreathMark || note.Fermata));
            open = note.TieStart;
        }

        Assert.False(open, "a tie is left open");
        return sung;
    }
}

internal sealed record SungNote((string Step, decimal Alter, int Octave) Pitch, Rational Onset, Rational Length, string? Lyric, bool BreathAfter, bool Fermata);

internal sealed record ReadMeasure(XElement Element, Rational Onset, Rational Length, List<ReadNote> Notes)
{
    public bool BeginsSystem => Element.Elements("print").Any(p => (string?)p.Attribute("new-system") == "yes");
}

internal sealed record ReadNote(XElement Element, Rational Onset, Rational Length)
{
    public required (string Step, decimal Alter, int Octave)? Pitch { get; init; }

    public required Rational Written { get; init; }

    public bool IsRest => Pitch is null;

    public string? Type => Element.Element("type")?.Value;

    public bool TieStart => Has("tie", "start");

    public bool TieStop => Has("tie", "stop");

    public string? Accidental => Element.Element("accidental")?.Value;

    public bool BreathMark => Element.Elements("notations").Elements("articulations").Elements("breath-mark").Any();

    public bool Fermata => Element.Elements("notations").Elements("fermata").Any();

    public string? Lyric => Element.Element("lyric")?.Element("text")?.Value;

    public bool IsInChord => Element.Element("chord") is not null;

    /// <summary>A verse's syllable with the hyphens of its place in the word, and an underscore where a line goes on behind it.</summary>
    public string? Verse(int number) => Element.Elements("lyric").SingleOrDefault(l => (int?)l.Attribute("number") == number) is { } lyric
        ? (lyric.Element("syllabic")!.Value is "middle" or "end" ? "-" : string.Empty)
            + lyric.Element("text")!.Value
            + (lyric.Element("syllabic")!.Value is "middle" or "begin" ? "-" : string.Empty)
            + (lyric.Element("extend") is not null ? "_" : string.Empty)
        : null;

    public string? Slur => Element.Elements("notations").Elements("slur").SingleOrDefault()?.Attribute("type")?.Value;

    public bool TupletStart => Element.Elements("notations").Elements("tuplet").Any(t => (string?)t.Attribute("type") == "start");

    public bool TupletStop => Element.Elements("notations").Elements("tuplet").Any(t => (string?)t.Attribute("type") == "stop");

    public (int Actual, int Normal, string NormalType)? Modification { get; private init; }

    public string[] Beams => [.. Element.Elements("beam").Select(b => b.Value)];

    /// <summary>A note value in quarters, from its name in the standard.</summary>
    public static Rational Value(string type) => type switch
    {
        "whole" => 4,
        "half" => 2,
        "quarter" => 1,
        "eighth" => new Rational(1, 2),
        "16th" => new Rational(1, 4),
        "32nd" => new Rational(1, 8),
        "64th" => new Rational(1, 16),
        "128th" => new Rational(1, 32),
        _ => throw new InvalidDataException($"unknown note type {type}"),
    };

    public static ReadNote Of(XElement note, Rational onset, int divisions)
    {
        var duration = long.Parse(note.Element("duration")!.Value, NumberStyles.None, CultureInfo.InvariantCulture);
        var written = Value(note.Element("type")!.Value);
        var dots = note.Elements("dot").Count();
        var sum = written;
        for (var i = 0; i < dots; i++)
        {
            written /= 2;
            sum += written;
        }

        (int, int, string)? modification = null;
        if (note.Element("time-modification") is { } change)
        {
            var (actual, normal) = (Int(change, "actual-notes"), Int(change, "normal-notes"));
            modification = (actual, normal, change.Element("normal-type")!.Value);
            sum = sum * normal / actual;
        }

        return new ReadNote(note, onset, new Rational(duration, divisions))
        {
            Pitch = note.Element("pitch") is { } pitch
                ? (pitch.Element("step")!.Value, decimal.Parse(pitch.Element("alter")?.Value ?? "0", CultureInfo.InvariantCulture), Int(pitch, "octave"))
                : null,
            Written = sum,
            Modification = modification,
        };
    }

    private static int Int(XElement parent, string child) => int.Parse(parent.Element(child)!.Value, CultureInfo.InvariantCulture);

    private bool Has(string name, string type) => Element.Elements(name).Any(t => (string?)t.Attribute("type") == type);
}
