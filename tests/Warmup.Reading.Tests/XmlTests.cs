using System.Text;

namespace Warmup.Reading.Tests;

/// <summary>MusicXML that is written here by hand from the W3C's description of the elements.</summary>
public class XmlTests
{
    private const string Quarter = "<duration>1</duration><voice>1</voice><type>quarter</type>";

    [Fact]
    public void By_measure_reads_as_by_part()
    {
        const string Notes = "<attributes><divisions>1</divisions></attributes>";
        var byPart = $"<score-partwise><part-list><score-part id='A'><part-name>Voice</part-name></score-part></part-list><part id='A'><measure number='1'>{Notes}{Note("C", 4)}{Note("D", 4)}</measure><measure number='2'>{Note("E", 4)}</measure></part></score-partwise>";
        var byMeasure = $"<score-timewise><part-list><score-part id='A'><part-name>Voice</part-name></score-part></part-list><measure number='1'><part id='A'>{Notes}{Note("C", 4)}{Note("D", 4)}</part></measure><measure number='2'><part id='A'>{Note("E", 4)}</part></measure></score-timewise>";
        Assert.Equal(Read(byPart), Read(byMeasure));
        Assert.Equal(3, Read(byPart).Sections[0].NoteCount);
    }

    [Fact]
    public void What_cannot_be_kept_is_said_with_its_measure()
    {
        var music = Read(Score(
            "<attributes><divisions>1</divisions><key><fifths>0</fifths></key><time><beats>4</beats><beat-type>4</beat-type></time></attributes>"
            + Note("C", 4) + $"<note><chord/><pitch><step>E</step><octave>4</octave></pitch>{Quarter}</note>"
            + "<note><grace/><pitch><step>F</step><octave>4</octave></pitch></note>"
            + $"<note><pitch><step>D</step><alter>0.5</alter><octave>4</octave></pitch>{Quarter}<notations><ornaments><trill-mark/></ornaments></notations></note>"
            + Note("E", 4) + Note("F", 4)
            + "<backup><duration>4</duration></backup><note><pitch><step>C</step><octave>3</octave></pitch><duration>4</duration><voice>2</voice></note>",
            "<attributes><key><fifths>2</fifths></key></attributes>" + Note("G", 4) + Note("A", 4) + Note("B", 4) + Note("C", 5) + Note("D", 5) + "<barline><repeat direction='backward'/></barline>"));
        Assert.Equal(
            [(RemarkKind.Chord, 1), (RemarkKind.GraceNote, 1), (RemarkKind.Ornament, 1), (RemarkKind.Microtone, 1), (RemarkKind.Mended, 2), (RemarkKind.FurtherVoice, 1), (RemarkKind.KeyChange, 2)],
            music.Remarks.Where(r => r.Kind != RemarkKind.OutsideScale).Select(r => (r.Kind, r.Place.Number)));
        Assert.Equal(["E4", "D#4", "E4", "F4", "G4", "A4", "B4", "C5", "D5"], Notes(music));
    }

    [Fact]
    public void Tied_notes_are_one_and_a_transposing_part_sounds()
    {
        var music = Read(Score(
            "<attributes><divisions>2</divisions><transpose><chromatic>-2</chromatic></transpose></attributes>"
            + $"<note><pitch><step>D</step><octave>4</octave></pitch><duration>3</duration><tie type='start'/></note><note><pitch><step>D</step><octave>4</octave></pitch><duration>2</duration><tie type='stop'/></note>"));
        var note = Assert.Single(music.Sections[0].Lines[0].Notes);
        Assert.Equal(new Rational(5, 2), note.Length);
        Assert.Equal(60, music.Sections[0].Tonic.Midi + note.Tone.Semitones);
    }

    [Theory]
    [InlineData("-1", "duration")]
    [InlineData("abc", "duration")]
    [InlineData("99999999999999999999", "duration")]
    public void A_duration_that_is_none_is_an_error_with_its_line(string duration, string element)
    {
        var fault = Assert.Throws<ReadingException>(() => Read("<score-partwise><part id='A'>\n<measure>\n<note><pitch><step>C</step><octave>4</octave></pitch><duration>" + duration + "</duration></note></measure></part></score-partwise>"));
        Assert.Equal((PlaceKind.TextLine, 3), (fault.Place.Kind, fault.Place.Number));
        Assert.Contains(element, fault.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("<score-partwise><part id='A'><measure>")]
    [InlineData("<html/>")]
    [InlineData("<score-partwise/>")]
    [InlineData("<?xml version='1.0' encoding='none-such'?><score-partwise/>")]
    [InlineData("<score-partwise><part><measure/></part></score-partwise>")]
    [InlineData("<score-partwise><part id='A'><measure><attributes><divisions>0</divisions></attributes></measure></part></score-partwise>")]
    [InlineData("<score-partwise><part id='A'><measure><attributes><time><beats>0</beats><beat-type>4</beat-type></time></attributes></measure></part></score-partwise>")]
    public void Broken_files_are_refused(string xml) => Assert.Throws<ReadingException>(() => Read(xml));

    [Fact]
    public void Entities_are_not_expanded_and_nothing_outside_is_opened()
    {
        var laughs = string.Concat(Enumerable.Range(1, 9).Select(i => $"<!ENTITY e{i} '&e{i - 1};&e{i - 1};&e{i - 1};&e{i - 1};'>"));
        var bomb = $"<!DOCTYPE score-partwise [<!ENTITY e0 'ha'>{laughs}]><score-partwise><work><work-title>&e9;</work-title></work></score-partwise>";
        Assert.Throws<ReadingException>(() => Read(bomb));
        Assert.Throws<ReadingException>(() => Read("<!DOCTYPE score-partwise [<!ENTITY x SYSTEM 'file:///etc/hostname'>]><score-partwise><work><work-title>&x;</work-title></work></score-partwise>"));
        Assert.Equal(1, Read("<!DOCTYPE score-partwise SYSTEM 'file:///none/such.dtd'>" + Score(Note("C", 4))).Sections[0].NoteCount);
    }

    [Fact]
    public void Deep_files_are_refused()
    {
        var deep = string.Concat(Enumerable.Repeat("<a>", 100_000));
        Assert.Contains("deep", Assert.Throws<ReadingException>(() => Read("<score-partwise><part id='A'><measure>" + deep)).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("utf-16")]
    [InlineData("utf-8")]
    [InlineData("iso-8859-1")]
    public void The_encoding_that_a_file_names_is_read(string name)
    {
        var encoding = Encoding.GetEncoding(name);
        byte[] bytes = [.. encoding.GetPreamble(), .. encoding.GetBytes($"<?xml version='1.0' encoding='{name}'?><score-partwise><work><work-title>\u00C9tude</work-title></work><part id='A'><measure>{Note("C", 4)}</measure></part></score-partwise>")];
        Assert.Equal("\u00C9tude", MusicReader.Read(bytes).Title);
    }

    [Theory]
    [InlineData("")]
    [InlineData("\uFEFF")]
    public void A_file_that_says_UTF16_and_is_UTF8_is_read(string mark) =>
        Assert.Equal("\u00C9tude", Read($"{mark}<?xml version='1.0' encoding='UTF-16'?><score-partwise><work><work-title>\u00C9tude</work-title></work><part id='A'><measure>{Note("C", 4)}</measure></part></score-partwise>").Title);

    [Fact]
    public void An_overfull_measure_is_read_as_long_as_it_is_and_said()
    {
        var music = Read(Score("<attributes><divisions>1</divisions><time><beats>2</beats><beat-type>4</beat-type></time></attributes>" + Note("C", 4) + Note("D", 4) + Note("E", 4), Note("F", 4)));
        var remark = Assert.Single(music.Remarks, r => r.Kind == RemarkKind.Mended);
        Assert.Equal((1, true), (remark.Place.Number, remark.Message.Contains("3 quarter notes", StringComparison.Ordinal)));
        Assert.Equal([0, 1, 2, 3], music.ToScore().Sections[0].Notes.Select(n => (int)n.Onset.Floor()));
    }

    [Theory]
    [InlineData("0")]
    [InlineData("-60")]
    [InlineData("quick")]
    public void A_tempo_that_is_none_is_left_out_and_said(string tempo)
    {
        var music = Read(Score($"<sound tempo='{tempo}'/>" + Note("C", 4)));
        Assert.Equal(RemarkKind.Mended, Assert.Single(music.Remarks).Kind);
        Assert.Equal(Tempo.Default, music.Sections[0].Tempo);
    }

    [Theory]
    [InlineData("<note><rest measure='yes'/><duration>16</duration></note>")]
    [InlineData("<note><pitch><step>C</step><octave>4</octave></pitch><duration>6</duration><type>quarter</type><dot/></note>")]
    [InlineData("<note><pitch><step>C</step><octave>4</octave></pitch><duration>16</duration><type>half</type><time-modification><actual-notes>3</actual-notes><normal-notes>6</normal-notes></time-modification></note>")]
    public void Divisions_that_a_file_does_not_say_come_from_its_note_values(string first)
    {
        var section = Read(Score(first, "<note><pitch><step>D</step><octave>4</octave></pitch><duration>2</duration><type>eighth</type></note>")).Sections[0];
        Assert.Equal(new Rational(1, 2), section.Lines[^1].Notes[^1].Length);
    }

    [Theory]
    [InlineData("2", "3", LinesFoundBy.LineNumbers)]
    [InlineData("4", "5", LinesFoundBy.Nothing)]
    [InlineData("2", "4", LinesFoundBy.Nothing)]
    public void Numbers_that_count_are_those_of_lines_with_or_without_boxes(string second, string third, LinesFoundBy by)
    {
        static string Words(string text) => $"<direction><direction-type><words>{text}</words></direction-type></direction>";
        Assert.Equal(by, Read(Score(Note("C", 4) + Note("D", 4) + Words(second) + Note("E", 4) + Words(third) + Note("F", 4))).Sections[0].LinesFoundBy);
    }

    [Fact]
    public void A_tie_that_never_ends_is_a_note() =>
        Assert.Equal(1, Read(Score("<note><pitch><step>D</step><octave>4</octave></pitch><duration>3</duration><tie type='start'/></note>")).Sections[0].NoteCount);

    [Fact]
    public void A_voice_that_goes_back_over_its_notes_keeps_the_first_and_says_so()
    {
        var music = Read(Score(Note("C", 4) + Note("D", 4) + Note("E", 4) + "<backup><duration>3</duration></backup>" + Note("G", 4) + Note("A", 4) + "<backup><duration>9</duration></backup>" + Note("B", 3)));
        Assert.Equal(["C4", "D4", "E4"], Notes(music));
        Assert.Contains(music.Remarks, r => r.Message.Contains("goes back", StringComparison.Ordinal));
    }

    [Fact]
    public void Bytes_that_are_not_in_the_encoding_that_a_file_names_are_an_error_with_a_place()
    {
        byte[] bytes = [.. Encoding.ASCII.GetBytes("<?xml version='1.0' encoding='utf-8'?>\n<score-partwise><work><work-title>"), 0xE9, 0x20, .. Encoding.ASCII.GetBytes("</work-title></work></score-partwise>")];
        Assert.Equal(PlaceKind.TextLine, Assert.Throws<ReadingException>(() => MusicReader.Read(bytes)).Place.Kind);
    }

    private static string Note(string step, int octave) => $"<note><pitch><step>{step}</step><octave>{octave}</octave></pitch>{Quarter}</note>";

    private static string Score(params string[] measures) => $"<score-partwise version='3.1'><part-list><score-part id='A'><part-name>Voice</part-name></score-part></part-list><part id='A'>{string.Concat(measures.Select((m, i) => $"<measure number='{i + 1}'>{m}</measure>"))}</part></score-partwise>";

    private static IEnumerable<string> Notes(ReadMusic music) =>
        music.Sections.SelectMany(s => s.Lines.SelectMany(l => l.Notes).Select(n => NoteName.FromMidi(s.Tonic.Midi + n.Tone.Semitones).ToString()));

    private static ReadMusic Read(string xml) => MusicReader.Read(Encoding.UTF8.GetBytes(xml));
}
