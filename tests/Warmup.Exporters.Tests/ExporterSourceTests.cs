using System.Reflection;
using System.Runtime.CompilerServices;

namespace Warmup.Exporters.Tests;

/// <summary>
/// Source: the library's own rule that the core computes every part and exporters only write. What an exporter may use of the core is
/// listed here with the reason; whatever is not listed belongs into the core, computed once.
/// </summary>
[Trait("Run", "whole")]
public class ExporterSourceTests
{
    private const string Everything = "*";

    // The folder of Shared that no exporter compiles.
    private const string ReadersOnly = "Json";

    /// <summary>What every exporter may use: the type, and its members.</summary>
    private static readonly Dictionary<string, string> Allowed = new()
    {
        // The contract, exact numbers and lists.
        ["IScoreFormat"] = Everything, ["ExportException"] = Everything, ["Rational"] = Everything, ["ValueList"] = Everything,

        // What the core has computed: the score, and what it tells of itself when asked.
        ["Score"] = "Title Sections Drone Findings Cautions Seconds NoteCount HasCountIn SectionStarts WithAngaMeasures",
        ["Section"] = """
            Title Scale Tonic TonicName Tuning Meter Speed Delivery Tempo TempoChanges CountIn Eduppu Resolution Pitches Notes Lines Breaths Measures LengthSteps Length Seconds LastFilled
            IsLastAvartanaFull RoundsToFirstBeat Rounds PitchOf SungSyllables SyllableOf TempoAt SecondsAt BreathAfter AlikeFrom Transposed DegreeNames TonesBetween CentsOf IsSungIn HasSeveralOf
            """,
        ["ScorePitch"] = "Tone Name Cents Hz OffsetCents Midi",
        ["ScoreNote"] = "OnsetSteps LengthSteps EndSteps MiddleSteps SoundEndSteps Onset Length Middle End SoundEnd PitchIndex LineIndex SyllableIndex IsHeld Joining Loudness",
        ["Joining"] = Everything, ["Loudness"] = Everything,
        ["ScoreLine"] = "FirstNote NoteCount OnsetSteps LengthSteps EndSteps AnswerSteps AnswerOnsetSteps Onset Length End Speed Round Answer HasAnswer AnswerOnset",
        ["TempoChange"] = "Onset Tempo Seconds",
        ["Breath"] = "Onset Length AfterNote",
        ["Measure"] = "OnsetSteps LengthSteps Onset Length IsLineStart",
        ["Drone"] = "Strings IsHeld StrokeSeconds CycleSeconds Strokes",
        ["DroneStroke"] = "StringIndex Onset Length",

        // How the beats are counted and accented; a time signature, and the note value of a beat.
        ["Meter"] = "IsFree Beats BeatType BeatValue IsCompound SignatureGroups SignatureType AccentOf KriyaOf AngaEnd",
        ["BeatAccent"] = Everything, ["Kriya"] = Everything,
        ["Anga"] = "Sign",
        ["Speed"] = "Kalam Gati Unit NotesPerAkshara",
        ["Tempo"] = "Slowest Fastest",

        // What is printed in a header.
        ["Scale"] = "Name Ascent Descent",
        ["Tuning"] = "Name",
        ["Delivery"] = "ToString",
        ["Tonic"] = "Midi OffsetCents A4 Hz KattaiNumber StandardA4 LowestMidi HighestMidi",
        ["Finding"] = Everything, ["Caution"] = Everything, ["Cautions"] = Everything,

        // How a written note is made up, and what a tone is called.
        ["NoteName"] = "Letter LetterIndex Alteration Octave Midi LowestOctave HighestOctave",
        ["ScaleTone"] = "new Degree Octave Semitones",
        ["Degree"] = "Variant",
        ["Syllables"] = "SyllableOf SyllableWithVariant WithOctaveDots HasVariants HasToneNames All SvaraLetters Devanagari Tamil Telugu Kannada Malayalam Solfa LaBasedSolfa Numbers",

        // How loud what accompanies a voice is, the same in every output.
        ["SoundBalance"] = "DroneBelowVoice",

        // What the caller hands in.
        ["PitchBand"] = "Name Low High IsAssumed",
        ["TempoRange"] = "Slowest Fastest",

        // Arithmetic that is no acoustics.
        ["Math"] = "Abs Min Max Clamp Round Floor Ceiling DivRem",
    };

    /// <summary>What only some files may use, and why.</summary>
    private static readonly Dictionary<(string Type, string Member), string[]> AllowedIn = new()
    {
        // The signs of the angas stand before the gestures in a sheet's header.
        [("Meter", "Angas")] = ["TimeRows.cs"],

        // Whether the beats are counted with gestures decides which words stand on a sheet: aksharas, or beats.
        [("Meter", "Gestures")] = ["MeterWords.cs"],

        // The page lists the tonics that a student may move to, each as the core places and spells it.
        [("Tonic", "Transposed")] = ["HtmlScore.cs"],
        [("Spelling", "Spelling")] = ["HtmlScore.cs"],
        [("Spelling", "ChooseTonic")] = ["HtmlScore.cs"],
        [("NoteName", "new")] = ["HtmlScore.cs"],

        // A keyboard, and the octaves beside measured ranges, are drawn with the names of their notes.
        [("NoteName", "FromMidi")] = ["HistoryDrawing.cs", "RangeChartDrawing.cs"],

        // Sound is made of sines, decays and levels in decibels. No pitch is computed: the core gives each in Hz.
        [("Math", "Sin")] = ["BeatPart.cs", "KWeighting.cs", "Spectrum.cs", "SungTone.cs", "WaveTable.cs"],
        [("Math", "Cos")] = ["KWeighting.cs", "SungTone.cs", "Tone.cs"],
        [("Math", "PI")] = ["BeatPart.cs", "KWeighting.cs", "Spectrum.cs", "SungTone.cs", "Tone.cs", "WaveTable.cs"],
        [("Math", "Exp")] = ["PluckedDronePart.cs"],
        [("Math", "Sqrt")] = ["GainBudget.cs", "Spectrum.cs", "VoicePart.cs"],
        [("Math", "Pow")] = ["GainBudget.cs", "KWeighting.cs", "MidiBalance.cs", "PluckedDronePart.cs", "Spectrum.cs", "SungTone.cs"],
    };

    public static TheoryData<string> Exporters => ["Warmup.Midi", "Warmup.MusicXml", "Warmup.Audio", "Warmup.Sheets", "Warmup.Drawing"];

    private static string Source { get; } =
        typeof(ExporterSourceTests).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().Single(a => a.Key == "Source").Value!;

    // Comparing and printing compute nothing.
    private static bool IsAllowed(CoreUse use) =>
        use.Member is "ToString" or "op_Equality" or "op_Inequality"
        || (AllowedIn.TryGetValue((use.Type, use.Member), out var files) && files.Contains(use.File))
        || (Allowed.TryGetValue(use.Type, out var members)
            && (members == Everything || use.Member == use.Type || members.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Contains(use.Member)));

    // Each is compiled once for all tests.
    private static Dictionary<string, List<CoreUse>> UsesOf { get; } = Exporters.Select(e => (string)e).ToDictionary(e => e, exporter => ExporterReader.Uses(
        exporter,
        new[] { exporter, "Shared" }.SelectMany(f => Directory.GetFiles(Path.Combine(Source, f), "*.cs", f == "Shared" ? SearchOption.AllDirectories : SearchOption.TopDirectoryOnly)).Where(f => Path.GetFileName(Path.GetDirectoryName(f)) != ReadersOnly).Select(f => (Path.GetFileName(f), File.ReadAllText(f)))));

    private static void None<T>(IEnumerable<T> found)
    {
        var all = found.ToList();
        Assert.True(all.Count == 0, string.Join(Environment.NewLine, all));
    }

    [Theory]
    [MemberData(nameof(Exporters))]
    public void No_exporter_computes_anything_musical(string exporter)
    {
        var uses = UsesOf[exporter];
        Assert.True(uses.Count > 20, $"only {uses.Count} uses of the core were found in {exporter}");
        None(uses.Where(u => !IsAllowed(u)));
    }

    [Fact]
    public void Every_exception_is_still_needed()
    {
        var uses = UsesOf.Values.SelectMany(u => u).Select(u => (u.Type, u.Member, u.File)).ToHashSet();
        None(AllowedIn.SelectMany(a => a.Value.Select(f => (a.Key.Type, a.Key.Member, File: f))).Where(a => !uses.Contains(a)));
        None(Allowed.Keys.Where(t => !uses.Any(u => u.Type == t)));
    }

    [Theory]
    [InlineData("Spelling.Name(tone, section.TonicName)", "Spelling.Name")]
    [InlineData("section.Meter.Groups.Count", "Meter.Groups")]
    [InlineData("section.Meter.Gestures[0]", "Meter.Gestures")]
    [InlineData("section.Tuning.Cents(tone)", "Tuning.Cents")]
    [InlineData("""score with { Title = "x" }""", "Score.with")]
    [InlineData("new Breath(0, 1, 2)", "Breath.new")]
    [InlineData("440 * Math.Pow(2, tone.Semitones / 12.0)", "Math.Pow")]
    [InlineData("1200 * Math.Log2(section.Tonic.Hz)", "Math.Log2")]
    [InlineData("Pattern.Ladder.Expand(section.Scale)", "Pattern.Expand")]
    [InlineData("section.Scale.Degrees", "Scale.Degrees")]
    [InlineData("Catalogue.Default", "Catalogue.Default")]
    public void A_computation_is_found(string expression, string found)
    {
        var file = $$"""
            namespace Warmup;
            internal static class Some
            {
                // Spelling.Name(tone, name) in a comment is no use.
                public static object Thing(Score score, Section section, ScaleTone tone) => {{expression}};
            }
            """;
        Assert.Contains(found, ExporterReader.Uses("Some", [("Some.cs", file)]).Where(u => !IsAllowed(u)).Select(u => $"{u.Type}.{u.Member}"));
    }

    [Theory]
    [MemberData(nameof(Exporters))]
    public void Exporters_know_the_core_alone_and_show_their_internals_to_nobody(string exporter)
    {
        var assembly = Assembly.Load(exporter);
        string[] expected = exporter == "Warmup.Drawing" ? ["Warmup.Core", "Warmup.Sheets"] : ["Warmup.Core"];
        Assert.Equal(expected, assembly.GetReferencedAssemblies().Select(a => a.Name!).Where(n => n.StartsWith("Warmup", StringComparison.Ordinal)).Order(StringComparer.Ordinal));
        Assert.Empty(assembly.GetCustomAttributes<InternalsVisibleToAttribute>().Select(a => a.AssemblyName));
    }
}
