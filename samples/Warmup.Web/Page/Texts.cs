using System.Globalization;

namespace Warmup.Web;

/// <summary>All words of the page that are its own. Another language is another value of this type.</summary>
internal sealed record Texts
{
    public static Texts English { get; } = new();

    public string Language { get; init; } = "en";
    public string Title { get; init; } = "Warmup: make a drill";
    public string Heading { get; init; } = "Make a drill";
    public string ToPreview { get; init; } = "To the drill";
    public string Intro { get; init; } = "Choose who sings, a scale, a drill, a tonic and a tempo. The page shows the drill, whom it fits and what would help, and has its files.";
    public string Show { get; init; } = "Show the drill";
    public string Usual { get; init; } = "as usual";
    public string Wrong { get; init; } = "Not yet a drill";
    public string NoAnswer { get; init; } = "The page gets no answer: is the program still running, or very busy?";

    public string Class { get; init; } = "The class";
    public string ClassHelp { get; init; } = "One singer a line: name, lowest and highest comfortable note, seconds one tone is held, experience. A table or a JSON file of singers can be pasted too.";
    public string ClassKept { get; init; } = "With the page's script, the class stays in this browser and nowhere else. Without it, the class travels in the address: send that to nobody you would not send the class to.";
    public string ClassTable { get; init; } = "Singers";
    public string ClassInvented { get; init; } = "Try an invented class";
    public string ClassImport { get; init; } = "Take a class from a file (JSON or CSV)";
    public string ClassAsCsv { get; init; } = "The class as CSV";
    public string ClassAsJson { get; init; } = "The class as JSON";
    public string AddSinger { get; init; } = "Add a singer";
    public string Name { get; init; } = "Name";
    public string Lowest { get; init; } = "Lowest note";
    public string Highest { get; init; } = "Highest note";
    public string Seconds { get; init; } = "Seconds one tone is held";
    public string Experience { get; init; } = "Experience";
    public string Add { get; init; } = "Add";

    public string Scale { get; init; } = "Scale";
    public string ScaleText { get; init; } = "Name, number of a parent, or notes";
    public string Find { get; init; } = "Search: a name, a number or letters";
    public string FindHelp { get; init; } = "For example: mohanam, 15, or S R G P N";
    public string WithoutP { get; init; } = "only scales without P";
    public string Search { get; init; } = "Search";
    public string NothingFound { get; init; } = "No scale in the catalogue matches. Any scale can be written out: S R2 G3 P D2 S'";
    public string Ascent { get; init; } = "up";
    public string Descent { get; init; } = "down";
    public string Neighbours { get; init; } = "Scales one note away";
    public string Shifts { get; init; } = "The same notes from another tonic";

    public string Drill { get; init; } = "Drill";
    public string FromExercise { get; init; } = "An exercise";
    public string FromWritten { get; init; } = "Lines in svaras";
    public string FromWords { get; init; } = "A rule in words";
    public string Exercise { get; init; } = "Exercise";
    public string Written { get; init; } = "Lines, one a row: S R G M";
    public string Words { get; init; } = "Rule: ladder, ladder.reversed, run.pairs(2)";
    public string WordList { get; init; } = "The words and what each does";
    public string Lines { get; init; } = "Only these lines, such as 1-5,7";
    public string Levels { get; init; } = "Three levels of this idea";
    public string LevelOne { get; init; } = "1: as it is";
    public string LevelTwo { get; init; } = "2: turned round";
    public string LevelThree { get; init; } = "3: first and last notes";
    public string LevelNone { get; init; } = "This scale has no such lines.";
    public string Take { get; init; } = "Take this";

    public string Voice { get; init; } = "Voice";
    public string Tonic { get; init; } = "Tonic (S): G3, 2 kattai, 196 Hz";
    public string Syllables { get; init; } = "Sung on";
    public string Tuning { get; init; } = "Tuning";
    public string Tonics { get; init; } = "Tonics for this class, the best first";
    public string TonicsNeedClass { get; init; } = "With a class, the tonics are ranked for it here.";

    public string Time { get; init; } = "Time";
    public string Tempo { get; init; } = "Tempo, aksharas a minute: 60, or 60 to 90 by 5";
    public string Tala { get; init; } = "Tala or time signature";
    public string Speeds { get; init; } = "Speeds: 1; 1,2,3; trikalam";
    public string Gati { get; init; } = "Gati";
    public string Delivery { get; init; } = "Lines";
    public string Continuous { get; init; } = "run on";
    public string LineByLine { get; init; } = "line by line, with a breath after each";
    public string Fill { get; init; } = "Fill each line up to";
    public string FillBy { get; init; } = "Fill up with";
    public string Breath { get; init; } = "Breath after a line, seconds";
    public string Breaths { get; init; } = "Planned breaths (longest breath/shortest pause, seconds)";

    public string Preview { get; init; } = "The drill";
    public string Sheet { get; init; } = "Sheet";
    public string Files { get; init; } = "Take it with you";
    public string Fits { get; init; } = "Whom it fits";
    public string FitsYes { get; init; } = "fits";
    public string FitsNo { get; init; } = "does not fit";
    public string FitsAll { get; init; } = "The drill fits everyone in the class.";
    public string NoClass { get; init; } = "Add singers, and the page says whom the drill fits and what would help.";
    public string WhatHelps { get; init; } = "What would help (tried: it brings nobody a new finding)";
    public string HelpComes { get; init; } = "What would help is being tried.";
    public string Alone { get; init; } = "Alone";
    public string Contour { get; init; } = "The drill over the range";
    public string Tempi { get; init; } = "Tempi that all can sing";
    public string NoTempo { get; init; } = "no tempo fits all";
    public string Now { get; init; } = "now";
    public string Cautions { get; init; } = "Cautions";
    public string Practise { get; init; } = "Practice page (plays in the browser)";
    public string Pdf { get; init; } = "Sheet (PDF)";
    public string Midi { get; init; } = "MIDI";
    public string MusicXml { get; init; } = "Notation (MusicXML)";
    public string Wav { get; init; } = "Sound (WAV)";
    public string Zip { get; init; } = "All together (zip)";
    public string GivenTwice { get; init; } = "must be given once";

    public Func<int, string> TooLong { get; init; } = most => string.Create(CultureInfo.InvariantCulture, $"must have at most {most} characters");
    public Func<int, string> TooManySingers { get; init; } = most => string.Create(CultureInfo.InvariantCulture, $"a class must have at most {most} singers here");
    public Func<int, int, string> More { get; init; } = (shown, all) => string.Create(CultureInfo.InvariantCulture, $"{shown} of {all} shown");
    public Func<int, string> Notes { get; init; } = notes => string.Create(CultureInfo.InvariantCulture, $"{notes} notes");
    public Func<string, string> OnLines { get; init; } = lines => $"{(lines.All(char.IsAsciiDigit) ? "line" : "lines")} {lines}: ";
    public Func<string, string> SheetOf { get; init; } = title => $"Sheet of {title}; its lines stand above as text";
    public Func<string, string, string, string> ContourOf { get; init; } = (name, low, high) => $"The drill's notes over {name}'s range from {low} to {high}";

    /// <summary>What an exercise's group is called, in words.</summary>
    public IReadOnlyDictionary<string, string> Groups { get; init; } = new Dictionary<string, string>
    {
        ["karvai"] = "Long notes (karvai)",
        ["sarali"] = "Scale exercises (sarali varisai)",
        ["janta"] = "Doubled notes (janta varisai)",
        ["datu"] = "Leaps (datu varisai)",
        ["melsthayi"] = "Into the upper octave (melsthayi)",
        ["mandrasthayi"] = "Into the lower octave (mandrasthayi)",
        ["alankara"] = "The seven alankaras",
        ["choir"] = "What choirs sing",
        ["voice"] = "Sirens, swells, short notes",
    };

    public string OtherTalas { get; init; } = "An alankara in each of the 35 talas";

    /// <summary>A field's name in messages.</summary>
    public string FieldOf(string name) => name switch
    {
        "scale" => Scale,
        "pattern" => Drill,
        "tonic" => "Tonic",
        "tempo" => "Tempo",
        "class" => Class,
        "tala" => Tala,
        "speeds" => "Speeds",
        "lines" => "Lines sung",
        "fill-by" => FillBy,
        "fill" => Fill,
        "breath" => Breath,
        "breaths" => "Planned breaths",
        _ => name,
    };
}
