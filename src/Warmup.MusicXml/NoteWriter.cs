using System.Runtime.InteropServices;

namespace Warmup.MusicXml;

/// <summary>Writes the notes and rests of a section, a measure at a time.</summary>
internal sealed class NoteWriter(
    XmlByteWriter xml, Section section, WrittenPitch[] pitches, DurationWriter durations, Accidentals accidentals, MusicXmlOptions options, bool isFirstPart)
{
    // More lengths of rests than these are not kept.
    private const int MostRests = 8;

    private const int AccidentalNeeds = (int)AccidentalNeed.Courtesy + 1;

    private readonly Verses _verses = new(section, options);
    private readonly bool _isPlain = IsPlain(section);

    // What stands before the beams of a plain note: for each pitch and each need of an accidental, the first length that was met.
    private readonly (long Length, KeptMarkup Markup)[] _heads = new (long, KeptMarkup)[pitches.Length * AccidentalNeeds];
    private readonly List<(long Length, KeptMarkup Markup)> _rests = [];

    /// <summary>The name of a note value: 0 for a whole note, 7 for a 128th.</summary>
    public static ReadOnlySpan<byte> TypeName(int type) => type switch
    {
        0 => "whole"u8,
        1 => "half"u8,
        2 => "quarter"u8,
        3 => "eighth"u8,
        4 => "16th"u8,
        5 => "32nd"u8,
        6 => "64th"u8,
        _ => "128th"u8,
    };

    /// <summary>The letter of a note: 0 for C to 6 for B.</summary>
    public static ReadOnlySpan<byte> Step(int letter) => "CDEFGAB"u8.Slice(letter, 1);

    public void Write(ReadOnlySpan<NotatedNote> pieces, Measure measure, MeasureLayout layout)
    {
        var anga = AngaLines.IsTala(section.Meter) ? layout.AngaEnd(0) : long.MaxValue;
        for (var i = 0; i < pieces.Length; i++)
        {
            ref readonly var piece = ref pieces[i];
            anga = AngaLines.Before(xml, layout, piece.Start, anga);
            if (!piece.IsRest && piece.IsFirst)
            {
                Above(piece.Note);
            }

            var swells = !piece.IsRest && section.Notes.AsSpan()[piece.Note].Loudness == Loudness.SwellAndFade;
            if (swells)
            {
                Hairpins(piece, durations.Grid.Ticks(section.Notes.AsSpan()[piece.Note].Middle) - durations.Grid.Ticks(measure.Onset));
            }

            if (piece.IsRest)
            {
                RestHead(piece);
            }
            else
            {
                Head(piece, section.Notes.AsSpan()[piece.Note].PitchIndex);
            }

            Beam.Write(xml, pieces, i);
            Notations(piece);
            if (!piece.IsRest && piece.IsFirst)
            {
                _verses.Write(xml, piece.Note);
            }

            xml.Raw("      </note>\n"u8);
            if (swells && piece.IsLast)
            {
                Directions.Hairpin(xml, "stop"u8);
            }
        }
    }

    /// <summary>Whether nothing but ties, tuplets and slurs asks for notations: no breaths, fermatas, slides or short notes.</summary>
    private static bool IsPlain(Section section)
    {
        foreach (ref readonly var note in section.Notes.AsSpan())
        {
            if (note.Joining != Joining.Plain)
            {
                return false;
            }
        }

        return section.Breaths.IsEmpty && !section.Meter.IsFree;
    }

    /// <summary>Writes a note up to its accidental.</summary>
    private void Head(in NotatedNote piece, int index)
    {
        // A tied note keeps its pitch over the bar line without a new accidental, which would hold for others.
        var pitch = pitches[index];
        var need = piece.IsFirst ? pitch.Need(accidentals) : AccidentalNeed.None;
        ref var head = ref _heads[(index * AccidentalNeeds) + (int)need];
        var isPlain = piece.IsFirst && piece.IsLast && piece.Actual == 0;
        if (isPlain && head.Length == piece.Length && xml.Again(head.Markup))
        {
            return;
        }

        var begin = xml.Begin();
        xml.Raw("      <note>\n"u8);
        pitch.Write(xml);
        durations.Write(xml, piece, pitch, need);
        if (isPlain && head.Length == 0)
        {
            head = (piece.Length, xml.Keep(begin));
        }
    }

    /// <summary>Writes a rest up to its value.</summary>
    private void RestHead(in NotatedNote piece)
    {
        foreach (var (length, markup) in CollectionsMarshal.AsSpan(_rests))
        {
            if (length == piece.Length && piece.Actual == 0 && xml.Again(markup))
            {
                return;
            }
        }

        var begin = xml.Begin();
        xml.Raw("      <note>\n        <rest/>\n"u8);
        durations.Write(xml, piece, default, AccidentalNeed.None);
        if (piece.Actual == 0 && _rests.Count < MostRests)
        {
            _rests.Add((piece.Length, xml.Keep(begin)));
        }
    }

    /// <summary>Writes what stands above the first note of a line: once for all parts; how loud it is, for each part.</summary>
    private void Above(int note)
    {
        var line = section.Notes.AsSpan()[note].LineIndex;
        if (section.Lines.AsSpan()[line].FirstNote != note)
        {
            return;
        }

        if (isFirstPart)
        {
            Directions.Line(xml, section, line, options.LineMarks);
        }

        if (line == 0)
        {
            Directions.Dynamics(xml, options.Dynamics);
        }
    }

    /// <summary>Writes the hairpins of a note that swells and fades, where it begins and where the piece from its middle on begins.</summary>
    private void Hairpins(in NotatedNote piece, long middle)
    {
        if (piece.IsFirst)
        {
            Directions.Hairpin(xml, "crescendo"u8);
        }

        if (piece.Start == middle)
        {
            Directions.Hairpin(xml, "stop"u8);
            Directions.Hairpin(xml, "diminuendo"u8);
        }
    }

    private void Notations(in NotatedNote piece)
    {
        if (piece.Actual == 0 && (piece.IsRest || (_isPlain && !_verses.HasSlurs && piece.IsFirst && piece.IsLast)))
        {
            return;
        }

        var ties = !piece.IsRest && !(piece.IsFirst && piece.IsLast);
        var breathes = !piece.IsRest && piece.IsLast && !section.Breaths.IsEmpty && section.BreathAfter(piece.Note) is not null;
        var holds = !piece.IsRest && piece.IsLast && section.Meter.IsFree && section.Notes.AsSpan()[piece.Note].IsHeld;
        var slurs = !piece.IsRest && piece.IsFirst && _verses.BeginsSlur(piece.Note);
        var slurEnds = !piece.IsRest && piece.IsLast && _verses.EndsSlur(piece.Note);
        var notes = section.Notes.AsSpan();
        var joining = piece.IsRest ? Joining.Plain : notes[piece.Note].Joining;
        var slides = joining == Joining.Glide && piece.IsLast;
        var slideEnds = piece.Note > 0 && piece.IsFirst && notes[piece.Note - 1].Joining == Joining.Glide;
        var isShort = joining == Joining.Staccato && piece.IsFirst;
        var articulates = breathes || isShort;
        if (!ties && !articulates && !holds && !slurs && !slurEnds && !slides && !slideEnds && !piece.BeginsTuplet && !piece.EndsTuplet)
        {
            return;
        }

        xml.Raw("        <notations>\n"u8);
        if (ties)
        {
            DurationWriter.TiedMarks(xml, piece);
        }

        // Above, since the syllables stand below.
        xml.Raw(slurs ? "          <slur type=\"start\" number=\"1\" placement=\"above\"/>\n"u8 : ""u8);
        xml.Raw(slurEnds ? "          <slur type=\"stop\" number=\"1\"/>\n"u8 : ""u8);
        xml.Raw(piece.BeginsTuplet ? "          <tuplet type=\"start\" number=\"1\" bracket=\"yes\"/>\n"u8 : ""u8);
        xml.Raw(piece.EndsTuplet ? "          <tuplet type=\"stop\" number=\"1\"/>\n"u8 : ""u8);
        xml.Raw(slideEnds ? "          <slide type=\"stop\" number=\"1\"/>\n"u8 : ""u8);
        xml.Raw(slides ? "          <slide type=\"start\" number=\"1\" line-type=\"solid\"/>\n"u8 : ""u8);
        if (articulates)
        {
            xml.Raw("          <articulations>\n"u8);
            xml.Raw(isShort ? "            <staccato/>\n"u8 : ""u8);
            xml.Raw(breathes ? "            <breath-mark>comma</breath-mark>\n"u8 : ""u8);
            xml.Raw("          </articulations>\n"u8);
        }

        xml.Raw(holds ? "          <fermata type=\"upright\"/>\n"u8 : ""u8);
        xml.Raw("        </notations>\n"u8);
    }
}
