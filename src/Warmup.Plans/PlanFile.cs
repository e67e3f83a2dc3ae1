using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Warmup.Plans;

/// <summary>The file of a plan: <c>{"schema": "urn:warmup:plan:1", ...}</c>, described by <c>docs/schemas/plan-1.json</c>.</summary>
/// <remarks>A plan that is read back is equal to the one that was written, and so gives the same scores.</remarks>
public static class PlanFile
{
    /// <summary>The name of the format and its version.</summary>
    public const string Schema = "urn:warmup:plan:1";

    /// <summary>The largest file that is read, in bytes.</summary>
    public const int LargestFile = 64_000_000;

    /// <summary>Writes a plan. Equal plans give equal bytes.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="destination">Where the bytes go; it is not closed.</param>
    public static void Write(WarmupPlan plan, Stream destination)
    {
        var text = JsonSerializer.Serialize(ToDto(plan), PlanJson.Default.PlanDto).ReplaceLineEndings("\n") + "\n";
        destination.Write(Encoding.UTF8.GetBytes(text));
    }

    /// <summary>Reads a plan.</summary>
    /// <param name="json">The file's text in UTF-8, at most 64,000,000 bytes.</param>
    /// <exception cref="WarmupFormatException">The text is no plan: the error names the place, the value and the fix.</exception>
    public static WarmupPlan Read(ReadOnlySpan<byte> json)
    {
        if (json.Length > LargestFile)
        {
            throw Fail(string.Create(CultureInfo.InvariantCulture, $"a plan must be at most {LargestFile} bytes long, not {json.Length}"));
        }

        PlanDto? file;
        try
        {
            file = JsonSerializer.Deserialize(json, PlanJson.Default.PlanDto);
        }
        catch (JsonException broken)
        {
            throw new WarmupFormatException(new TextError(
                (int)(broken.LineNumber ?? 0) + 1,
                (int)(broken.BytePositionInLine ?? 0) + 1,
                $"this is no plan in JSON at {broken.Path ?? "$"}; take a plan.json as 'warmup plan' writes it"));
        }

        if (file?.Schema != Schema)
        {
            throw Fail(file?.Schema is { } other ? $"the schema of the plan is '{Shown(other)}'; this library reads {Schema}" : $"the plan lacks \"schema\": \"{Schema}\"");
        }

        try
        {
            return PlanRows.ToPlan(file);
        }
        catch (WarmupFormatException broken)
        {
            throw Fail($"the plan cannot be read: {broken.Error.Message}");
        }
        catch (Exception refused) when (refused is ArgumentException or OverflowException)
        {
            throw Fail($"the plan cannot be read: {refused.Message}");
        }
    }

    internal static WarmupFormatException Fail(string message) => new(new TextError(1, 1, message));

    internal static string Shown(string text) => text.Length <= 40 ? text : text[..40] + "...";

    private static PlanDto ToDto(WarmupPlan plan)
    {
        var scales = ((IEnumerable<PlanDrill>)plan.Drills).Select(d => d.Scale).Distinct().ToList();
        return new PlanDto
        {
            Schema = Schema,
            Generator = plan.Generator,
            Seed = plan.Seed,
            Level = plan.Level,
            Minutes = plan.Minutes,
            NoRepeatDays = plan.NoRepeatDays,
            RestDays = [.. ((IEnumerable<DayOfWeek>)plan.RestDays).Select(PlanRows.Word)],
            Tonic = PlanRows.ToDto(plan.Tonic),
            Tuning = plan.Tuning.ToString(),
            BreathSeconds = plan.Need.CapacitySeconds.ToString(),
            ShortestBreathSeconds = plan.Need.ShortestBreathSeconds.ToString(),
            Scales = [.. scales.Select(s => new ScaleDto { Name = s.Name, Notes = s.ToNotesText() })],
            Drills = [.. ((IEnumerable<PlanDrill>)plan.Drills).Select(d => PlanRows.ToDto(d, scales.IndexOf(d.Scale)))],
            Days = [.. ((IEnumerable<PlanDay>)plan.Days).Select(PlanRows.ToDto)],
            Cautions = [.. ((IEnumerable<Caution>)Cautions.All).Select(c => c.Text)],
        };
    }
}
