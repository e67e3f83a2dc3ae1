using System.CommandLine;
using System.Text.Json;
using Spectre.Console;

namespace Warmup.Cli;

/// <summary><c>warmup patterns</c>: the words of patterns and the exercises, one pattern shown, written lines explained by a rule.</summary>
internal static class PatternsCommand
{
    private const string Schema = "urn:warmup:patterns:1";

    // The parent scale whose letters exercises are usually written in; which variants it has makes no difference to most rules.
    private const string SevenNotes = "Mayamalavagowla";

    public static Command Create(Terminal terminal, CancellationToken cancellation)
    {
        var explain = new Option<string?>("--explain") { Description = "Find the smallest rule that gives written lines: \"S R G / R G M / G M P\". Exit code 1 where none is found." };
        var show = new Option<string?>("--show") { Description = "Show a pattern or an exercise (alankara-7) with what it sings, its lines and its difficulty." };
        var exercises = new Option<bool>("--exercises") { Description = "List the traditional exercises and the choirs'." };
        var scale = new Option<string>("--scale") { Description = "Scale in which lines are read and shown; seven notes by default.", DefaultValueFactory = _ => SevenNotes };
        var json = new Option<bool>("--json") { Description = "Print as JSON." };
        var command = new Command("patterns", "Lists the words that patterns are made of, shows a pattern, explains written lines by a rule.") { explain, show, exercises, scale, json };
        command.SetAction(parsed =>
        {
            var asJson = parsed.GetValue(json);
            var read = Catalogue.Default.TryRead(parsed.GetValue(scale)!, out var named, out var error) ? named! : throw new InputException($"--scale, {error}");
            if (((object?[])[parsed.GetValue(explain), parsed.GetValue(show), parsed.GetValue(exercises) ? explain : null]).Count(o => o is not null) > 1)
            {
                throw new InputException("use one of --explain, --show and --exercises at a time");
            }

            if (parsed.GetValue(explain) is { } lines)
            {
                return Explain(terminal, lines, read, asJson, cancellation);
            }

            if (parsed.GetValue(show) is { } text)
            {
                Show(terminal, text, read, asJson);
            }
            else if (parsed.GetValue(exercises))
            {
                ListExercises(terminal, asJson);
            }
            else
            {
                ListWords(terminal, asJson);
            }

            return ExitCode.Fine;
        });
        return command;
    }

    private static int Explain(Terminal terminal, string lines, Scale scale, bool json, CancellationToken cancellation)
    {
        Pattern? rule;
        try
        {
            rule = PatternSearch.Explain(lines, scale, cancellation);
        }
        catch (WarmupFormatException fault)
        {
            throw new InputException($"--explain, {fault.Error}");
        }

        if (rule is null)
        {
            terminal.Error($"no rule was found that gives these lines in {scale.Name}; to sing them as they are, write them in brackets: --pattern \"[...]\"");
            return ExitCode.NotFound;
        }

        if (json)
        {
            Print(terminal, ToDetail(rule, scale));
        }
        else
        {
            // The rule alone, so that it can be handed on to drill --pattern.
            terminal.Out.WriteLine(rule);
        }

        return ExitCode.Fine;
    }

    private static void Show(Terminal terminal, string text, Scale scale, bool json)
    {
        var pattern = Repertoire.Find(text)?.Pattern;
        if (pattern is null && !Pattern.TryParse(text, out pattern, out var error))
        {
            throw new InputException($"--show, {error}");
        }

        var detail = ToDetail(pattern!, scale);
        if (json)
        {
            Print(terminal, detail);
            return;
        }

        terminal.Out.WriteLine(detail.Pattern);
        terminal.Out.WriteLine($"In words: {detail.Sentence}.");
        terminal.Out.WriteLine($"In {scale.Name}:");
        foreach (var line in detail.Lines)
        {
            terminal.Out.WriteLine("  " + line);
        }

        foreach (var finding in detail.Findings)
        {
            terminal.Out.WriteLine($"Note: {finding}.");
        }

        if (detail.Difficulty is { } difficulty)
        {
            terminal.Out.WriteLine($"Difficulty at one note a second (own scale): {difficulty}.");
        }
    }

    private static PatternDetail ToDetail(Pattern pattern, Scale scale)
    {
        var expansion = pattern.Expand(scale);
        var drill = new Drill { Pattern = pattern, Scale = scale, Tonic = Tonic.Parse("C4"), Meter = Meter.Free };
        return new PatternDetail(
            Schema,
            pattern.ToString(),
            scale.Name,
            pattern.Describe(scale),
            [.. expansion.Lines.ConvertAll(l => l.ToNotation())],
            [.. expansion.Findings.ConvertAll(f => f.ToString())],
            drill.TryToScore(out var score, out _) ? Difficulty.Of(score!).Score() : null);
    }

    private static void ListWords(Terminal terminal, bool json)
    {
        if (json)
        {
            Print(terminal, new PatternReport(Schema, [.. Pattern.Words.ConvertAll(w => new PatternWordRow(w.Name, w.Form, w.Meaning, w.IsPrimitive))]));
            return;
        }

        var table = new Table().Border(TableBorder.Ascii2).AddColumns("word", "what it does");
        table.AddRow(Terminal.Plain("[S R G , / R G M]"), "lines written out in svara letters or steps: S' upper, N_ lower, \",\" holds, \"-\" is silent");
        foreach (var word in Pattern.Words)
        {
            table.AddRow(Terminal.Plain(word.Form), Terminal.Plain(word.Meaning));
        }

        terminal.Rich.Write(table);
        terminal.Out.WriteLine("Words behind a dot are applied from left to right; \"+\" sings one pattern after the other: \"ladder.reversed + run.up-down\".");
    }

    private static void ListExercises(Terminal terminal, bool json)
    {
        Exercise[] all = [.. Repertoire.Traditional, .. Repertoire.Choir];
        if (json)
        {
            Print(terminal, new ExerciseReport(Schema, [.. all.Select(e => new ExerciseRow(e.Name, e.Title, e.Tala, e.Pattern.ToString(), e.Source))]));
            return;
        }

        var table = new Table().Border(TableBorder.Ascii2).AddColumns("name", "title", "tala", "pattern", "source");
        foreach (var exercise in all)
        {
            table.AddRow(
                Terminal.Plain(exercise.Name), Terminal.Plain(exercise.Title), Terminal.Plain(exercise.Tala), Terminal.Plain(exercise.Pattern.ToString()), Terminal.Plain(exercise.Source));
        }

        terminal.Rich.Write(table);
    }

    private static void Print(Terminal terminal, PatternDetail detail) =>
        terminal.Out.WriteLine(JsonSerializer.Serialize(detail, ConsoleJson.Default.PatternDetail).ReplaceLineEndings("\n"));

    private static void Print(Terminal terminal, PatternReport report) =>
        terminal.Out.WriteLine(JsonSerializer.Serialize(report, ConsoleJson.Default.PatternReport).ReplaceLineEndings("\n"));

    private static void Print(Terminal terminal, ExerciseReport report) =>
        terminal.Out.WriteLine(JsonSerializer.Serialize(report, ConsoleJson.Default.ExerciseReport).ReplaceLineEndings("\n"));
}

internal sealed record PatternReport(string Schema, List<PatternWordRow> Words);

internal sealed record PatternWordRow(string Name, string Form, string Meaning, bool Primitive);

internal sealed record PatternDetail(string Schema, string Pattern, string Scale, string Sentence, List<string> Lines, List<string> Findings, int? Difficulty);

internal sealed record ExerciseReport(string Schema, List<ExerciseRow> Exercises);

internal sealed record ExerciseRow(string Name, string Title, string Tala, string Pattern, string Source);
