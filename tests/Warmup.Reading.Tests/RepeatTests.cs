using System.Diagnostics;
using System.Text;

namespace Warmup.Reading.Tests;

/// <summary>Repeat signs and endings, as the W3C's MusicXML describes <c>repeat</c> and <c>ending</c>: what is sung is written by hand here.</summary>
public class RepeatTests
{
    private const string Begin = "<barline location='left'><repeat direction='forward'/></barline>";
    private const string Back = "<barline location='right'><repeat direction='backward'/></barline>";

    [Fact]
    public void A_whole_that_is_repeated_stays_once_with_its_count()
    {
        var music = Read(Bar("C"), Bar("D", "<barline location='right'><repeat direction='backward' times='3'/></barline>"));
        var section = Assert.Single(music.Sections);
        Assert.Equal((3, 2), (section.Repetitions, section.NoteCount));
        Assert.Equal(["C", "D", "C", "D", "C", "D"], Sung(section));
        Assert.DoesNotContain(music.Remarks, r => r.Kind == RemarkKind.Repeat);
    }

    [Fact]
    public void A_silence_at_the_end_of_a_repeated_whole_is_kept()
    {
        var section = Read($"{Note("C", 1)}<note><rest/><duration>3</duration></note>{Back}").Sections[0];
        Assert.Equal([0, 4], section.ToScore().Sections[0].Notes.Select(n => (int)n.Onset.Floor()));
    }

    [Fact]
    public void Lines_that_are_repeated_one_by_one_are_written_out_and_begin_at_their_signs()
    {
        var music = Read(Bar("C", Begin, Back), Bar("D", Begin, Back), Bar("E"));
        Assert.Equal(["C", "C", "D", "D", "E"], Sung(music.Sections[0]));
        Assert.Equal(LinesFoundBy.Repeats, music.Sections[0].LinesFoundBy);
        Assert.Equal((5, 1), (music.Sections[0].Lines.Count, music.Sections[0].Repetitions));
        Assert.Equal(1, Assert.Single(music.Remarks, r => r.Kind == RemarkKind.Repeat).Place.Number);
    }

    [Fact]
    public void Each_time_takes_its_ending()
    {
        var music = Read(
            Bar("C", Begin), Bar("D", Ending("1, 2", "start"), Ending("1, 2", "stop", "<repeat direction='backward'/>")), Bar("E", Ending("3", "start"), Ending("3", "stop")), Bar("F", Begin, Back), Bar("G"));
        Assert.Equal(["C", "D", "C", "D", "C", "E", "F", "F", "G"], Sung(music.Sections[0]));
    }

    [Fact]
    public void A_first_ending_alone_is_left_out_the_second_time() => Assert.Equal(
        ["C", "D", "C", "E"], Sung(Read(Bar("C"), Bar("D", Ending("1", "start"), Ending("1", "stop", "<repeat direction='backward'/>")), Bar("E")).Sections[0]));

    [Fact]
    public void Endings_that_do_not_lead_through_all_measures_are_read_as_they_are_written()
    {
        var music = Read(Bar("C"), Bar("D", Ending("1", "start"), Ending("1", "stop")), Bar("E", Ending("2", "start"), Ending("2", "stop")));
        Assert.Equal(["C", "D", "E"], Sung(music.Sections[0]));
        Assert.Single(music.Remarks, r => r.Kind == RemarkKind.Repeat);
    }

    [Fact]
    public void What_is_wrong_in_a_repeated_measure_leads_to_the_measure_that_is_written()
    {
        var scale = Scale.Parse("S R2 G3 M1 P D2 N3 S'");
        var music = MusicReader.Read(Bytes(Bar("C"), $"{Begin}<note><pitch><step>F</step><alter>1</alter><octave>4</octave></pitch><duration>4</duration></note>{Back}", Bar("C")), new ReadingOptions { Scale = scale, Tonic = Tonic.Parse("C4") });
        Assert.Equal(4, music.Sections[0].NoteCount);
        Assert.Equal(2, Assert.Single(music.Remarks, r => r.Kind == RemarkKind.OutsideScale).Place.Number);
    }

    [Fact]
    public void The_tempo_at_a_sign_comes_back_with_it()
    {
        static string At(int tempo) => $"<sound tempo='{tempo}'/>";
        var section = Read(At(60) + Bar("C"), At(90) + Bar("D", Begin), At(120) + Bar("E", Back)).Sections[0];
        Assert.Equal([(4, 90), (8, 120), (12, 90), (16, 120)], section.TempoChanges.Select(c => ((int)c.Onset.Floor(), (int)c.Tempo.Floor())));
    }

    [Fact]
    public void Repeats_that_would_be_too_long_are_read_once_in_bounded_time()
    {
        var clock = Stopwatch.StartNew();
        var times = "<barline location='right'><repeat direction='backward' times='1000'/></barline>";
        var music = Read([Bar("C"), .. Enumerable.Range(0, 1_000).Select(_ => Bar("D", Begin, times))]);
        Assert.Equal(1_001, music.Sections[0].NoteCount);
        Assert.Single(music.Remarks, r => r.Kind == RemarkKind.Repeat);
        Assert.InRange(clock.Elapsed, TimeSpan.Zero, TimeSpan.FromSeconds(20));
    }

    private static string Ending(string number, string type, string repeat = "") => $"<barline location='{(type == "start" ? "left" : "right")}'><ending number='{number}' type='{type}'/>{repeat}</barline>";

    private static string Bar(string step, params string[] lines) =>
        string.Concat(lines.Where(l => l.Contains("'left'", StringComparison.Ordinal))) + Note(step, 4) + string.Concat(lines.Where(l => !l.Contains("'left'", StringComparison.Ordinal)));

    private static string Note(string step, int quarters) => $"<note><pitch><step>{step}</step><octave>4</octave></pitch><duration>{quarters}</duration></note>";

    private static byte[] Bytes(params string[] measures) => Encoding.UTF8.GetBytes($"<score-partwise><part id='A'>{string.Concat(measures.Select(m => $"<measure>{m}</measure>"))}</part></score-partwise>");

    private static ReadMusic Read(params string[] measures) => MusicReader.Read(Bytes(measures));

    private static IEnumerable<string> Sung(ReadSection section)
    {
        var sung = section.ToScore().Sections[0];
        return sung.Notes.Select(n => NoteName.FromMidi(sung.Tonic.Midi + sung.PitchOf(n).Tone.Semitones).ToString()[..1]);
    }
}
