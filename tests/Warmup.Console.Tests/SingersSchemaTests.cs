using System.Text;
using System.Text.Json;
using Json.Schema;

namespace Warmup.Cli.Tests;

/// <summary>Source: the published schema (JSON Schema draft 2020-12), evaluated by an independent library; reader and schema must agree.</summary>
public class SingersSchemaTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "schemas", "singers-1.json")));

    private static bool IsValid(string json)
    {
        using var document = JsonDocument.Parse(json);
        return Schema.Evaluate(document.RootElement).IsValid;
    }

    private static bool IsRead(string json)
    {
        try
        {
            SingersFile.Read(Encoding.UTF8.GetBytes(json));
            return true;
        }
        catch (WarmupFormatException)
        {
            return false;
        }
    }

    private static string Of(string singer) => $$"""{"schema":"urn:warmup:singers:1","singers":[{{{singer}}}]}""";

    [Theory]
    [InlineData(true, "\"alias\":\"Wren\",\"low\":\"A3\",\"high\":\"E5\",\"sustainedSeconds\":14")]
    [InlineData(true, "\"alias\":\"மீரா\",\"low\":\"Bb2\",\"high\":\"F#4\",\"sustainedSeconds\":14.25,\"experience\":\"advanced\"")]
    [InlineData(true, "\"alias\":\"Wren\",\"low\":\"A3\",\"high\":\"E5\",\"trials\":[12,13,12.5],\"trialRule\":\"median\",\"fullLow\":\"G3\",\"fullHigh\":\"A5\",\"voice\":\"soprano\"")]
    [InlineData(true, "\"alias\":\"Wren\",\"voice\":\"child 8-9\",\"sustainedSeconds\":9")]
    [InlineData(false, "\"alias\":\"\",\"low\":\"A3\",\"high\":\"E5\",\"sustainedSeconds\":14")]
    [InlineData(false, "\"alias\":\"  \",\"low\":\"A3\",\"high\":\"E5\",\"sustainedSeconds\":14")]
    [InlineData(false, "\"alias\":\"a\\u202Eb\",\"low\":\"A3\",\"high\":\"E5\",\"sustainedSeconds\":14")]
    [InlineData(false, "\"low\":\"A3\",\"high\":\"E5\",\"sustainedSeconds\":14")]
    [InlineData(false, "\"alias\":\"Wren\",\"low\":\"H3\",\"high\":\"E5\",\"sustainedSeconds\":14")]
    [InlineData(false, "\"alias\":\"Wren\",\"low\":\"A3\",\"sustainedSeconds\":14")]
    [InlineData(false, "\"alias\":\"Wren\",\"low\":\"A3\",\"high\":\"E5\"")]
    [InlineData(false, "\"alias\":\"Wren\",\"low\":\"A3\",\"high\":\"E5\",\"sustainedSeconds\":0")]
    [InlineData(false, "\"alias\":\"Wren\",\"low\":\"A3\",\"high\":\"E5\",\"sustainedSeconds\":400")]
    [InlineData(false, "\"alias\":\"Wren\",\"low\":\"A3\",\"high\":\"E5\",\"sustainedSeconds\":\"14\"")]
    [InlineData(false, "\"alias\":\"Wren\",\"low\":\"A3\",\"high\":\"E5\",\"sustainedSeconds\":14,\"trials\":[14]")]
    [InlineData(false, "\"alias\":\"Wren\",\"low\":\"A3\",\"high\":\"E5\",\"sustainedSeconds\":14,\"trialRule\":\"best\"")]
    [InlineData(false, "\"alias\":\"Wren\",\"low\":\"A3\",\"high\":\"E5\",\"trials\":[]")]
    [InlineData(false, "\"alias\":\"Wren\",\"low\":\"A3\",\"high\":\"E5\",\"trials\":[400]")]
    [InlineData(false, "\"alias\":\"Wren\",\"voice\":\"child 8-9\",\"low\":\"A3\",\"sustainedSeconds\":9")]
    [InlineData(false, "\"alias\":\"Wren\",\"low\":\"A3\",\"high\":\"E5\",\"sustainedSeconds\":14,\"birthday\":\"1990-01-01\"")]
    [InlineData(false, "\"alias\":\"Wren\",\"low\":\"A3\",\"high\":\"E5\",\"sustainedSeconds\":14,\"experience\":\"expert\"")]
    [InlineData(true, "\"alias\":\"Wren\",\"measurements\":[{\"date\":\"2026-03-01\",\"low\":\"A3\",\"high\":\"E5\",\"sustainedSeconds\":14}]")]
    [InlineData(true, "\"alias\":\"Wren\",\"low\":\"A3\",\"high\":\"E5\",\"sustainedSeconds\":14,\"measurements\":[{\"date\":\"2026-03-01\",\"low\":\"A3\",\"high\":\"E5\",\"fullHigh\":\"G5\",\"trials\":[14,15],\"trialRule\":\"best\"}]")]
    [InlineData(true, "\"alias\":\"Wren\",\"voice\":\"child 8-9\",\"measurements\":[{\"date\":\"2026-03-01\",\"sustainedSeconds\":9}]")]
    [InlineData(false, "\"alias\":\"Wren\",\"measurements\":[]")]
    [InlineData(false, "\"alias\":\"Wren\",\"measurements\":[{\"low\":\"A3\",\"high\":\"E5\",\"sustainedSeconds\":14}]")]
    [InlineData(false, "\"alias\":\"Wren\",\"measurements\":[{\"date\":\"1.3.2026\",\"low\":\"A3\",\"high\":\"E5\",\"sustainedSeconds\":14}]")]
    [InlineData(false, "\"alias\":\"Wren\",\"measurements\":[{\"date\":\"2026-03-01\",\"low\":\"A3\",\"sustainedSeconds\":14}]")]
    [InlineData(false, "\"alias\":\"Wren\",\"measurements\":[{\"date\":\"2026-03-01\",\"low\":\"A3\",\"high\":\"E5\"}]")]
    [InlineData(false, "\"alias\":\"Wren\",\"measurements\":[{\"date\":\"2026-03-01\",\"low\":\"A3\",\"high\":\"E5\",\"sustainedSeconds\":14,\"alias\":\"Wren\"}]")]
    [InlineData(false, "\"alias\":\"Wren\",\"trialRule\":\"best\",\"measurements\":[{\"date\":\"2026-03-01\",\"low\":\"A3\",\"high\":\"E5\",\"sustainedSeconds\":14}]")]
    [InlineData(false, "\"alias\":\"Wren\",\"measurements\":[null]")]
    public void The_schema_and_the_reader_agree(bool good, string singer)
    {
        Assert.Equal(good, IsValid(Of(singer)));
        Assert.Equal(good, IsRead(Of(singer)));
    }

    [Theory]
    [InlineData("""{"schema":"urn:warmup:singers:2","singers":[]}""")]
    [InlineData("""{"singers":[]}""")]
    [InlineData("""{"schema":"urn:warmup:singers:1"}""")]
    [InlineData("""{"schema":"urn:warmup:singers:1","singers":[],"teacher":"a"}""")]
    public void What_is_no_class_is_refused_by_both(string json)
    {
        Assert.False(IsValid(json));
        Assert.False(IsRead(json));
    }

    [Fact]
    public void What_the_library_writes_is_valid()
    {
        ValueList<Singer> singers =
        [
            new Singer("a", NoteName.FromMidi(55), NoteName.FromMidi(74), [12, 13, new Rational(25, 2)], TrialRule.Median) { Voice = "soprano", FullLow = NoteName.FromMidi(50) },
            Singer.FromVoice("b", VoiceTypes.Find("child 6-7")!, 7),
            new Singer("c", NoteName.FromMidi(24), NoteName.FromMidi(108), new Rational(4, 3), Experience.Advanced),
            new Singer("d", NoteName.FromMidi(50), NoteName.FromMidi(60), 9)
                .With(new Measurement(new DateOnly(2026, 3, 1), NoteName.FromMidi(55), NoteName.FromMidi(74), [12, 13], TrialRule.Median) { FullHigh = NoteName.FromMidi(80) })
                .With(new Measurement(new DateOnly(2026, 6, 1), NoteName.FromMidi(55), NoteName.FromMidi(74), 14)),
            new Singer("e", new Measurement(new DateOnly(2026, 3, 1), NoteName.FromMidi(55), NoteName.FromMidi(74), 14), Experience.Beginner),
        ];
        using var stream = new MemoryStream();
        SingersFile.Write(singers, stream);
        Assert.True(IsValid(Encoding.UTF8.GetString(stream.ToArray())));
    }

    [Fact]
    public void The_schema_itself_is_of_the_draft_it_names() =>
        Assert.True(MetaSchemas.Draft202012.Evaluate(JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "schemas", "singers-1.json"))).RootElement).IsValid);
}
