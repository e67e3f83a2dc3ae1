namespace Warmup.Cli;

/// <summary>Three examples for each command, to copy and change. A test runs every one of them.</summary>
internal static class CommandExamples
{
    /// <summary>The end of every page of help.</summary>
    public const string Careful = "The numbers about voices help with planning and diagnose nothing; the teacher's ear and a doctor's word overrule them.";

    private static readonly Dictionary<string, string[]> All = new(StringComparer.Ordinal)
    {
        [string.Empty] =
        [
            "warmup demo --out out",
            "warmup drill --scale mohanam --pattern ladder --tonic G3 --tempo 60 --out mohanam.pdf",
            "warmup scales --find kalyani",
        ],
        ["drill"] =
        [
            "warmup drill --scale mohanam --pattern ladder --tonic G3 --tempo 60 --out mohanam.pdf --out mohanam.mid",
            "warmup drill --scale 15 --pattern alankara-7 --tonic C4 --tempo 72 --speeds 1,2 --tuning just --out alankara.musicxml",
            "warmup drill --scale \"S R2 G3 P D2 S'\" --pattern ladder.reversed --tonic 5.5 --tempo \"60 to 90 by 10\" --repeat 4 --delivery line-by-line --out drill.html",
        ],
        ["gnana"] =
        [
            "warmup gnana --scale 15 --tonic C4 --tempo 60 --out ear.html --out ear.pdf --out ear.wav",
            "warmup gnana --scale mohanam --tonic G3 --tempo 60 --difficulty 3 --count 4 --seed 7 --call-and-response --out ear.txt",
            "warmup gnana --scale 15 --tonic C4 --tempo 60 --raised --difficulty 3 --seed 2 --out raised.html",
        ],
        ["check"] =
        [
            "warmup check --scale mohanam --pattern ladder --tonic G3 --tempo 60 --singers singers.json",
            "warmup check --scale major --pattern \"[S R G M P M G R S]\" --tala 4/4 --tonic C4 --tempo 120 --climb 4 --singers singers.json --alias Wren",
            "warmup check --scale bilahari --pattern \"ladder + ladder.reversed\" --tonic 5 --tempo 80 --speed 2 --singers singers.json --json",
        ],
        ["fit"] =
        [
            "warmup fit --scale mohanam --pattern ladder --tempo 60 --singers singers.json",
            "warmup fit --scale 15 --pattern ladder.ends --tempo 60 --singers singers.json --chart ranges.svg",
            "warmup fit --scale hamsadhwani --pattern alankara-1 --tonic G3 --tempo 72 --singers singers.json --json",
        ],
        ["plan"] =
        [
            "warmup plan --singers singers.json --scales \"mohanam, hamsadhwani\" --start 2026-12-01 --days 14 --out plan",
            "warmup plan --singers singers.json --scales audava --start 2026-12-01 --days 7 --minutes 10 --climb 4 --formats \"txt mid\" --out week",
            "warmup plan --plan plan/plan.json --day 2026-12-01 --formats \"pdf html\" --out tuesday",
        ],
        ["read"] =
        [
            "warmup read --file drill.musicxml --explain",
            "warmup read --file drill.mid --scale mohanam --tonic G3 --singers singers.json",
            "warmup read --file drill.musicxml --to-scale 15 --to-tonic A3 --out other.pdf --out other.mid",
        ],
        ["listen"] =
        [
            "warmup listen --take take.wav --scale mohanam --pattern ladder --tonic G3 --tempo 60 --out report.html --out report.csv",
            "warmup listen --take take.wav --scale 15 --pattern alankara-1 --tonic C4 --tempo 72 --tuning just --json",
            "warmup listen --take take.wav --scale hamsadhwani --pattern ladder.ends --tonic A3 --tempo 60 --call-and-response",
        ],
        ["measure"] =
        [
            "warmup measure --lowest-highest glide.wav --sustained tone.wav",
            "warmup measure --lowest-highest glide.wav --sustained tone.wav --json",
            "warmup measure --lowest-highest glide.wav --sustained tone.wav --singers singers.json --alias Wren --date 2026-12-01 --out measured.json",
        ],
        ["singers"] =
        [
            "warmup singers --singers singers.json",
            "warmup singers --singers singers.json --history --on 2026-12-01",
            "warmup singers --singers class.csv --out class.json",
        ],
        ["scales"] =
        [
            "warmup scales --find kalyani",
            "warmup scales --show mohanam --tonic G3 --tuning just",
            "warmup scales --kind audava --without-p --json",
        ],
        ["patterns"] =
        [
            "warmup patterns --explain \"S R G / R G M / G M P / M P D / P D N / D N S'\"",
            "warmup patterns --show \"ladder + ladder.reversed\" --scale mohanam",
            "warmup patterns --table --size 3 --scale \"mohanam, bilahari\" --out patterns.parquet",
        ],
        ["demo"] =
        [
            "warmup demo --out out",
            "warmup demo --out lesson",
            "warmup demo --out out --force",
        ],
        ["completion"] =
        [
            "warmup completion bash > warmup.bash",
            "warmup completion fish > warmup.fish",
            "warmup completion pwsh > warmup.ps1",
        ],
        ["manual"] =
        [
            "warmup manual > warmup.1",
            "warmup manual | man -l -",
            "warmup manual | groff -man -Tutf8",
        ],
    };

    /// <summary>The examples of a command; those of the whole program where there is none of the name.</summary>
    public static IReadOnlyList<string> Of(string command) => All.GetValueOrDefault(command) ?? All[string.Empty];
}
