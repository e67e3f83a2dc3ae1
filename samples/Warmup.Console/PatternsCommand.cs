using System.CommandLine;
using Spectre.Console;

namespace Warmup.Cli;

/// <summary><c>warmup patterns</c>: lists the words of patterns and the exercises, shows a pattern, finds the rule of written lines, or writes a table of many.</summary>
internal static class PatternsCommand
{
    private const string Schema = "urn:warmup:patterns:1";

    public static Command Create(Terminal terminal, CancellationToken cancellation)
    {
        var explain = new Option<string?>("--explain") { Description = "Find the smallest rule that gives written lines: \"S R G / R G M / G M P\". The exit code is 1 if there is none." };
        var show = new Option<string?>("--show") { Description = "Show a pattern or an exercise (alankara-7) in words, with its lines and its difficulty." };
        var exercises = new Option<bool>("--exercises") { Description = "List the traditional exercises, those of choirs, those for slides and swells, and an alankara for each tala." };
        var scale = new Option<string>("--scale") { Description = "The scale in which lines are read and shown; for a table one or more, with commas between them.", DefaultValueFactory = _ => Repertoire.UsualScale.Name };
        var table = new TableOptions();
        var json = new Option<bool>("--json") { Description = "Print as JSON." };
        var command = new Command("patterns", "Lists the words of patterns, shows a pattern, finds the rule of written lines, or writes a table of many.") { explain, show, exercises };
        table.AddTo(command);
        command.Add(scale);
        command.Add(json);
        command.SetAction(parsed =>
        {
            var asJson = parsed.GetValue(json);
            if (((object?[])[parsed.GetValue(explain), parsed.GetValue(show), parsed.GetValue(exercises) ? explain : null, parsed.GetValue(table.Table) ? explain : null]).Count(o => o is not null) > 1)
            {
                throw new InputException("use one of --explain, --show, --exercises and --table at a time");
            }

            if (parsed.GetValue(table.Table))
            {
                table.Write(parsed, parsed.GetResult(scale) is { Implicit: false } ? parsed.GetValue(scale) : null, terminal, cancellation);
                return ExitCode.Fine;
            }

            table.RefuseOthers(parsed);
            var read = OptionValue.Parsed<Scale>("--scale", parsed.GetValue(scale)!, Catalogue.Default.TryRead);
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
            throw OptionValue.Refusal("--explain", fault.Error);
        }

        if (rule is null)
        {
            terminal.Error($"no rule was found for these lines in {scale.Name}; to sing them as they are, write them in brackets: --pattern \"[...]\"");
            return ExitCode.NotFound;
        }

        if (json)
        {
            terminal.Json(ToDetail(rule, scale), ConsoleJson.Default.PatternDetail);
        }
        else
        {
            // The rule alone, so that it can be passed to drill --pattern.
            terminal.Out.WriteLine(rule);
        }

        return ExitCode.Fine;
    }

    private static void Show(Terminal terminal, string text, Scale scale, bool json)
    {
        var detail = ToDetail(Repertoire.Find(text)?.Pattern ?? OptionValue.Pattern("--show", text), scale);
        if (json)
        {
            terminal.Json(detail, ConsoleJson.Default.PatternDetail);
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
            terminal.Out.WriteLine($"Difficulty at one note a second (the project's own measure): {difficulty}.");
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
            [.. expansion.Findings.ConvertAll(f => f.Describe())],
            drill.TryToScore(out var score, out _) ? Difficulty.Of(score!).Score() : null);
    }

    private static void ListWords(Terminal terminal, bool json)
    {
        if (json)
        {
            terminal.Json(new PatternReport(Schema, [.. PatternLanguage.Standard.Words.ConvertAll(w => new PatternWordRow(w.Name, w.Form, w.Meaning, w.IsPrimitive))]), ConsoleJson.Default.PatternReport);
            return;
        }

        var table = new Table().Border(TableBorder.Ascii2).AddColumns("word", "what it does");
        table.AddRow(Terminal.Plain("[S R G , / R G M]"), "lines written out in svara letters or steps: S' is the upper octave, N_ the lower; \",\" holds, \"-\" is silent");
        foreach (var word in PatternLanguage.Standard.Words)
        {
            table.AddRow(Terminal.Plain(word.Form), Terminal.Plain(word.Meaning));
        }

        terminal.Rich.Write(table);
        terminal.Out.WriteLine("Words after a dot apply from left to right; \"+\" sings one pattern after the other: \"ladder.reversed + run.up-down\".");
    }

    private static void ListExercises(Terminal terminal, bool json)
    {
        if (json)
        {
            terminal.Json(new ExerciseReport(Schema, [.. Exercises.All.Select(e => new ExerciseRow(e.Name, e.Title, e.Tala, e.Pattern.ToString(), e.Source))]), ConsoleJson.Default.ExerciseReport);
            return;
        }

        var table = new Table().Border(TableBorder.Ascii2).AddColumns("name", "title", "tala", "pattern", "source");
        foreach (var exercise in Exercises.All)
        {
            table.AddRow(
                Terminal.Plain(exercise.Name), Terminal.Plain(exercise.Title), Terminal.Plain(exercise.Tala), Terminal.Plain(exercise.Pattern.ToString()), Terminal.Plain(exercise.Source));
        }

        terminal.Rich.Write(table);
    }
}

internal sealed record PatternReport(string Schema, List<PatternWordRow> Words);

internal sealed record PatternWordRow(string Name, string Form, string Meaning, bool Primitive);

internal sealed record PatternDetail(string Schema, string Pattern, string Scale, string Sentence, List<string> Lines, List<string> Findings, int? Difficulty);

internal sealed record ExerciseReport(string Schema, List<ExerciseRow> Exercises);

internal sealed record ExerciseRow(string Name, string Title, string Tala, string Pattern, string Source);
