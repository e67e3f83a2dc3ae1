using Warmup.Midi;

namespace Warmup.Listening.Tests;

/// <summary>
/// The drone of a MIDI file lies below the voice as <see cref="SoundBalance"/> says, with the usual instruments, in the renders of two sound fonts
/// that were made independently of each other. The bounds are the project's own: sound fonts differ by some decibels from key to key.
/// </summary>
[Trait("Run", "whole")]
public class BalanceTests
{
    private static readonly (string Path, string Package)[] Fonts =
    [
        ("/usr/share/sounds/sf2/TimGM6mb.sf2", "timgm6mb-soundfont"),
        ("/usr/share/sounds/sf3/MuseScore_General_Lite.sf3", "musescore-general-soundfont-small"),
    ];

    /// <summary>The strings by the first sound font; in the whole check each style of the drone by each.</summary>
    public static TheoryData<string, string, bool> Renders =>
        [.. WholeCheck.OneIn(4, from font in Fonts from held in new[] { false, true } select (font.Path, font.Package, held))];

    [Theory]
    [MemberData(nameof(Renders))]
    public void The_drone_lies_below_the_voice_as_the_balance_says(string path, string package, bool held)
    {
        var font = Tool.SoundFont(path, package);
        var below = new List<double>();
        foreach (var hz in WholeCheck.OneIn(2, (double[])[110, 156, 208]))
        {
            var score = new Drill
            {
                Scale = Scale.Parse("S R2 G3 M1 P D2 N3 S'"),
                Pattern = Pattern.Parse("run.up-down"),
                Tonic = Tonic.FromHz(hz),
                Tempo = 72,
                DroneStyle = held ? DroneStyle.SrutiBox : DroneStyle.Tanpura,
            }.ToScore();
            var voice = Sound.Loudness(score, new MidiOptions { HasDrone = false, Click = MidiClick.None }, font);
            var drone = Sound.Loudness(score, new MidiOptions { HasVoice = false, Click = MidiClick.None }, font);
            below.Add(voice - drone);
        }

        TestContext.Current.TestOutputHelper?.WriteLine(string.Join(' ', below.Select(b => $"{b:0.0}")));
        Assert.InRange(below.Average() - SoundBalance.DroneBelowVoice, -1.5, 1.5);
        Assert.All(below, b => Assert.InRange(b - SoundBalance.DroneBelowVoice, -3, 3));
    }
}
