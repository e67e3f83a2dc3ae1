using System.CommandLine;
using Warmup.Plans;

namespace Warmup.Cli;

/// <summary>The options that note in the log how a day was sung, and by whom.</summary>
internal sealed class SungOptions
{
    private readonly Option<bool> _sung = new("--sung") { Description = "With --plan and --day, note in --log that the day was sung." };
    private readonly Option<bool> _tick = new("--tick") { Description = "With --sung, the teacher's tick: the next plan may go on from these tempi." };

    private readonly Option<string[]> _absent = new("--absent")
    {
        Description = "With --sung, a singer who was absent; repeat it for others.",
        AllowMultipleArgumentsPerToken = true,
    };

    private readonly Option<string[]> _reached = new("--reached")
    {
        Description = "With --sung, the tempo that a singer reached where the day's is faster, such as \"Robin=56\"; repeat it for others.",
        AllowMultipleArgumentsPerToken = true,
    };

    public void AddTo(Command command)
    {
        foreach (var option in (Option[])[_sung, _tick, _absent, _reached])
        {
            command.Add(option);
        }
    }

    public bool IsSung(ParseResult parsed) => parsed.GetValue(_sung);

    /// <summary>The lines of the log for a day that was sung.</summary>
    public IReadOnlyList<LogEntry> Read(ParseResult parsed, PlanDay day)
    {
        var singers = Singers(parsed);
        return day.Drills.ConvertAll(planned => new LogEntry
        {
            Date = day.Date,
            ScaleName = planned.Drill.Scale.Name,
            ExerciseName = planned.Drill.ExerciseName,
            Tempo = planned.Tempo,
            IsTicked = parsed.GetValue(_tick),

            // Nobody sings a drill faster than the day has it: an opening that is slower than the reached tempo was sung at its own.
            Singers = singers.ConvertAll(s => new SungBy(s.Alias, s.Tempo is { } reached ? Math.Min(reached, planned.Tempo) : null)),
        });
    }

    private ValueList<SungBy> Singers(ParseResult parsed)
    {
        var singers = (parsed.GetValue(_absent) ?? []).Select(a => Of("--absent", a, null)).ToList();
        foreach (var text in parsed.GetValue(_reached) ?? [])
        {
            var parts = text.LastIndexOf('=') is var split and > 0 ? (text[..split], text[(split + 1)..]) : throw new InputException($"--reached must be a singer and a tempo such as Robin=56, not {TextError.Quote(text)}");
            singers.Add(Of("--reached", parts.Item1, OptionValue.Whole("--reached", parts.Item2, Tempo.Slowest, Tempo.Fastest)));
        }

        return singers.CountBy(s => s.Alias, StringComparer.OrdinalIgnoreCase).FirstOrDefault(s => s.Value > 1) is { Key: { } twice }
            ? throw new InputException($"--absent and --reached must name {TextError.Quote(twice)} once")
            : singers.ToValueList();
    }

    private static SungBy Of(string option, string alias, int? tempo)
    {
        try
        {
            return new SungBy(alias, tempo);
        }
        catch (ArgumentException refused)
        {
            throw new InputException($"{option}: {refused.Message}");
        }
    }
}
