using System.Globalization;
using System.Runtime.InteropServices;

namespace Warmup.MusicXml;

/// <summary>Writes the notes and rests of a section, a measure at a time.</summary>
internal sealed class NoteWriter(XmlBytes xml, Section section, Clock clock, int divisions, Accidentals accidentals, MusicXmlOptions options)
{
    private readonly long _quarter = clock.Whole / 4;
    private int _breath;

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

    public void Write(List<Piece> pieces)
    {
        var span = CollectionsMarshal.AsSpan(pieces);
        for (var i = 0; i < span.Length; i++)
        {
            var piece = span[i];
            if (!piece.IsRest && piece.IsFirst && section.Notes.AsSpan()[piece.Note] is var note
                && section.Lines.AsSpan()[note.LineIndex].FirstNote == piece.Note)
            {
                Directions.Line(xml, section, note.LineIndex);
            }

            xml.Raw("      <note>\n"u8);
            if (piece.IsRest)
            {
                xml.Raw("        <rest/>\n"u8);
                Length(piece, AccidentalNeed.None, 0);
            }
            else
            {
                Sung(piece);
            }

            Beam.Write(xml, span, i);
            Notations(piece);
            Lyric(piece);
            xml.Raw("      </note>\n"u8);
        }
    }

    private void Sung(Piece piece)
    {
        var pitch = section.Pitches.AsSpan()[section.Notes.AsSpan()[piece.Note].PitchIndex];
        var name = pitch.Name;
        var alter = options.Microtones ? Alter(pitch, section.TonicName) : name.Alteration;
        xml.Raw("        <pitch>\n          <step>"u8).Raw(Step(name.LetterIndex)).Raw("</step>\n"u8);
        if (alter != 0)
        {
            xml.Raw("          <alter>"u8).Number(alter).Raw("</alter>\n"u8);
        }

        xml.Raw("          <octave>"u8).Number(name.Octave).Raw("</octave>\n        </pitch>\n"u8);

        // What is tied keeps its pitch over the bar line without a new accidental, and without one that would hold for others.
        var need = piece.IsFirst ? accidentals.See(name) : AccidentalNeed.None;
        if (piece.IsFirst && alter != decimal.Truncate(alter))
        {
            // A microtone always says its accidental: readers differ in what they make of a fraction alone.
            need = AccidentalNeed.Needed;
        }

        Length(piece, need, alter);
    }

    /// <summary>The written alteration and the tuning's deviation from it, to a hundredth of a cent.</summary>
    private static decimal Alter(ScorePitch pitch, NoteName tonic) =>
        pitch.Name.Alteration + Math.Round((decimal)((pitch.Cents / 100) - (pitch.Name.Midi - tonic.Midi)), 4);

    private void Length(Piece piece, AccidentalNeed need, decimal alter)
    {
        xml.Raw("        <duration>"u8).Number(piece.Length * divisions / _quarter).Raw("</duration>\n"u8);
        if (!piece.IsRest)
        {
            xml.Raw(piece.IsFirst ? ""u8 : "        <tie type=\"stop\"/>\n"u8).Raw(piece.IsLast ? ""u8 : "        <tie type=\"start\"/>\n"u8);
        }

        xml.Raw("        <voice>1</voice>\n        <type>"u8).Raw(TypeName(piece.Type)).Raw("</type>\n"u8);
        xml.Raw(piece.IsDotted ? "        <dot/>\n"u8 : ""u8);
        if (need != AccidentalNeed.None)
        {
            xml.Raw(need == AccidentalNeed.Courtesy ? "        <accidental cautionary=\"yes\">"u8 : "        <accidental>"u8)
                .Raw(AccidentalName(alter)).Raw("</accidental>\n"u8);
        }

        if (piece.Actual > 0)
        {
            xml.Raw("        <time-modification>\n          <actual-notes>"u8).Number(piece.Actual)
                .Raw("</actual-notes>\n          <normal-notes>"u8).Number(piece.Normal)
                .Raw("</normal-notes>\n          <normal-type>"u8).Raw(TypeName(piece.SlotType))
                .Raw("</normal-type>\n        </time-modification>\n"u8);
        }
    }

    /// <summary>The named accidental nearest to an alteration, in quarter tones.</summary>
    private static ReadOnlySpan<byte> AccidentalName(decimal alter) => (int)Math.Round(alter * 2, MidpointRounding.ToEven) switch
    {
        0 => "natural"u8,
        1 => "quarter-sharp"u8,
        2 => "sharp"u8,
        3 => "three-quarters-sharp"u8,
        4 => "double-sharp"u8,
        6 => "triple-sharp"u8,
        -1 => "quarter-flat"u8,
        -2 => "flat"u8,
        -3 => "three-quarters-flat"u8,
        -4 => "flat-flat"u8,
        -6 => "triple-flat"u8,
        var other => throw new ExportException(string.Create(
            CultureInfo.InvariantCulture, $"an alteration of {other / 2m} semitones has no accidental; it must lie between -2 and 2")),
    };

    private void Notations(Piece piece)
    {
        var ties = !piece.IsRest && !(piece.IsFirst && piece.IsLast);
        var breathes = !piece.IsRest && piece.IsLast && BreathesAfter(piece.Note);
        var holds = !piece.IsRest && piece.IsLast && section.Meter.IsFree && section.Notes.AsSpan()[piece.Note].IsHeld;
        if (!ties && !breathes && !holds && !piece.BeginsTuplet && !piece.EndsTuplet)
        {
            return;
        }

        xml.Raw("        <notations>\n"u8);
        if (ties)
        {
            xml.Raw(piece.IsFirst ? ""u8 : "          <tied type=\"stop\"/>\n"u8).Raw(piece.IsLast ? ""u8 : "          <tied type=\"start\"/>\n"u8);
        }

        xml.Raw(piece.BeginsTuplet ? "          <tuplet type=\"start\" number=\"1\" bracket=\"yes\"/>\n"u8 : ""u8);
        xml.Raw(piece.EndsTuplet ? "          <tuplet type=\"stop\" number=\"1\"/>\n"u8 : ""u8);
        xml.Raw(breathes ? "          <articulations>\n            <breath-mark>comma</breath-mark>\n          </articulations>\n"u8 : ""u8);
        xml.Raw(holds ? "          <fermata type=\"upright\"/>\n"u8 : ""u8);
        xml.Raw("        </notations>\n"u8);
    }

    private bool BreathesAfter(int note)
    {
        var breaths = section.Breaths.AsSpan();
        while (_breath < breaths.Length && breaths[_breath].AfterNote < note)
        {
            _breath++;
        }

        return _breath < breaths.Length && breaths[_breath].AfterNote == note;
    }

    private void Lyric(Piece piece)
    {
        if (piece.IsRest || !piece.IsFirst || section.Notes.AsSpan()[piece.Note].Syllable is not { Length: > 0 } syllable)
        {
            return;
        }

        xml.Raw("        <lyric number=\"1\">\n          <syllabic>single</syllabic>\n          <text>"u8).Text(syllable)
            .Raw("</text>\n        </lyric>\n"u8);
    }
}
