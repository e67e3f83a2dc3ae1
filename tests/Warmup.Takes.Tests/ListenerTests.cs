using System.Text.Json;

namespace Warmup.Takes.Tests;

/// <summary>Whole takes made by rule, of which everything is known: the quick part of the corpus.</summary>
public class ListenerTests
{
    [Theory]
    [InlineData("clean")]
    [InlineData("singer's errors")]
    [InlineData("drone -20 dB")]
    public void Notes_of_made_takes_are_found_with_their_pitch_and_time(string condition)
    {
        var score = new TakeScore();
        foreach (var plan in Corpus.Plans(condition, 3, 3).Where(p => p.Voice < 3))
        {
            var take = TakeMaker.Make(plan);
            score.Add(take, Hear(take));
        }

        Assert.True(score.Right >= 0.97 * score.Notes, score.Row(condition) + string.Join('\n', score.Said));
        score.Cents.Sort();
        Assert.InRange(score.Cents[score.Cents.Count / 2], 0, 2.5);
        Assert.Equal((0, 0), (score.FalseOther, score.OctavesWrong));
    }

    [Fact]
    public void The_same_take_gives_the_same_bytes()
    {
        var take = TakeMaker.Make(Corpus.Plans("clean", 3, 1).First());
        Assert.Equal(TakeJson.Write(Hear(take)), TakeJson.Write(Hear(take)));
    }

    [Fact]
    public void The_JSON_has_the_fields_that_are_fixed()
    {
        var take = TakeMaker.Make(Corpus.Plans("singer's errors", 3, 1).First());
        using var json = JsonDocument.Parse(TakeJson.Write(Hear(take)));
        var root = json.RootElement;
        Assert.Equal("urn:warmup:take:1", root.GetProperty("schema").GetString());
        Assert.True(root.GetProperty("isDrill").GetBoolean());
        Assert.All((string[])["offsetCents", "octave", "driftCents", "seconds"], m => Assert.Equal(JsonValueKind.Number, root.GetProperty(m).ValueKind));
        Assert.All((string[])["notes", "lines", "breaths"], m => Assert.Equal(JsonValueKind.Array, root.GetProperty(m).ValueKind));
        var sung = root.GetProperty("notes").EnumerateArray().First(n => n.GetProperty("status").GetString() == "sung");
        Assert.All((string[])["index", "line", "round", "onset", "end", "cents", "spread", "late"], m => Assert.Equal(JsonValueKind.Number, sung.GetProperty(m).ValueKind));
        var other = root.GetProperty("notes").EnumerateArray().First(n => n.GetProperty("status").GetString() == "other-note");
        Assert.Equal(JsonValueKind.String, other.GetProperty("sung").ValueKind);
    }

    [Theory]
    [InlineData("silence")]
    [InlineData("noise")]
    [InlineData("drone")]
    [InlineData("another drill")]
    public void What_is_not_the_drill_is_not_judged(string what)
    {
        var plan = Corpus.Plans("clean", 3, 1).First();
        var random = new Random(5);
        float[] sound = what switch
        {
            "silence" => new float[240_000],
            "noise" => [.. Enumerable.Range(0, 240_000).Select(_ => (float)(0.05 * TakeMaker.Gauss(random)))],
            "drone" => VoiceMaker.DroneAlone(plan, 12, random),
            _ => TakeMaker.Make(Corpus.Plans("clean", 4, 4).First(p => p.Score.Title != plan.Score.Title)).Samples,
        };
        var report = Listener.Hear(plan.Score, SoundSource.FromSamples(sound, VoiceMaker.Rate), TestContext.Current.CancellationToken);
        Assert.False(report.IsDrill);
        Assert.NotEmpty(report.Reason!);
        Assert.Empty(report.Notes);
    }

    private static TakeReport Hear(MadeTake take) => Listener.Hear(take.Plan.Score, SoundSource.FromSamples(take.Samples, take.Rate), TestContext.Current.CancellationToken);
}
