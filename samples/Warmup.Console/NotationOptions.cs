using System.CommandLine;
using System.Globalization;
using Warmup.MusicXml;

namespace Warmup.Cli;

/// <summary>The options that say what a file for the notation editor holds.</summary>
internal sealed class NotationOptions
{
    private readonly Option<string> _clef = new("--clef")
    {
        Description = "The clef in .musicxml and .mxl: by-pitch (the voices of --singers where all read the same, otherwise the tonic), treble, treble-8 (sounds an octave lower) or bass.",
        DefaultValueFactory = _ => "by-pitch",
    };

    private readonly Option<string> _key = new("--key")
    {
        Description = "The key signature: traditional (if the scale has one), accidentals, or non-traditional (which many programs ignore).",
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
        Description = $"A further verse: syllables such as solfa, or words with one syllable for each note: \"words: lan- tern light\". At most {MusicXmlOptions.MostFurtherVerses} times.",
        Arity = ArgumentArity.OneOrMore,
        AllowMultipleArgumentsPerToken = false,
    };

    private readonly Option<string> _second = new("--second-voice")
    {
        Description = $"A second part, this many semitones above the first, -{MusicXmlOptions.FarthestSecondVoice} to {MusicXmlOptions.FarthestSecondVoice}; 0 for none.",
        DefaultValueFactory = _ => "0",
    };

    private readonly Option<string> _beat = new("--beat-part")
    {
        Description = "A part that shows the beat: none, strokes, or gestures (clap, finger, wave).",
        DefaultValueFactory = _ => "none",
    };

    private readonly Option<bool> _drone = new("--drone-part") { Description = "Write the drone as a part of held notes." };

    private readonly Option<bool> _slurred = new("--slur-lines") { Description = "Sing each line on one syllable, with a slur over its notes." };

    private readonly Option<bool> _microtones = new("--microtones") { Description = "Write the tuning's deviations as microtones (few editors play them reliably)." };

    private const string Words = "words:";

    public void AddTo(Command command)
    {
        foreach (var option in (Option[])[_clef, _key, _paper, _staff, _verse, _second, _beat, _drone, _slurred, _microtones])
        {
            command.Add(option);
        }
    }

    /// <param name="parsed">The command line.</param>
    /// <param name="singers">The singers, or none; where all read the same clef it is theirs.</param>
    /// <exception cref="InputException">An option's value cannot be used; the message names the option.</exception>
    public MusicXmlOptions Read(ParseResult parsed, ValueList<Singer> singers) => new()
    {
        Clef = OptionValue.Choice(
            "--clef",
            parsed.GetValue(_clef)!,
            ("by-pitch", ClefOf(singers)),
            ("treble", MusicXmlClef.Treble),
            ("treble-8", MusicXmlClef.TrebleOctaveDown),
            ("bass", MusicXmlClef.Bass)),
        Key = OptionValue.Choice(
            "--key",
            parsed.GetValue(_key)!,
            ("traditional", MusicXmlKey.TraditionalWhereExact),
            ("accidentals", MusicXmlKey.Accidentals),
            ("non-traditional", MusicXmlKey.NonTraditional)),
        Paper = OptionValue.Choice(
            "--paper", parsed.GetValue(_paper)!, ("a4", MusicXmlPaper.A4), ("letter", MusicXmlPaper.Letter), ("unspecified", MusicXmlPaper.Unspecified)),
        StaffMillimetres = OptionValue.Whole("--staff", parsed.GetValue(_staff)!, MusicXmlOptions.SmallestStaff, MusicXmlOptions.LargestStaff),
        FurtherVerses = Verses(parsed.GetValue(_verse) ?? []),
        SecondVoiceSemitones = OptionValue.Whole(
            "--second-voice", parsed.GetValue(_second)!, -MusicXmlOptions.FarthestSecondVoice, MusicXmlOptions.FarthestSecondVoice),
        Beat = OptionValue.Choice(
            "--beat-part", parsed.GetValue(_beat)!, ("none", MusicXmlBeat.None), ("strokes", MusicXmlBeat.Strokes), ("gestures", MusicXmlBeat.Gestures)),
        HasDrone = parsed.GetValue(_drone),
        HasOneSyllableALine = parsed.GetValue(_slurred),
        HasMicrotones = parsed.GetValue(_microtones),
    };

    /// <summary>
    /// Women and children read the treble clef, men the same an octave down (common practice). The middle of a range tells them apart: a tenor's lies at
    /// middle C or below (C3 to C5), an alto's above it (F3 to D5).
    /// </summary>
    private static MusicXmlClef ClefOf(ValueList<Singer> singers)
    {
        const int MiddleC = 60;
        var high = singers.Count(s => s.Low.Midi + s.High.Midi > 2 * MiddleC);
        return singers.IsEmpty || (high > 0 && high < singers.Count) ? MusicXmlClef.ByPitch
            : high > 0 ? MusicXmlClef.Treble
            : MusicXmlClef.TrebleOctaveDown;
    }

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
                : throw new InputException($"--verse needs 1 to {MusicXmlVerse.MostWords} syllables after 'words:', not {words.Length}");
        }

        return Syllables.TryParse(text, out var syllables, out var error)
            ? MusicXmlVerse.Of(syllables)
            : throw new InputException($"--verse, {error}, or 'words:' and the text");
    }
}
