using System.Text;
using System.Text.Json;
using Warmup;
using Warmup.Audio;
using Warmup.Benchmarks;
using Warmup.Drawing;
using Warmup.Midi;
using Warmup.MusicXml;
using Warmup.Plans;
using Warmup.Reading;
using Warmup.Sheets;

// With the word first it measures the first drill of a fresh process (docs/performance.md).
if (FirstDrill.TryRun(args))
{
    return 0;
}

// Writes one file of each kind into the folder that is named, reads the JSON back, and prints what was written. Compiled ahead of time it
// has to write the very same bytes as run by the runtime: .ci/run compares the two.
if (args is not [var folder])
{
    Console.Error.WriteLine("name the folder to write to");
    return 2;
}

Directory.CreateDirectory(folder);
var drill = new Drill
{
    Scale = Catalogue.Default.Read("Mohanam"),
    Pattern = Pattern.Parse("ladder + ladder.reversed"),
    Tonic = Tonic.Parse("G3"),
    Tuning = Tuning.Just,
    Delivery = Delivery.LineByLine,
    Syllables = Syllables.Devanagari,
};
var score = drill.ToScore();
IScoreFormat[] formats =
[
    new MidiFormat(new MidiOptions { Text = MidiTextEncoding.Utf8 }), new MusicXmlFormat(), new MxlFormat(), new TextSheetFormat(), new HtmlFormat(), new SvgFormat(), new PdfFormat(), new PngFormat(),
    new WavFormat(),
];
foreach (var format in formats)
{
    format.Save(score, In("drill" + format.Extensions[0]));
}

new SvgFormat(new ContourOptions()).Save(score, In("contour.svg"));

ValueList<Singer> singers =
[
    new Singer("Wren", NoteName.FromMidi(55), NoteName.FromMidi(76), 14, Experience.Intermediate),
    new Singer("Finch", NoteName.FromMidi(48), NoteName.FromMidi(67), 11),
];
AtomicFile.Write(In("ranges.svg"), s => RangeChart.Write(score, singers.ConvertAll(singer => new RangeBar(singer.Band)), s));
AtomicFile.Write(In("singers.json"), s => SingersFile.Write(singers, s));
AtomicFile.Write(In("pattern.json"), s => PatternFile.Write(drill.Pattern, s));
AtomicFile.Write(In("tuning.scl"), s => ScalaFile.FromTuning(Tuning.Just).Write(s));
var findings = drill.Advise(singers).Select(advice => $"{advice.Describe(drill)}\n");
AtomicFile.Write(In("findings.txt"), s => s.Write(Encoding.UTF8.GetBytes(string.Concat(findings))));

var plan = WarmupPlan.Make(new PlanRequest
{
    Singers = singers,
    Scales = [drill.Scale, Catalogue.Default.Read("Hamsadhwani")],
    Start = new DateOnly(2026, 12, 1),
    Days = 7,
    Seed = 7,
}).Plan;
AtomicFile.Write(In("plan.json"), s => PlanFile.Write(plan, s));
AtomicFile.Write(In("month.html"), MonthPage.Of(plan).Single().Write);
new MidiFormat().Save(plan.ToScore(plan.Days.First(d => !d.IsRest)), In("day.mid"));

var kept = new Kept
{
    Scale = drill.Scale, Tuning = drill.Tuning, Meter = drill.Meter, Pattern = drill.Pattern, Syllables = drill.Syllables.WithOctaveDots(),
    Speeds = [Speed.First, new Speed(2, 3)], Tempi = [60, new Rational(145, 2)], Words = ["sa", "ri"],
};
File.WriteAllBytes(In("values.json"), JsonSerializer.SerializeToUtf8Bytes(kept, KeptJson.Default.Kept));

foreach (var file in Directory.GetFiles(folder).Order(StringComparer.Ordinal))
{
    Console.WriteLine($"{Path.GetFileName(file)} {new FileInfo(file).Length}");
}

return Same(SingersFile.Read(Bytes("singers.json")), singers, "singers.json")
    && Same(PatternFile.Read(Bytes("pattern.json")), drill.Pattern, "pattern.json")
    && Same(PlanFile.Read(Bytes("plan.json")), plan, "plan.json")
    && Same(JsonSerializer.Deserialize(Bytes("values.json"), KeptJson.Default.Kept)!, kept, "values.json")
    && Same(MusicReader.Read(Bytes("drill.musicxml")).Sections[0].Lines.Sum(l => l.Notes.Count), score.NoteCount, "drill.musicxml")
    && Same(MusicReader.Read(Bytes("drill.mxl")), MusicReader.Read(Bytes("drill.musicxml")), "drill.mxl")
    && Same(MusicReader.Read(Bytes("drill.mid")).Sections[0].Lines.Count, score.Sections[0].Lines.Count, "drill.mid")
    && Refuses(score.Sections[0].Notes[0])
        ? 0
        : 1;

// A value without a text form must not be written as something that reads back as another value.
static bool Refuses(ScoreNote note)
{
    try
    {
        Console.Error.WriteLine(JsonSerializer.Serialize(note, KeptJson.Default.ScoreNote));
        return false;
    }
    catch (NotSupportedException)
    {
        return true;
    }
}

string In(string name) => Path.Combine(folder, name);

byte[] Bytes(string name) => File.ReadAllBytes(In(name));

static bool Same<T>(T read, T written, string name)
{
    var same = read!.Equals(written);
    if (!same)
    {
        Console.Error.WriteLine($"{name} read back is not what was written");
    }

    return same;
}
