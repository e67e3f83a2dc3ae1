using System.Globalization;

namespace Warmup.Web;

/// <summary>All words of the page that are its own. Another language is another value of this type.</summary>
internal sealed record Texts
{
    public static Texts English { get; } = new();

    public string Language { get; init; } = "en";
    public string Heading { get; init; } = "Make a drill";
    public string Pages { get; init; } = "Pages";
    public string ToPreview { get; init; } = "To what comes of it";
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
    public string DrillTitle { get; init; } = "Title on the sheets (as usual where empty)";
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
    public string DroneAndClimb { get; init; } = "Drone and climb";
    public string FillAndRepeats { get; init; } = "Filling up, breaths, repeats, count-in, eduppu";
    public string Drone { get; init; } = "Drone";
    public string DroneString { get; init; } = "The drone's first string: P, M1, N3 (by the scale where empty)";
    public string Climb { get; init; } = "Climb: again a semitone higher each time, so many semitones up and back";
    public string Cue { get; init; } = "Heard on each new tonic of a climb";
    public string CueNote { get; init; } = "the tonic, held";
    public string CueChord { get; init; } = "its triad, note by note";
    public string CueNone { get; init; } = "nothing";
    public string WithoutClimb { get; init; } = "stay on the first tonic";
    public string NoClimb { get; init; } = "No shorter climb fits everyone. What would help is found for the drill without a climb.";
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

    public string Repeat { get; init; } = "How often it is sung: 1 to 1000";
    public string CountIn { get; init; } = "Count-in: avartanas or bars before the first line, 0 to 8";
    public string Eduppu { get; init; } = "Eduppu: a line begins after the beat, aksharas";
    public string OnTheBeat { get; init; } = "on the beat";

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
    public string TempoHelp { get; init; } = "What would help";
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

    public string ReadFrom { get; init; } = "Lines from a file: MusicXML, MIDI or typed text. It can also be dropped anywhere on the page.";
    public string ReadKnown { get; init; } = "What is known of the file: its scale and tonic";
    public string ReadScale { get; init; } = "Scale of the file (proposed where empty)";
    public string ReadTonic { get; init; } = "Tonic of the file (proposed where empty)";
    public string ReadFile { get; init; } = "Read the file";
    public string FileTooLarge { get; init; } = "The file is larger than 4 MiB, the most that is read here.";
    public string NoFile { get; init; } = "choose a file first";
    public string NotRead { get; init; } = "The file was not read";
    public string WasRead { get; init; } = "Read from the file";
    public string UseRead { get; init; } = "Take these lines as the drill";
    public string NotWritable { get; init; } = "These lines cannot be written out as svaras: their lengths have no common unit, or they are too long.";
    public string Proposals { get; init; } = "Scales and tonics that were weighed, the likeliest first";
    public string Remarks { get; init; } = "What could not be kept, or was mended";
    public string NoRemarks { get; init; } = "Everything in the file was kept.";

    public string SingIt { get; init; } = "Sing it";
    public string TakeConsent { get; init; } = "The browser asks before the microphone is used. The recording stays in this page until you close it, and goes only to the program that serves the page, which forgets it. Use headphones if something plays while you sing, or it is recorded too. Half an hour at most.";
    public string Record { get; init; } = "Record";
    public string StopRecording { get; init; } = "Stop recording";
    public string MicrophoneLevel { get; init; } = "Level of the microphone";
    public string NoMicrophone { get; init; } = "There is no microphone that this page may use here.";
    public string MicrophoneRefused { get; init; } = "The microphone was not allowed.";
    public string NothingHeard { get; init; } = "Hardly anything was heard: is the microphone on?";
    public string Listening { get; init; } = "The recording is being held against the drill.";
    public string TakeTooLong { get; init; } = "The recording is longer than half an hour, the most that is heard.";
    public string TakeUnknown { get; init; } = "This browser cannot open the recording: convert it to WAV.";
    public string Hear { get; init; } = "What was sung";
    public string SaveTake { get; init; } = "Save the recording (WAV)";
    public string TakeFrom { get; init; } = "Or a recording from a file";
    public string Report { get; init; } = "What was sung";
    public string ReportPicture { get; init; } = "The take as a picture";
    public string NoteByNote { get; init; } = "Note by note";

    public string PlanHeading { get; init; } = "Plan warm-ups";
    public string PlanIntro { get; init; } = "A warm-up for each day that fits everyone in the class: which scale, which drills, at which tempo. Open a day to see, print and hear it, and mark it when it was sung.";
    public string PlanFields { get; init; } = "The plan";
    public string PlanShow { get; init; } = "Show the plan";
    public string PlanResult { get; init; } = "The days";
    public string PlanNeeds { get; init; } = "A plan needs a class and its first day.";
    public string NoPlanYet { get; init; } = "Not yet a plan";
    public string NoPlanPossible { get; init; } = "There is no such plan";
    public string PlanWith { get; init; } = "With this there is a plan (tried):";
    public string Scales { get; init; } = "Scales, with commas between them; or audava, parent:15";
    public string Start { get; init; } = "First day";
    public string Days { get; init; } = "Days, 1 to 62";
    public string Minutes { get; init; } = "At most so many minutes a day, 5 to 20";
    public string Level { get; init; } = "Level";
    public string LevelOfClass { get; init; } = "that of the least experienced singer";
    public string PlanMore { get; init; } = "Tonic, tempo, days of rest, returns, climbs, seed";
    public string PlanTonic { get; init; } = "Tonic (the best one for the class where empty)";
    public string PlanTempo { get; init; } = "Tempo from week to week: 60 to 72 by 2 (the level's where empty)";
    public string PlanClimb { get; init; } = "Also figures that climb by semitones, so many: 1 to 7";
    public string Rest { get; init; } = "Days of rest: sunday wednesday, or none";
    public string Wait { get; init; } = "For how many days of singing no drill returns";
    public string Least { get; init; } = "Least share of the minutes that a scale must be able to fill, per cent";
    public string Seed { get; init; } = "Seed: another number, another plan";
    public string Retry { get; init; } = "Drills of which lines stayed off when they were heard";
    public string RetryFirst { get; init; } = "get their turn again before others";
    public string RetryInTurn { get; init; } = "wait like all others";
    public string LogFrom { get; init; } = "A log to go on from as well, such as the program's with what was heard";
    public string RestDay { get; init; } = "rest";
    public string Short { get; init; } = "Short";
    public string PlanAbout { get; init; } = "Who sings where, and what the plan leaves out";
    public string PlanFile { get; init; } = "The plan as a file for the program (JSON)";
    public string PlanPage { get; init; } = "The months as a page to print or send";
    public string DayFiles { get; init; } = "The warm-up of this day";
    public string EarlierDay { get; init; } = "The day before";
    public string LaterDay { get; init; } = "The day after";
    public string NothingThatDay { get; init; } = "Nothing is sung on this day.";
    public string LeftOutForTime { get; init; } = "Left out for lack of time";
    public string OpenDrill { get; init; } = "Open this drill to change or hear it";
    public string Sung { get; init; } = "Sung";
    public string Ticked { get; init; } = "The teacher's tick: the next plan may go on from this tempo";
    public string SungMark { get; init; } = "sung";
    public string TickedMark { get; init; } = "sung, ticked";
    public string OtherMark { get; init; } = "sung otherwise";
    public string SungKept { get; init; } = "What was sung stays in this browser and nowhere else, until it is taken away as a file.";
    public string SungCount { get; init; } = "{0} of {1} days sung.";
    public string SungFile { get; init; } = "What was sung, as a log";
    public string GoOn { get; init; } = "Go on from what was sung before the first day";
    public string SungNeedsScript { get; init; } = "With the page's script a day can be marked as sung; the marks stay in the browser.";
    public ValueList<string> Weekdays { get; init; } = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];

    public Func<DateOnly, string> MonthOf { get; init; } = day => day.ToString("MMMM yyyy", CultureInfo.InvariantCulture);
    public Func<DateOnly, string> DateOf { get; init; } = day => day.ToString("dddd, d MMMM yyyy", CultureInfo.InvariantCulture);
    public Func<int, string> OctavesOf { get; init; } = octaves => string.Create(
        CultureInfo.InvariantCulture, $"{(Math.Abs(octaves) == 1 ? "an octave" : $"{Math.Abs(octaves)} octaves")} {(octaves < 0 ? "lower" : "higher")}");
    public Func<string, string, string, string, string> ReadOf { get; init; } = (scale, tonic, meter, tempo) => $"{scale}, S = {tonic}, {meter}, {tempo} aksharas or beats a minute";
    public Func<string, string> FoundBy { get; init; } = way => $"lines found by: {way}";
    public Func<string, string> UseRule { get; init; } = rule => $"Take the rule that gives them: {rule}";
    public Func<string, int, int, string> PlannedOf { get; init; } = (title, tempo, times) => string.Create(
        CultureInfo.InvariantCulture, $"{title} at {tempo}{times switch { 1 => string.Empty, 2 => ", twice", _ => $", {times} times" }}");
    public Func<string, string, string, string> RetryOf { get; init; } = (scale, drill, lines) => $"its turn again first: {drill} in {scale}, of which {(lines.All(char.IsAsciiDigit) ? "line" : "lines")} {lines} stayed off";
    public Func<string, string, int, string> PlanOf { get; init; } = (tonic, level, minutes) => string.Create(
        CultureInfo.InvariantCulture, $"S = {tonic}, level {level}, at most {minutes} minutes a day. The number after \"at\" is the tempo in aksharas a minute.");
    public Func<string, int, string> LengthOf { get; init; } = (time, minutes) => string.Create(CultureInfo.InvariantCulture, $"{time} of {minutes}:00 minutes, with the beat before each drill");

    public Func<int, string> TooLong { get; init; } = most => string.Create(CultureInfo.InvariantCulture, $"must have at most {most} characters");
    public Func<int, string> TooManySingers { get; init; } = most => string.Create(CultureInfo.InvariantCulture, $"a class must have at most {most} singers here");
    public Func<int, int, string> More { get; init; } = (shown, all) => string.Create(CultureInfo.InvariantCulture, $"{shown} of {all} shown");
    public Func<int, string> ClimbOf { get; init; } = semitones => string.Create(CultureInfo.InvariantCulture, $"climb {semitones} {(semitones == 1 ? "semitone" : "semitones")}");
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

    /// <summary>What is heard on a new tonic, in words.</summary>
    public string CueOf(string word) => word switch { "note" => CueNote, "chord" => CueChord, _ => CueNone };

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
        "repeat" => "How often it is sung",
        "count-in" => "Count-in",
        "eduppu" => "Eduppu",
        "drone" => Drone,
        "drone-string" => "The drone's first string",
        "climb" => "Climb",
        "cue" => Cue,
        "title" => "Title",
        "scales" => "Scales",
        "start" => "First day",
        "days" => "Days",
        "minutes" => "Minutes",
        "level" => "Level",
        "rest" => "Days of rest",
        "no-repeat" => "Days without a repeat",
        "least" => "Least share of the minutes",
        "seed" => "Seed",
        "retry" => Retry,
        "day" => "Day",
        "log" => "What was sung",
        _ => name,
    };
}
