using System.CommandLine;
using System.Globalization;
using Warmup.MusicXml;

namespace Warmup.Cli;

/// <summary>The options that say what a file for the notation editor holds.</summary>
internal sealed class NotationOptions
{
    private readonly Option<string> _clef = new("--clef")
    {
        Description = "In .musicxml and .mxl, the clef: by-pitch, treble, treble-8 (sounding an octave lower) or bass.",
        DefaultValueFactory = _ => "by-pitch",
    };

    private readonly Option<string> _key = new("--key")
    {
        Description = "The key signature: traditional (where the scale is one), accidentals, or non-traditional (which many readers ignore).",
        DefaultValueFactory = _ => "traditional",
    };

    private readonly Option<string> _paper = new("--paper") { Description = "The page: a4, letter or unspecified.", DefaultValueFactory = _ => "a4" };

    private readonly Option<string> _staff = new("--staff")
    {
        Description = $"The height of a staff in millimetres, {MusicXmlOptions.SmallestStaff} to {MusicXmlOptions.LargestStaff}.",
        DefaultValueFactory = _ => MusicXmlOptions.Default.StaffMillimetres.ToString(CultureInfo.InvariantCulture),
    };

    private readonly Option<string[]> _verse = new("--verse")
    {
        Description = $"Syllables of a further verse, such as solfa, or words, one syllable a note: \"words: lan- tern light\". At most {MusicXmlOptions.MostFurtherVerses}.",
        Arity = ArgumentArity.OneOrMore,
        AllowMultipleArgumentsPerToken = false,
    };

    private readonly Option<string> _second = new("--second-voice")
    {
        Description = $"Semitones above the score at which a second part sings, -{MusicXmlOptions.FarthestSecondVoice} to {MusicXmlOptions.FarthestSecondVoice}; 0 for none.",
        DefaultValueFactory = _ => "0",
    };

    private readonly Option<string> _beat = new("--beat-part")
    {
        Description = "A part that shows the beat: none, strokes, or gestures (clap, finger, wave).",
        DefaultValueFactory = _ => "none",
    };

    private readonly Option<bool> _drone = new("--drone-part") { Description = "Write the drone as a part of held notes." };

    private readonly Option<bool> _slurred = new("--slur-lines") { Description = "One syllable a line, with a slur over its notes." };

    private readonly Option<bool> _microtones = new("--microtones") { Description = "Write the tuning's deviations as microtones (many editors play them unreliably)." };

    private const string Words = "words:";

    public void AddTo(Command command)
    {
        foreach (var option in (Option[])[_clef, _key, _paper, _staff, _verse, _second, _beat, _drone, _slurred, _microtones])
        {
            command.Add(option);
        }
    }

    /// <exception cref="InputException">An option's value cannot be used; the message names the option.</exception>
    public MusicXmlOptions Read(ParseResult parsed) => new()
    {
        Clef = DrillOptions.Choice(
            "--clef",
            parsed.GetValue(_clef)!,
            ("by-pitch", MusicXmlClef.ByPitch),
            ("treble", MusicXmlClef.Treble),
            ("treble-8", MusicXmlClef.TrebleOctaveDown),
            ("bass", MusicXmlClef.Bass)),
        Key = DrillOptions.Choice(
            "--key",
            parsed.GetValue(_key)!,
            ("traditional", MusicXmlKey.TraditionalWhereExact),
            ("accidentals", MusicXmlKey.Accidentals),
            ("non-traditional", MusicXmlKey.NonTraditional)),
        Paper = DrillOptions.Choice(
            "--paper", parsed.GetValue(_paper)!, ("a4", MusicXmlPaper.A4), ("letter", MusicXmlPaper.Letter), ("unspecified", MusicXmlPaper.Unspecified)),
        StaffMillimetres = DrillOptions.Whole("--staff", parsed.GetValue(_staff)!, MusicXmlOptions.SmallestStaff, MusicXmlOptions.LargestStaff),
        FurtherVerses = Verses(parsed.GetValue(_verse) ?? []),
        SecondVoiceSemitones = DrillOptions.Whole(
            "--second-voice", parsed.GetValue(_second)!, -MusicXmlOptions.FarthestSecondVoice, MusicXmlOptions.FarthestSecondVoice),
        Beat = DrillOptions.Choice(
            "--beat-part", parsed.GetValue(_beat)!, ("none", MusicXmlBeat.None), ("strokes", MusicXmlBeat.Strokes), ("gestures", MusicXmlBeat.Gestures)),
        HasDrone = parsed.GetValue(_drone),
        HasOneSyllableALine = parsed.GetValue(_slurred),
        HasMicrotones = parsed.GetValue(_microtones),
    };

    private static ValueList<MusicXmlVerse> Verses(string[] texts) => texts.Length <= MusicXmlOptions.MostFurtherVerses
        ? texts.Select(Verse).ToValueList()
        : throw new InputException($"--verse may be given {MusicXmlOptions.MostFurtherVerses} times at most, not {texts.Length}");

    private static MusicXmlVerse Verse(string text)
    {
        if (text.TrimStart().StartsWith(Words, StringComparison.OrdinalIgnoreCase))
        {
            var words = text.TrimStart()[Words.Length..].Split(' ', StringSplitOptions.RemoveEmptyEntries);
            return words.Length > 0 && words.Length <= MusicXmlVerse.MostWords
                ? MusicXmlVerse.OfWords(words.ToValueList())
                : throw new InputException($"--verse needs 1 to {MusicXmlVerse.MostWords} syllables behind 'words:', not {words.Length}");
        }

        return Syllables.TryParse(text, out var syllables, out var error)
            ? MusicXmlVerse.Of(syllables!)
            : throw new InputException($"{DrillOptions.Refusal("--verse", error!).Message}, or words: with the text");
    }
}
