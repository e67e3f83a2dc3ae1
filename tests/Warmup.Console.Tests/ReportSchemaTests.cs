using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;

namespace Warmup.Cli.Tests;

/// <summary>
/// What <c>--json</c> prints against the published schemas (docs/schemas; JSON Schema, draft 2020-12), held by an independent validator: each report is
/// valid, and none is that lacks a member that the schema asks for or has one that it does not know.
/// </summary>
public sealed class ReportSchemaTests : IDisposable
{
    private static readonly string[] Drill = ["--scale", "mohanam", "--pattern", "ladder", "--tonic", "G3", "--tempo", "90", "--lines", "1-3"];

    private static readonly Dictionary<string, (JsonElement Itself, JsonSchema Schema)> Schemas = ((string[])["take-1.json", "planned-1.json", "class-1.json"]).ToDictionary(name => name, Read);

    private readonly Shell _shell = new();

    public ReportSchemaTests()
    {
        using var file = File.Create(_shell.At("class.json"));
        SingersFile.Write(Studio.Singers, file);
    }

    public void Dispose() => _shell.Dispose();

    private static JsonNode Report(int code, params string[] options)
    {
        var run = Shell.Run([.. options, "--json"]);
        Assert.Equal((code, string.Empty), (run.Code, run.Error));
        return JsonNode.Parse(run.Out)!;
    }

    private static (JsonElement Itself, JsonSchema Schema) Read(string name)
    {
        var text = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "schemas", name));
        using var document = JsonDocument.Parse(text);
        return (document.RootElement.Clone(), JsonSchema.FromText(text));
    }

    private static void Holds(string name, JsonNode report)
    {
        var (itself, schema) = Schemas[name];
        Assert.True(MetaSchemas.Draft202012.Evaluate(itself).IsValid);
        bool IsValid(JsonNode node)
        {
            using var document = JsonDocument.Parse(node.ToJsonString());
            return schema.Evaluate(document.RootElement).IsValid;
        }

        Assert.True(IsValid(report), report.ToJsonString());
        foreach (var required in itself.GetProperty("required").EnumerateArray())
        {
            var without = report.DeepClone();
            Assert.True(without.AsObject().Remove(required.GetString()!));
            Assert.False(IsValid(without), required.GetString());
        }

        var more = report.DeepClone();
        more["birthday"] = "2001-01-01";
        Assert.False(IsValid(more));
    }

    [Fact]
    public void A_take_of_the_drill_and_one_of_another()
    {
        Assert.Equal(0, Shell.Run(["drill", .. Drill, "--out", _shell.At("take.wav")]).Code);
        var report = Report(0, ["listen", "--take", _shell.At("take.wav"), .. Drill]);
        Assert.Equal(Cautions.All.Select(c => c.Text), report["cautions"]!.AsArray().Select(c => c!.GetValue<string>()).Take(Cautions.All.Count));
        Assert.NotEmpty(report["notes"]!.AsArray());
        Holds("take-1.json", report);
        Holds("take-1.json", Report(1, "listen", "--take", _shell.At("take.wav"), "--scale", "kanakangi", "--pattern", "P D N P / N D P D / S' N S' D / P N D P", "--tonic", "G3", "--tempo", "40"));
    }

    [Fact]
    public void A_plan_its_day_and_a_class()
    {
        string[] singers = ["--singers", _shell.At("class.json")];
        Holds("planned-1.json", Report(0, ["plan", .. singers, "--scales", "mohanam", "--start", "2026-12-01", "--days", "6", "--formats", "none", "--out", _shell.At("plan")]));
        Holds("planned-1.json", Report(0, "plan", "--plan", _shell.At("plan/plan.json"), "--day", "2026-12-02", "--formats", "txt", "--out", _shell.At("day")));
        Holds("class-1.json", Report(0, ["singers", .. singers]));
        Holds("class-1.json", Report(0, ["singers", .. singers, "--voices", "--on", "2027-03-15"]));
    }
}
