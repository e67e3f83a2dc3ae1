using System.CommandLine;
using System.Globalization;
using FsCheck;
using FsCheck.Fluent;

namespace Warmup.Cli.Tests;

/// <summary>A command line that describes a drill, and singers for it.</summary>
public sealed record RemedyCase(ValueList<string> Options, ValueList<Singer> Singers, bool IsPlanned)
{
    public override string ToString() => $"{string.Join(' ', Options.Select(o => o.Contains(' ', StringComparison.Ordinal) ? $"\"{o}\"" : o))} for {string.Join("; ", Singers)}";
}

/// <summary>Random command lines: scales, patterns, exercises, tonics in all their forms, ramps, talas, speeds, deliveries, fills, repetitions.</summary>
public static class RemedyCases
{
    private static readonly string[] Scales = ["mohanam", "15", "kalyani", "major", "28", "hamsadhvani", "S R2 G3 P D2 S'", "bilahari"];

    private static readonly string[] Patterns =
    [
        "ladder", "ladder.reversed", "ladder.ends", "ladder.up-down", "ladder + ladder.reversed", "figure(1 2 3)", "figure(1 3)", "figure(1 5 1)",
        "figure(1 2 3 4 5)", "ladder.take(2)", "ladder.ends.take(3)", "figure(1 8).take(1)", "[S R G P D]", "alankara-1", "alankara-3", "alankara-7",
    ];

    private static readonly string?[] Talas = [null, null, "adi", "khanda chapu", "misra chapu", "tisra-jati triputa", "3/4", "7/8", "free"];

    public static Gen<RemedyCase> All { get; } =
        from scale in Gen.Elements(Scales)
        from pattern in Gen.Elements(Patterns)
        from tonic in Tonics
        from tempo in Gen.OneOf(Gen.Choose(20, 300).Select(Text), from start in Gen.Choose(40, 120) from rise in Gen.Choose(5, 60) select $"{start} to {start + rise} by 10")
        from tala in Gen.Elements(Talas)
        from speed in Gen.Elements<(string, string)?>(null, null, ("--speed", "2"), ("--speed", "3"), ("--speeds", "1,2,3"), ("--speeds", "1,2"), ("--speeds", "2"))
        from gati in Gen.Elements(null, null, null, "3", "5", "7")
        from delivery in Gen.Elements(null, "continuous", "line-by-line", "line-by-line")
        from fill in Gen.Elements(null, null, null, "none", "anga", "avartana")
        from fillBy in Gen.Elements(null, null, null, "room", "hold", "rest")
        from repeat in Gen.Elements(null, null, null, "2")
        from tuning in Gen.Elements(null, "just")
        from lines in Gen.Elements(null, null, null, null, "1-2", "1")
        from count in Gen.Elements(1, 1, 1, 2, 3)
        from singers in Gen.ArrayOf(Singer, count)
        from planned in Gen.Elements(false, false, false, true)
        select new RemedyCase(
            Line(
                ("--scale", scale),
                ("--pattern", pattern),
                ("--tonic", tonic),
                ("--tempo", tempo),
                ("--tala", tala),
                speed ?? ("--speed", null),
                ("--gati", gati),
                ("--delivery", delivery),
                ("--fill", tala == "free" ? null : fill),
                ("--fill-by", tala != "free" && (delivery == "line-by-line" ? fill != "none" : fill is "anga" or "avartana") ? fillBy : null),
                ("--repeat", repeat),
                ("--tuning", tuning),
                ("--lines", lines)),
            singers.Select((s, i) => new Singer($"{s.Alias}{i + 1}", s.Low, s.High, s.SustainedSeconds, s.Experience)).ToValueList(),
            planned);

    private static Gen<string> Tonics { get; } = Gen.OneOf(
        Gen.Choose(43, 65).Select(m => NoteName.FromMidi(m).ToString()),
        Gen.Elements("1", "2.5", "4", "5.5", "6"),
        from hz in Gen.Choose(98_000, 330_000) select string.Create(CultureInfo.InvariantCulture, $"{hz / 1000.0}Hz"),
        from midi in Gen.Choose(45, 62) from a4 in Gen.Choose(415, 445) select $"{NoteName.FromMidi(midi)}, A4={Text(a4)}Hz",
        from midi in Gen.Choose(45, 62) from cents in Gen.Choose(-499, 499) select string.Create(CultureInfo.InvariantCulture, $"midi {midi} {cents / 10.0:+0.0;-0.0}c"));

    private static Gen<Singer> Singer { get; } =
        from low in Gen.Choose(43, 60)
        from width in Gen.Choose(7, 24)
        from seconds in Gen.Choose(8, 30)
        from experience in Gen.Elements(Experience.Beginner, Experience.Intermediate, Experience.Advanced)
        select new Singer("Lark", NoteName.FromMidi(low), NoteName.FromMidi(low + width), seconds, experience);

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static ValueList<string> Line(params (string Name, string? Value)[] options) =>
        [.. options.Where(o => o.Value is not null).SelectMany(o => (string[])[o.Name, o.Value!])];
}

/// <summary>The console's own reading of a drill's options.</summary>
internal sealed class OptionReader
{
    private readonly DrillOptions _drill = new();
    private readonly SingerOptions _singers = new(required: false);
    private readonly BreathOption _breaths = new();
    private readonly Command _command = new("check");

    public OptionReader()
    {
        _drill.AddTo(_command);
        _singers.AddTo(_command);
        _breaths.AddTo(_command);
    }

    public ParseResult Parse(IEnumerable<string> options)
    {
        var parsed = _command.Parse([.. options]);
        Assert.Empty(parsed.Errors);
        return parsed;
    }

    public Drill Read(ParseResult parsed) => _drill.Read(parsed);

    public IReadOnlyList<string> ToOptions(Remedy remedy, ParseResult parsed) => _drill.ToOptions(remedy, parsed);

    /// <summary>The score of a command line, with planned breaths where it asks for them.</summary>
    public Score ToScore(ParseResult parsed, ValueList<Singer> singers)
    {
        var score = Read(parsed).ToScore();
        return _breaths.Read(parsed, singers) is { } need ? BreathOption.Plan(score, need, out _, default) : score;
    }

    /// <summary>The options of a command line, some of them replaced and some added.</summary>
    public static List<string> Joined(IEnumerable<string> options, IReadOnlyList<string> changes)
    {
        var result = options.ToList();
        for (var i = 0; i < changes.Count; i++)
        {
            Assert.StartsWith("--", changes[i], StringComparison.Ordinal);
            var value = i + 1 < changes.Count && !changes[i + 1].StartsWith("--", StringComparison.Ordinal) ? changes[i + 1] : null;
            var at = result.IndexOf(changes[i]);
            if (at >= 0 && value is not null)
            {
                result[at + 1] = value;
            }
            else if (at < 0)
            {
                result.AddRange(value is null ? [changes[i]] : [changes[i], value]);
            }

            i += value is null ? 0 : 1;
        }

        return result;
    }
}
