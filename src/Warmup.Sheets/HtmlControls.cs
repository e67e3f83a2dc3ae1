using System.Globalization;

namespace Warmup.Sheets;

/// <summary>Writes what the page is played with: the player, which stays in sight, and the choices under it.</summary>
internal sealed class HtmlControls(TextWriter writer, Score score, HtmlOptions options)
{
    // The letters can be made this much larger, in per cent (the project's own setting).
    private const int LargestLetters = 200;
    private const int LetterStep = 25;

    public void Write()
    {
        writer.WriteLine("<noscript><p>Without scripts this page can be read and printed, not played.</p></noscript>");
        Player();
        Choices();
        Take();
    }

    private void Player()
    {
        var (slowest, fastest) = options.Percents(score.Sections[0].Tempo);
        writer.WriteLine("<section id=\"player\" aria-label=\"Player\" hidden>");
        writer.WriteLine("<button type=\"button\" id=\"play\">Play</button>");
        writer.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"<div id=\"pace\"><label for=\"tempo\">Tempo <output id=\"tempo-says\" for=\"tempo\"></output></label>{Range("tempo", slowest, fastest, 1, 100)}</div>"));
        writer.WriteLine($"<div id=\"now-box\" aria-hidden=\"true\"><svg id=\"picture\"{(options.HasHiddenNotes ? " class=\"covered\"" : string.Empty)} focusable=\"false\"></svg><p id=\"now\">Play all lines, or press a line\u2019s number to loop it.</p></div>");
        writer.WriteLine("<p id=\"status\" role=\"status\"></p>");
        writer.WriteLine("</section>");
    }

    private void Choices()
    {
        writer.WriteLine("<section id=\"choices\" aria-label=\"Choices\" hidden>");
        writer.WriteLine("<details><summary>Tonic, sounds, loop and letters</summary>");
        writer.WriteLine("<fieldset><legend>Tonic</legend>");
        Shift(-12, "\u2212 octave", "An octave lower");
        Shift(-1, "\u2212 semitone", "A semitone lower");
        writer.WriteLine("<output id=\"tonic\"></output>");
        Shift(1, "+ semitone", "A semitone higher");
        Shift(12, "+ octave", "An octave higher");
        writer.WriteLine("<p>The tonic moves every note and the drone. Stay where the voice is easy; your teacher\u2019s ear decides.</p></fieldset>");
        Sounds();
        Loop();
        writer.WriteLine("<fieldset><legend>Letters</legend>");
        writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"<label>Size {Range("letters", 100, LargestLetters, LetterStep, 100)}</label>"));
        writer.WriteLine("</fieldset>");
        writer.WriteLine("<p><button type=\"button\" id=\"reset\">All as at first</button> This browser keeps your choices for the next time, if it may.</p>");
        writer.WriteLine("</details></section>");
    }

    private void Take()
    {
        writer.WriteLine("<section id=\"take\" aria-label=\"Record yourself\" hidden>");
        writer.WriteLine("<details><summary>Record yourself</summary>");
        writer.WriteLine("<p>The recording stays in this page until you close it, and is sent nowhere. Use headphones if the page plays while you sing, or it is recorded too. Half an hour at most.</p>");
        writer.WriteLine("<p><button type=\"button\" id=\"record\">Record</button> <output id=\"recorded\"></output> <meter id=\"level\" aria-label=\"Level\" min=\"0\" max=\"1\" value=\"0\"></meter></p>");
        writer.WriteLine("<p id=\"taken\" hidden><audio id=\"take-sound\" controls></audio> <a id=\"save\" download=\"take.wav\">Save as a sound file (WAV)</a>, which \u201cwarmup listen\u201d and the page to make drills in hold against the drill.</p>");
        writer.WriteLine("</details></section>");
    }

    private void Sounds()
    {
        writer.WriteLine("<fieldset><legend>Sounds</legend>");
        Volume("guide", "Guide tone");
        if (score.Drone is not null)
        {
            Volume("drone", "Drone");
        }

        Volume("beat", "Beat");
        writer.WriteLine(
            "<label>The guide sounds <select id=\"sounds\" autocomplete=\"off\"><option value=\"all\">all notes</option><option value=\"first-note\">each line\u2019s first note</option>"
            + "<option value=\"first-time\">the first time only</option><option value=\"none\">nothing</option></select></label>");
        if (!score.Sections.Any(s => s.Lines.Any(l => l.HasAnswer)))
        {
            Switch("after-me", "Sing after me: each line twice, the second time without the guide", isOn: false);
        }

        if (options.CountInBeats > 0 && !score.HasCountIn)
        {
            Switch("count-in", "Count-in", isOn: true);
        }

        writer.WriteLine("</fieldset>");
    }

    private void Loop()
    {
        writer.WriteLine("<fieldset><legend>Loop</legend>");
        writer.WriteLine("<label>From <select id=\"loop-from\" autocomplete=\"off\"><option value=\"\">no loop</option></select></label>");
        writer.WriteLine("<label>to <select id=\"loop-to\" autocomplete=\"off\"></select></label>");
        writer.WriteLine("<p>A line\u2019s number loops that line; with Shift it loops as far as there.</p></fieldset>");
    }

    private void Volume(string id, string label) => writer.WriteLine($"<label>{label} {Range(id, 0, 100, 5, 100)}</label>");

    private void Switch(string id, string label, bool isOn) =>
        writer.WriteLine($"<label><input type=\"checkbox\" id=\"{id}\"{(isOn ? " checked" : string.Empty)} autocomplete=\"off\"> {label}</label>");

    private void Shift(int semitones, string label, string name) =>
        writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"<button type=\"button\" class=\"shift\" value=\"{semitones}\" aria-label=\"{name}\">{label}</button>"));

    private static string Range(string id, int low, int high, int step, int value) => string.Create(
        CultureInfo.InvariantCulture, $"<input type=\"range\" id=\"{id}\" min=\"{low}\" max=\"{high}\" step=\"{step}\" value=\"{value}\" autocomplete=\"off\">");
}
